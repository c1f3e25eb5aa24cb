import { describe, expect, it } from 'vitest';
import type { BinLog } from '../../../src/analysis/model/bin-log.ts';
import { type CableValues, playCable } from '../../../src/analysis/model/play-cable.ts';
import { isothermOf } from '../../../src/grain/isotherm.ts';
import { mediumOf } from '../../../src/simulation/bed/medium-of.ts';

const HOURS = 1200;
const OUTDOOR_C = 12;
const WARMING_K = 3;

/** The lowest sensor of corn through which so much air went of one kind that its layer has come to balance with it, degC. */
function lowestC(
  values: Partial<CableValues>,
  { warmingK = null as number | null, loggedC = Number.NaN, heaterK = 0 } = {},
) {
  const isotherm = isothermOf('corn');
  const every = (value: number) => new Float64Array(HOURS).fill(value);
  const log = {
    bin: { air: 'up' },
    depthM: 4,
    cables: [{ sensors: [{ heightM: 0.1 }] }],
    weather: { hours: { tempC: every(OUTDOOR_C), humidityRatio: every(0.0055), pressurePa: 101_325 } },
    fan: { on: every(1) },
    relativeFlow: every(1),
    volumeM3Kg: every(0.815),
    enteringC: every(loggedC),
    warmingK,
  } as unknown as BinLog;
  const blower = { airM3M2S: 0.1, warmingK: WARMING_K, powerW: 5000, heaterK, heaterW: 0, heaterFuelPerHour: 0 };
  const profile = { heightM: Float64Array.of(1), tempC: Float64Array.of(15), moistureDb: Float64Array.of(0.18) };
  const { tempC } = playCable(
    {
      ...{ log, medium: mediumOf('corn', 620), isotherm, cableIsotherm: isotherm, layers: 20 },
      levels: [{ hour: 0, depthM: 4, tempC: 15, moistureDb: 0.18, blower }],
      readHours: [HOURS - 1],
      sampledReads: new Set(),
    },
    0,
    profile,
    {
      ...{ flowFactor: 1, fansFlowFactor: 1, enteringK: 0, cablesK: 0, wallWM3K: 0, startK: 0 },
      ...{ respirationFactor: 0, heatFactor: 1, rateFactor: 2, slip: 0, ...values },
    },
  );
  return tempC[0];
}

// A layer in balance with the air that passes has its temperature.
describe('the air that enters the grain of a fitted bed', () => {
  it('is outdoor air warmed by the fan, by half as much where twice the air takes the fan’s heat', () => {
    expect(lowestC({})).toBeCloseTo(OUTDOOR_C + WARMING_K, 1);
    expect(lowestC({ flowFactor: 2, fansFlowFactor: 2 })).toBeCloseTo(OUTDOOR_C + WARMING_K / 2, 1);
    // A cable with more air than the others gets no other air.
    expect(lowestC({ flowFactor: 2 })).toBeCloseTo(OUTDOOR_C + WARMING_K, 1);
  });

  it('is warmed as the plenum’s readings say, whatever the airflow; a heater’s warming still goes by the air', () => {
    expect(lowestC({ fansFlowFactor: 2 }, { warmingK: WARMING_K })).toBeCloseTo(OUTDOOR_C + WARMING_K, 1);
    expect(lowestC({ fansFlowFactor: 2 }, { warmingK: WARMING_K, heaterK: 7 })).toBeCloseTo(OUTDOOR_C + 10 / 2, 1);
    expect(lowestC({ fansFlowFactor: 2 }, { warmingK: WARMING_K, loggedC: 19 })).toBeCloseTo(19, 1);
  });

  it('shows at sensors that all read too much by so much more', () => {
    expect(lowestC({ cablesK: 0.3 })).toBeCloseTo(OUTDOOR_C + WARMING_K + 0.3, 1);
  });

  it('is off by what the fit finds, where the plenum logged it too', () => {
    expect(lowestC({ enteringK: 0.6 })).toBeCloseTo(OUTDOOR_C + WARMING_K + 0.6, 1);
    expect(lowestC({ enteringK: -0.6 }, { warmingK: WARMING_K, loggedC: 19 })).toBeCloseTo(18.4, 1);
  });
});
