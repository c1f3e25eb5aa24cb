import type { Estimate } from '../../base/estimate.ts';
import type { FittedValues, MayBe } from './fitted-values.ts';

/** How far the bed lies from the log, root mean square. */
export interface Misfit {
  /** K; NaN where no sensor told any */
  temperatureK: number;
  /** points */
  moisturePoints: number;
  /** samples of temperature and of moisture */
  temperatures: number;
  moistures: number;
}

/** A part of the season. */
export interface ModelPart {
  fromMs: number;
  toMs: number;
  fanHours: number;
  misfit: Misfit;
}

/** A bin's bed fitted to its log, and whether it can be trusted. */
export interface BinModel {
  /** of the fit to the whole season; null where none could be made */
  fitted: FittedValues | null;
  /** each cable's airflow over the bin's mean */
  cables: readonly { cable: string; share: number; relative: number }[];
  /** m3/s of the air that the fan takes in, at full depth, of the whole bin: static pressure told of what the cables do not see */
  flowM3S: Estimate;
  /** what the cables read too much, points */
  moistureBiasPoints: Estimate;
  /** moisture at the end by the bed, fraction, wet basis */
  endMoistureWb: Estimate;
  /** the bin as it may be for all that its log says; none where it is not trusted */
  mayBes: readonly MayBe[];
  /** the isotherms of grain and cables that were tried, the nearest first: sums of squares over the best's, those within 2 are as near */
  isotherms: readonly { name: string; cable: string; cost: number }[];
  /** fitted to the first part alone */
  trained: ModelPart | null;
  /** the rest of the season, which that fit has not seen: fan-on hours and the 48 hours after */
  unseen: (ModelPart & { persistence: Misfit }) | null;
  trusted: boolean;
  /** a sentence: why it is not trusted, or what the trust stands on */
  why: string;
  /** what data would help, whole sentences */
  wouldHelp: readonly string[];
  notes: readonly string[];
}
