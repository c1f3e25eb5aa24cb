import { describe, expect, it } from 'vitest';
import { type BinLog, binLog } from '../../../src/analysis/model/bin-log.ts';
import { modelOf } from '../../../src/analysis/model/fit-bin.ts';
import {
  CABLES_K,
  ENTERING,
  FIRST_CABLE,
  FLOW,
  fitParameters,
  START,
} from '../../../src/analysis/model/fit-parameters.ts';
import { fitSamples } from '../../../src/analysis/model/fit-samples.ts';
import { isothermChoices } from '../../../src/analysis/model/isotherm-choices.ts';
import { paperMoistures } from '../../../src/analysis/model/paper-moistures.ts';
import { levelsOf, runSpecOf, type Start } from '../../../src/analysis/model/run-spec-of.ts';
import { loadedSample, reviewedSample } from '../../support/sample.ts';

const loaded = await loadedSample('sorrel-fork');
const [b1] = (await reviewedSample('sorrel-fork')).bins;
const log = binLog(loaded, b1) as BinLog;
const untold: BinLog = { ...log, warmingK: null };
const BASE_M3S = 5;
const start: Start = { tempC: Float64Array.of(15), moistureDb: Float64Array.of(0.2) };
const blower = (of: BinLog, flowM3S: number, fitted = {}) => levelsOf(of, flowM3S, start, fitted)[0].blower;

/** A fit of B1's log at these values, by their places, in units. */
function fitAt(moved: Record<number, number>, of = untold) {
  const parameters = fitParameters(of, BASE_M3S);
  const samples = fitSamples(of);
  const none = of.cables.map(({ sensors }) => new Float64Array(sensors.length));
  const papers = paperMoistures(of, [of.startMs]);
  const model = modelOf(of, samples, parameters, isothermChoices(of)[0], BASE_M3S, 0, none, papers);
  return model.fitAt(
    parameters.list.map((_, k) => moved[k] ?? 0),
    0,
  );
}

describe('what a fit finds of air and thermometers, in runs of other ways', () => {
  it('warms the air that enters as the fit had it, whatever air cables and pressure then give the whole bin', () => {
    const { heatedM3S, flowM3S, enteringK } = fitAt({ [FLOW]: 0.4, [FIRST_CABLE]: 1, [ENTERING]: -0.5 });
    // A unit of the airflow is half in its logarithm.
    expect(heatedM3S).toBeCloseTo(BASE_M3S * Math.exp(0.2), 9);
    expect(flowM3S).toBeGreaterThan(1.01 * heatedM3S);
    const run = blower(untold, 1.1 * flowM3S, { heatedM3S, enteringK });
    expect(run.warmingK).toBeCloseTo(blower(untold, BASE_M3S).warmingK / Math.exp(0.2) + enteringK, 9);
    expect(run.airM3M2S).toBeCloseTo((1.1 * flowM3S) / log.floorAreaM2, 9);
    expect(enteringK).toBeLessThan(-0.1);
  });

  it('leaves the warming of a fan that serves other bins too as its power says, for no one knows this bin’s part', () => {
    const sharing = { ...loaded.season.bins[1], fanIds: log.bin.fanIds };
    const shared: BinLog = { ...untold, season: { ...log.season, bins: [log.bin, sharing] } };
    expect(fitAt({ [FLOW]: 0.4 }, shared).heatedM3S).toBe(BASE_M3S);
  });

  it('parts what the air was warmer between fan and heater', () => {
    const heater = { fuel: 'propane', outputW: 60_000, efficiency: 0.9, pricePerJ: null } as const;
    const fans = log.season.fans.map((fan) => ({ ...fan, heater: log.bin.fanIds.includes(fan.id) ? heater : null }));
    const heated: BinLog = { ...untold, season: { ...log.season, fans } };
    const [plain, more] = [blower(heated, BASE_M3S), blower(heated, BASE_M3S, { enteringK: 2 })];
    expect(plain.heaterK).toBeGreaterThan(5);
    expect(more.warmingK + more.heaterK).toBeCloseTo(plain.warmingK + plain.heaterK + 2, 9);
    expect(more.warmingK / more.heaterK).toBeCloseTo(plain.warmingK / plain.heaterK, 9);
  });

  it('counts what all thermometers read too much off the start, once', () => {
    const { startK, cablesK } = fitAt({ [START]: 1, [CABLES_K]: 1 });
    expect(cablesK).toBeCloseTo(0.2, 9);
    expect(startK).toBeCloseTo(0.5 - 0.2, 9);
  });

  it('reaches the run of the whole bin: the fan’s warming, or the air under the roof where it is drawn from there', () => {
    const entering = (air: 'up' | 'down', enteringK: number) => {
      const { spec } = runSpecOf(loaded, { ...b1, bin: { ...b1.bin, air } }, { flowM3S: BASE_M3S, enteringK });
      return [spec!.levels[0].blower.warmingK, spec!.headspaceK ?? 0];
    };
    const [told] = entering('up', 0);
    expect(entering('up', 0.4)).toEqual([expect.closeTo(told + 0.4, 9), 0]);
    expect(entering('down', 0.4)).toEqual([0, 0.4]);
  });
});
