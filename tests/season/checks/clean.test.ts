import { describe, expect, it } from 'vitest';
import { checkSeason } from '../../../src/season/checks/check-season.ts';
import { make, type Options } from './made-bin.ts';
import { madeSeason, tablesOf } from './made-season.ts';

/** Steps of 0.1 °F, 1 °F, 0.1 °C; logs of a quarter hour to six hours; with and without noise; every way of running the fan. */
const VARIANTS: Partial<Options>[] = [
  { everyH: 1, tempStepK: 1 / 18, tempNoiseK: 0.05 },
  { everyH: 1, tempStepK: 1 / 18, tempNoiseK: 0, moistureNoiseWb: 0 },
  { everyH: 1, tempStepK: 5 / 9, tempNoiseK: 0.05, moistureNoiseWb: 0 },
  { everyH: 1, tempStepK: 5 / 9, tempNoiseK: 0.2 },
  { everyH: 2, tempStepK: 5 / 9, tempNoiseK: 0, fan: 'nights' },
  { everyH: 2, tempStepK: 0.1, tempNoiseK: 0.1, fan: 'nights' },
  { everyH: 3, tempStepK: 1 / 18, tempNoiseK: 0.1 },
  { everyH: 6, tempStepK: 5 / 9, tempNoiseK: 0.1, fan: 'nights' },
  { everyH: 6, tempStepK: 1 / 18, tempNoiseK: 0, moistureNoiseWb: 0 },
  { everyH: 0.25, tempStepK: 0.1, tempNoiseK: 0.03, days: 60 },
  { everyH: 1, tempStepK: 5 / 9, tempNoiseK: 0, moistureNoiseWb: 0, fan: 'none' },
  { everyH: 1, tempStepK: 1 / 18, tempNoiseK: 0.05, fanLog: false },
  { everyH: 3, tempStepK: 5 / 9, tempNoiseK: 0.1, fan: 'nights', fanLog: false },
];

// 13 variants x 3 seeds x 18 sensors: of 702 clean sensors none may carry a flag.
describe('clean seasons', () => {
  it.each(VARIANTS.map((variant, k) => [JSON.stringify(variant), k] as const))('stay unflagged: %s', (_, k) => {
    for (let seed = 1; seed <= 3; seed++) {
      const made = make({ ...VARIANTS[k], seed: 100 * k + seed, days: VARIANTS[k].days ?? 150, cables: 3 });
      const { flags, findings } = checkSeason(madeSeason(made.options), tablesOf(made));
      expect(
        findings.filter((one) => one.kind !== 'silent').map((one) => `${one.kind} ${one.where} ${one.text}`),
      ).toEqual([]);
      expect(flags.readings.temp.some((bits) => bits !== 0)).toBe(false);
      expect(flags.readings.moisture.some((bits) => bits !== 0)).toBe(false);
      expect(flags.weather.some((bits) => bits !== 0)).toBe(false);
    }
  });
});
