import type { Doubt } from '../../simulation/doubt/doubted-spec.ts';

/** Values that a fit finds and a run needs; what is left out is as stated or told by the review. */
export interface FittedValues {
  /** airflow at full depth, m3/s of the air that the fan takes in */
  flowM3S: number;
  /** that by which the power of fans and heaters warms the air */
  heatedM3S: number;
  /** airflow at each cable over the bin's mean, [cables] */
  cableFlows: readonly number[];
  /** of the grain, as season.yaml names it */
  isotherm: string;
  /** what the cables read too much, fraction, wet basis */
  moistureBiasWb: number;
  /** what the grain was warmer at the start than the cables' readings say, K */
  startK: number;
  /** conductance to the wall over that of a round bin */
  wallFactor: number;
  /** heat of respiration over that of the storage rule */
  respirationFactor: number;
  /** by which the cables make moisture of humidity, as season.yaml names it */
  cableIsotherm: string;
  /** over the published specific heat and thin-layer rate */
  heatFactor: number;
  rateFactor: number;
  /** what the grain holds more than its isotherm says, fraction of dry matter */
  isothermShiftDb: number;
  /** what the grain held at the start more than cables told that were read in moving air alone, fraction, wet basis */
  aboveAirWb: number;
  /** what the air that enters was warmer than log and fans say, K */
  enteringK: number;
  /** what all of the cables' thermometers read too much, K; it is in `startK` already */
  cablesK: number;
  /** what each moisture sensor reads too much beside the shared bias, [cables][sensors], in the order of the log's */
  offsetsWb: readonly Float64Array[];
}

/** A bin as it may be for all that its log says: values of a fit, and what no sensor of it tells. */
export interface MayBe {
  fitted: FittedValues;
  doubt: Doubt;
}
