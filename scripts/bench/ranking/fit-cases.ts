import { humidityRatioOfVapour } from '../../../src/air/humidity-ratio.ts';
import { binModel } from '../../../src/analysis/model/bin-model.ts';
import { runSpecOf } from '../../../src/analysis/model/run-spec-of.ts';
import type { BinReview } from '../../../src/analysis/types.ts';
import { type Isotherm, isothermOf } from '../../../src/grain/isotherm.ts';
import type { LoadedSeason } from '../../../src/season/loaded.ts';
import { clearlyCheapest, NEAR, surelyCheapest } from '../../../src/simulation/doubt/surely-cheapest.ts';
import type { Hours } from '../../../src/simulation/run/hours.ts';
import type { RunSpec } from '../../../src/simulation/run/run-spec.ts';
import type { Strategy } from '../../../src/simulation/strategies/strategy.ts';
import { untilReached } from '../../../src/simulation/strategies/until-reached.ts';
import { humidityRatio, specificVolume } from '../../sample/air.ts';
import { DAY, HOUR } from '../../sample/calendar.ts';
import { type AirNow, inventWeather, type Weather, weatherAt } from '../../sample/weather.ts';
import { flowOf } from '../coverage/draw-fan.ts';
import type { BinDraw } from '../coverage/plan.ts';
import { LAYERS, makeColumns, pourIn, TO_AIR } from '../coverage/run-bin.ts';
import { drawnSeason } from '../model/drawn-season.ts';
import { type FineBed, fineRun } from './fine-run.ts';
import { RANKED, tryOut } from './try-out.ts';

/** The autumn in which a bin is ranked has the weather of this seed and the season's. */
const OTHER_AUTUMN = 100_000;

/** A bin fitted to its log and ranked in other weather. */
export interface FitCase {
  bin: string;
  /** `withheld`: its model is not trusted; `nothing asked`: in truth fewer than two strategies reach the target */
  told: 'right' | 'wrong' | 'none named' | 'withheld' | 'nothing asked';
  /** what was named and what it truly comes to over the truly cheapest, less 1; NaN where it misses */
  pick: string | null;
  /** whether it is told as the cheapest, or as one of those that may be */
  clear: boolean;
  over: number;
  cheapest: string | null;
  /** of each strategy: within 5 % of the cheapest in truth */
  rightOnes: readonly boolean[];
  /** of the strategies that reach, in truth and as fitted: those whose range over all runs holds the true cost */
  held: number;
  ranges: number;
  why: string;
}

/** The bins to be dried or conditioned of one drawn season: fitted to their logs, ranked in weather that the fit has not seen. */
export async function fitCases(seed: number, workFolder: string): Promise<FitCase[]> {
  const { draw, weather: ofSeason, loaded, review } = await drawnSeason(seed, workFolder);
  return review.bins.flatMap((bin, i) => {
    const of = draw.bins[i];
    if (of.goal !== 'dry' && of.goal !== 'condition') return [];
    const weather = inventWeather(seed + OTHER_AUTUMN, draw.startMs - 5 * DAY, draw.endMs + 6 * DAY);
    const truly = (spec: RunSpec, strategy: Strategy, isotherm: Isotherm) =>
      fineRun(bedOfDraw(of, ofSeason), spec, weather, spec.hours, strategy, isotherm);
    return [fitCase(`${seed} ${of.id}, ${of.crop} to ${of.goal}`, loaded, bin, weather, truly)];
  });
}

function fitCase(
  bin: string,
  loaded: LoadedSeason,
  review: BinReview,
  weather: Weather,
  truly: (spec: RunSpec, strategy: Strategy, isotherm: Isotherm) => ReturnType<typeof fineRun>,
): FitCase {
  const none = { bin, pick: null, clear: false, over: Number.NaN, cheapest: null, rightOnes: [], held: 0, ranges: 0 };
  const model = review.failure === null ? binModel(loaded, review) : null;
  if (model === null || !model.trusted || model.fitted === null)
    return { ...none, told: 'withheld', why: model?.why ?? String(review.failure) };
  const found = runSpecOf(loaded, review, model.fitted, model.mayBes);
  if (found.spec === null) return { ...none, told: 'withheld', why: found.why };
  const hours = inWeather(found.spec.hours, weather);
  const specs = found.specs.map((one) => ({ ...one, hours }));
  const [spec] = specs;
  const strategies = RANKED.map((one) => untilReached(one, spec.goal));
  const isotherm = isothermOf(review.bin.grain.crop, model.fitted.isotherm);
  const truth = strategies.map((one) => truly(spec, one, isotherm));
  const costs = truth.filter(({ reached }) => reached).map(({ cost }) => cost);
  if (costs.length < 2) return { ...none, told: 'nothing asked', why: '' };
  const least = Math.min(...costs);
  const tried = strategies.map((one) => tryOut(specs, one));
  const pick = surelyCheapest(tried);
  const both = tried.flatMap((runs, k) => (runs[0].reached && truth[k].reached ? [{ runs, true: truth[k].cost }] : []));
  const isHeld = ({ runs, true: cost }: (typeof both)[number]) =>
    cost >= Math.min(...runs.map((run) => run.cost)) && cost <= Math.max(...runs.map((run) => run.cost));
  const picked = pick === null ? null : truth[pick.index];
  const over = picked?.reached ? picked.cost / least - 1 : Number.NaN;
  return {
    bin,
    told: pick === null ? 'none named' : over <= NEAR - 1 ? 'right' : 'wrong',
    pick: pick === null ? null : RANKED[pick.index].id,
    clear: pick !== null && clearlyCheapest(pick),
    over,
    cheapest: RANKED[truth.findIndex(({ reached, cost }) => reached && cost === least)].id,
    rightOnes: truth.map(({ reached, cost }) => reached && cost <= NEAR * least),
    held: both.filter(isHeld).length,
    ranges: both.length,
    why: '',
  };
}

/** Clock and prices stay, the air is another autumn's. */
function inWeather(hours: Hours, weather: Weather): Hours {
  const air = Array.from(hours.tempC, (_, hour) => weatherAt(weather, hours.startMs + (hour + 0.5) * HOUR));
  return {
    ...hours,
    tempC: Float64Array.from(air, ({ tempC }) => tempC),
    rh: Float64Array.from(air, ({ rh }) => rh),
    humidityRatio: Float64Array.from(air, ({ vapourPa }) => humidityRatioOfVapour(vapourPa, hours.pressurePa)),
  };
}

/** A bin as it was filled in its own season: the bed in which that was played. */
function bedOfDraw(draw: BinDraw, ofSeason: Weather): FineBed {
  const { columns, faces, areaM2 } = makeColumns(draw);
  const layerM = draw.depthM / LAYERS;
  pourIn(draw, columns, ofSeason, layerM);
  const flowM3S = flowOf(draw);
  const kgS = ({ tempC, vapourPa, pressurePa }: AirNow) =>
    flowM3S / specificVolume(tempC, humidityRatio(vapourPa, pressurePa), pressurePa);
  return {
    ...{ columns, faces, kernel: draw.grain, layers: LAYERS, layerM },
    airKgM2S: (air) => kgS(air) / areaM2,
    warmingK: (air) => (1000 * draw.fan.kw * TO_AIR) / (1006 * kgS(air)),
    headspaceC: ({ tempC, sunWm2 }) => tempC + 0.008 * sunWm2,
    wallC: ({ tempC, sunWm2, windMs }) => tempC + (0.3 * sunWm2) / (5.7 + 3.8 * windMs),
    powerKw: draw.fan.kw,
  };
}
