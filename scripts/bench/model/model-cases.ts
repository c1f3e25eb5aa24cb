import { binModel } from '../../../src/analysis/model/bin-model.ts';
import { binTruth } from '../coverage/season-truth.ts';
import { drawnSeason } from './drawn-season.ts';
import type { Badness } from './made-bad.ts';

/** A fitted bin beside its truth. */
export interface ModelCase {
  bin: string;
  crop: string;
  /** its loads in or out have tickets that tell of the whole bin */
  weighed: boolean;
  trusted: boolean;
  why: string;
  /** airflow over the true one, less 1; NaN where none is told */
  flowOff: number;
  flowHeld: boolean;
  /** points; NaN where none is told */
  endOff: number;
  endHeld: boolean;
  /** on the part that the fit has not seen */
  unseenK: number;
  unseenPoints: number;
  ms: number;
}

/** The bins of one drawn season, fitted. */
export async function modelCases(seed: number, workFolder: string, bad: Badness | null = null): Promise<ModelCase[]> {
  const { draw, traces, loaded, review } = await drawnSeason(seed, workFolder, bad);
  return review.bins.map((bin, i) => {
    const truth = binTruth(draw, traces[i]);
    const from = performance.now();
    const model = binModel(loaded, bin);
    const { flowM3S, endMoistureWb, unseen } = model;
    const held = (interval: [number, number] | null, value: number) =>
      interval !== null && interval[0] <= value && value <= interval[1];
    return {
      bin: `${seed} ${bin.bin.id}, ${draw.bins[i].crop} to ${draw.bins[i].goal}`,
      crop: draw.bins[i].crop,
      weighed: [bin.moisture.tickets?.start, bin.moisture.tickets?.end].some(
        (one) => one != null && one.agree !== null,
      ),
      trusted: model.trusted,
      why: model.why,
      flowOff: (flowM3S.value ?? Number.NaN) / truth.flowM3S - 1,
      flowHeld: held(flowM3S.interval, truth.flowM3S),
      endOff: 100 * (endMoistureWb.value ?? Number.NaN) - truth.endWb,
      endHeld: held(endMoistureWb.interval, truth.endWb / 100),
      unseenK: unseen?.misfit.temperatureK ?? Number.NaN,
      unseenPoints: unseen?.misfit.moisturePoints ?? Number.NaN,
      ms: performance.now() - from,
    };
  });
}
