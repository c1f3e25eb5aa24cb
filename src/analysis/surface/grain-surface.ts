import { errorText } from '../../base/error-text.ts';
import { type Estimate, estimate, withheld, Z90 } from '../../base/estimate.ts';
import { sensorShares } from '../../bin/shares.ts';
import type { Bin } from '../../season/season.ts';
import type { SensorSeries } from '../../tables/sensors.ts';
import type { AirRows } from '../air-rows.ts';
import { blownHours } from '../condition/blown-hours.ts';
import { placeTracks } from '../condition/place-tracks.ts';
import { STEP_MS, type StepGrid, stepGrid, stepMeans, stepMiddles } from '../condition/step-grid.ts';
import { fanHoursBetween } from '../fan/spans.ts';
import { betweenReadings } from '../fronts/between-readings.ts';
import { fillTimes } from '../grain/fill-times.ts';
import type { FanSpans } from '../types.ts';
import { atOneDepth } from './at-one-depth.ts';
import { withoutBare } from './bare-sensors.ts';
import { cableSurface, untoldSaid } from './cable-surface.ts';
import { grainDiffusivity } from './grain-diffusivity.ts';
import { noRestSaid, rests } from './rests.ts';
import type { SurfaceDistance } from './surface-distance.ts';
import type { GrainSurface } from './surface-types.ts';

export interface SurfaceInput {
  bin: Bin;
  /** of this bin */
  series: readonly SensorSeries[];
  /** null where a fan of the bin has no log */
  spans: FanSpans | null;
  weather: AirRows;
  /** moisture of the grain, fraction, wet basis; null where not known */
  moistureWb: number | null;
}

/** Grain poured in lies at 16 to 25 degrees (from memory): a heap of so much height for each metre across. */
const HEAP = 0.4;
/** A levelled depth is stated to so much of itself. */
const STATED_TO = 0.1;
/** Where no moisture is known, no depth. */
const USUAL_WB = 0.14;
const MOST_M = 50;
/** Weather is carried over holes so long, ms to either side. */
const NEAR_MS = 86_400_000 / 2;

/** How deep the grain lay, by where the weather's warmth comes in from above while the fans rest. */
export function grainSurface(input: SurfaceInput): GrainSurface {
  try {
    return worked(input);
  } catch (error) {
    // What breaks here takes neither the bin's moisture nor its money along.
    return untold(`It could not be worked out: ${errorText(error)}`, fillTimes(input.bin).depthM);
  }
}

function untold(why: string, statedM: number | null): GrainSurface {
  return { depthM: withheld(why), statedM, cables: 0, contradicted: false };
}

function worked({ bin, series, spans, weather, moistureWb }: SurfaceInput): GrainSurface {
  const { depthM: fullM, fullMs, wholeUntilMs } = fillTimes(bin);
  const none = (why: string, statedM = fullM) => untold(why, statedM);
  const lastMs = Math.max(...series.map(({ timeMs }) => timeMs[timeMs.length - 1] ?? Number.NEGATIVE_INFINITY));
  const firstMs = Math.min(...series.map(({ timeMs }) => timeMs[0] ?? Number.POSITIVE_INFINITY));
  if (!(lastMs > firstMs)) return none('No sensor of this bin has a log.');
  if (bin.fanIds.length > 0 && spans === null) return none('No log of every fan tells when the grain stood at rest.');
  const grid = stepGrid(Math.max(fullMs ?? firstMs, firstMs), Math.min(wholeUntilMs ?? lastMs, lastMs));
  const blownH = bin.fanIds.length === 0 ? new Float64Array(grid.count) : blownHours(spans, grid);
  const allRests = rests(blownH, 0, grid.count);
  if (allRests.length === 0) return none(noRestSaid(surelyBlown(spans, grid)));
  const { depthM, stretches } = atOneDepth(bin, grid, allRests);
  const outdoorC = outdoors(weather, grid);
  const weatherTold = stretches.some(([from, to]) => outdoorC.subarray(from, to).some((value) => !Number.isNaN(value)));
  if (!weatherTold) return none('No weather of the time at rest is known.', depthM);
  const inGrain = withoutBare(series, grid, stretches);
  // Moistures say nothing of the surface, and take as long to go through as temperatures.
  const dry = inGrain.series.map((one) => ({ ...one, moistureWb: new Float64Array(0) }));
  const tracks = placeTracks(bin, dry, spans, grid);
  const conducts = grainDiffusivity(bin.grain, moistureWb ?? USUAL_WB);
  const cables = bin.cables.map((cable) => {
    const own = tracks.filter((one) => one.cable === cable.id);
    const grain = { toWallM: bin.diameterM / 2 - cable.fromCentreM, ...conducts };
    return { cable, surface: cableSurface(own, outdoorC, inGrain.stretches, grain) };
  });
  const told = cables.flatMap(({ cable, surface }) => {
    if (typeof surface === 'string') return [];
    return [{ cable: cable.id, heapM: HEAP * Math.abs(cable.fromCentreM - bin.diameterM / 3), ...surface }];
  });
  if (told.length === 0) {
    return none(untoldSaid(cables.flatMap(({ surface }) => (typeof surface === 'string' ? [surface] : []))), depthM);
  }
  const shares = sensorShares(bin.diameterM, depthM ?? bin.eaveHeightM ?? MOST_M, bin.cables, (cable) =>
    told.some((one) => one.cable === cable),
  );
  const weighed = told.map((one) => ({
    ...one,
    share: shares.find(({ cable }) => cable === one.cable)!.cableShare,
  }));
  const mean = (of: (one: (typeof weighed)[number]) => number) =>
    weighed.reduce((sum, one) => sum + one.share * of(one), 0);
  const heapM = mean((one) => one.heapM);
  const at = (of: (found: SurfaceDistance) => number) => mean((one) => one.topM + of(one.found));
  const [lowM, highM] = [at((found) => found.intervalM[0]), at((found) => found.intervalM[1])];
  const slackM = heapM + STATED_TO * (depthM ?? 0);
  return {
    depthM: widened(
      at((found) => found.bestM),
      lowM,
      highM,
      heapM,
    ),
    statedM: depthM,
    cables: told.length,
    contradicted: depthM !== null && (depthM > highM + slackM || depthM < lowM - slackM),
  };
}

/** Nobody says whether it was levelled: a full heap, a full core and all between are alike likely, whose standard deviation is the heap over the root of 3. */
function widened(value: number, lowM: number, highM: number, heapM: number): Estimate {
  const half = Z90 * (heapM / Math.sqrt(3));
  return estimate(value, Math.max(0, value - Math.hypot(value - lowM, half)), value + Math.hypot(highM - value, half));
}

function surelyBlown(spans: FanSpans | null, { startMs, count }: StepGrid): Float64Array {
  return Float64Array.from({ length: count }, (_, i) =>
    spans === null ? 0 : fanHoursBetween(spans, startMs + i * STEP_MS, startMs + (i + 1) * STEP_MS),
  );
}

function outdoors({ temperatures: { timeMs, tempC } }: AirRows, grid: StepGrid): Float64Array {
  const means = stepMeans(timeMs, tempC, grid);
  const middles = stepMiddles(grid);
  const known = [...means.keys()].filter((step) => !Number.isNaN(means[step]));
  const at = Float64Array.from(known, (step) => middles[step]);
  return betweenReadings(
    at,
    Float64Array.from(known, (step) => means[step]),
    middles,
    NEAR_MS,
  );
}
