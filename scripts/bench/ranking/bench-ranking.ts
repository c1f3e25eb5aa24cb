import { isothermOf } from '../../../src/grain/isotherm.ts';
import { isothermHumidity, isothermMoistureDb } from '../../../src/grain/isotherm-equations.ts';
import { mediumOf } from '../../../src/simulation/bed/medium-of.ts';
import { doubtedSpec } from '../../../src/simulation/doubt/doubted-spec.ts';
import { NEAR, surelyCheapest } from '../../../src/simulation/doubt/surely-cheapest.ts';
import type { Hours } from '../../../src/simulation/run/hours.ts';
import type { RunSpec } from '../../../src/simulation/run/run-spec.ts';
import { untilReached } from '../../../src/simulation/strategies/until-reached.ts';
import { KERNELS } from '../../sample/kernels.ts';
import { binHours } from './bin-hours.ts';
import { DOUBTS } from './doubts.ts';
import { type DrawnBin, drawBin } from './draw-bin.ts';
import { bedOfBin, CORE_AREA, fineRun } from './fine-run.ts';
import { RANKED, tryOut } from './try-out.ts';

const BINS = 50;
const LAYERS = 40;
/**
 * What isotherm the kit's bed has. The last is what a fit leaves where it takes the wrong edition: cables tell the humidity of the
 * grain's air and tickets its moisture, so that the edition goes through both.
 */
const BEDS = {
  known: "the grain's isotherm",
  usual: "the crop's usual one",
  moved: "the usual one through the start's moisture and humidity",
} as const;
/** Where that humidity is worked out, degC. */
const START_C = 15;
/**
 * Is the strategy that the kit calls cheapest cheapest in truth? For drawn bins every strategy is run in the kit's bed, which knows
 * airflow, core, start and respiration as well as a fit leaves them (drawn errors), and in the generator's finer bed with other
 * rates and heats. Bins in which no strategy or only one reaches its target in truth ask nothing of a ranking and are drawn again.
 */
export function benchRanking(bins = BINS, firstSeed = 1): void {
  process.stdout.write(
    'ranking: drawn bins whose strategy called cheapest reaches, and within 5 % of the cheapest, in truth\n',
  );
  for (const isotherm of ['known', 'usual', 'moved'] as const) {
    const { all, right, byOne } = rankBins(bins, firstSeed, isotherm);
    const one = Math.max(...byOne);
    process.stdout.write(
      `  ${right} of ${all} where the bed has ${BEDS[isotherm]}; ${RANKED[byOne.indexOf(one)].id} named for every bin would be in ${one}\n`,
    );
  }
}

/**
 * @param isotherm  what the kit's bed has, see `BEDS`
 * @param watch     told of each bin
 * @returns         bins that asked something; those whose pick was right; those where each strategy would have been
 */
export function rankBins(
  bins: number,
  firstSeed: number,
  isotherm: keyof typeof BEDS,
  watch: (bin: DrawnBin, right: boolean) => void = () => undefined,
): { all: number; right: number; byOne: number[] } {
  const count = { all: 0, right: 0, byOne: RANKED.map(() => 0) };
  for (let seed = firstSeed; count.all < bins; seed++) {
    const bin = drawBin(seed);
    const { weather, hours } = binHours(bin);
    const strategies = RANKED.map((one) => untilReached(one, bin.goal));
    const known = isotherm === 'known' ? KERNELS[bin.crop].isotherm : undefined;
    const truth = strategies.map((one) =>
      fineRun(bedOfBin(bin), bin, weather, hours, one, isothermOf(bin.crop, known)),
    );
    const there = truth.filter((one) => one.reached).map((one) => one.cost);
    if (there.length < 2) continue;
    const spec = believedSpec(bin, hours, known, isotherm === 'moved');
    const specs = DOUBTS.map((doubt) => doubtedSpec(spec, doubt));
    const pick = surelyCheapest(strategies.map((one) => tryOut(specs, one)));
    const most = NEAR * Math.min(...there);
    const isRight = truth.map((one) => one.reached && one.cost <= most);
    const right = pick !== null && isRight[pick.index];
    count.all += 1;
    if (right) count.right += 1;
    count.byOne = count.byOne.map((so, i) => so + (isRight[i] ? 1 : 0));
    watch(bin, right);
  }
  return count;
}

function believedSpec(bin: DrawnBin, hours: Hours, isotherm: string | undefined, moved: boolean): RunSpec {
  const { believed, depthM, crop, goal } = bin;
  const moistureWb = bin.moistureWb + believed.moistureWb;
  const respirationFactor = bin.breath * believed.breathFactor;
  const moistureShiftDb = moved ? shiftOf(bin, moistureWb / (1 - moistureWb)) : 0;
  const core = Math.min(1, bin.coreAir * believed.coreFactor);
  const blower = {
    airM3M2S: bin.airM3M2S * believed.airFactor,
    warmingK: bin.warmingK,
    powerW: bin.powerW,
    heaterK: 0,
    heaterW: 0,
    heaterFuelPerHour: 0,
  };
  return {
    bed: {
      medium: mediumOf(crop, bin.bulkKgM3 * (1 - moistureWb), {
        isotherm,
        respirationFactor,
        moistureShiftDb,
        rateFactor: believed.rateFactor,
      }),
      depthM,
      layers: LAYERS,
      pressurePa: hours.pressurePa,
      airShares: [core, (1 - CORE_AREA * core) / (1 - CORE_AREA)],
      areaShares: [CORE_AREA, 1 - CORE_AREA],
    },
    floorAreaM2: bin.floorAreaM2,
    hours,
    levels: [{ hour: 0, depthM, tempC: bin.tempC + believed.tempK, moistureDb: moistureWb / (1 - moistureWb), blower }],
    endHour: hours.tempC.length,
    headspaceK: 2,
    goal,
    targetWb: bin.targetWb,
    targetC: bin.targetC,
  };
}

/** A bed's isotherm is moved no farther, fraction of dry matter. */
const MOST_SHIFT_DB = 0.05;

/** What the grain holds more than the usual isotherm says in the air of its own, fraction of dry matter. */
function shiftOf({ crop }: DrawnBin, moistureDb: number): number {
  const own = isothermOf(crop, KERNELS[crop].isotherm);
  const usual = isothermOf(crop);
  const rh = isothermHumidity(own.equation, own.a, own.b, own.c, START_C, moistureDb);
  const shiftDb = moistureDb - isothermMoistureDb(usual.equation, usual.a, usual.b, usual.c, START_C, rh);
  return Math.min(MOST_SHIFT_DB, Math.max(-MOST_SHIFT_DB, shiftDb));
}
