import { describe, expect, it } from 'vitest';
import { checkSeason } from '../../../src/season/checks/check-season.ts';
import { FLAGS } from '../../../src/tables/flags.ts';
import { type Made, make } from './made-bin.ts';
import { madeSeason, tablesOf } from './made-season.ts';

const SEEDS = [11, 12, 13, 14];
const made = (seed: number) => make({ seed, days: 150, fan: seed % 2 === 0 ? 'nights' : 'continuous' });
const told = (one: Made, unit = 'degF') => {
  const { findings, flags } = checkSeason(madeSeason(one.options, { unit }), tablesOf(one));
  const columns = findings.filter(({ text }) => /swapped/.test(text));
  return { columns, findings, flags: flags.readings };
};
// A number in the wrong column: 18 (percent) told as 18 °F is −7.8 °C, 65 (°F) told as percent is 0.65.
const swapF = (one: Made): Made => ({
  ...one,
  temp: one.moisture.map((its) => its.map((wb) => (100 * wb - 32) / 1.8)),
  moisture: one.temp.map((its) => its.map((tempC) => (1.8 * tempC + 32) / 100)),
});
const swapC = (one: Made): Made => ({
  ...one,
  temp: one.moisture.map((its) => its.map((wb) => 100 * wb)),
  moisture: one.temp.map((its) => its.map((tempC) => tempC / 100)),
});

describe('columns of temperature and moisture exchanged in season.yaml', () => {
  it('are told once, for the file, and none of its readings is believed', () => {
    for (const seed of SEEDS)
      for (const [swap, unit] of [
        [swapF, 'degF'],
        [swapC, 'degC'],
      ] as const) {
        const { columns, findings, flags } = told(swap(made(seed)), unit);
        expect(
          columns.map(({ where, kind }) => `${kind} ${where}`),
          `${seed} ${unit}`,
        ).toEqual(['unit cables.csv']);
        expect(columns[0].text).toContain('12 of 12 sensors');
        expect(findings.filter(({ advice }) => advice?.includes('repaired'))).toEqual([]);
        for (const bits of [flags.temp, flags.moisture])
          expect(bits.every((one) => (one & FLAGS.unit) !== 0)).toBe(true);
      }
  });

  it('are not told of a bin as it is, nor of one whose moisture sensors fail one after the other', () => {
    for (const seed of SEEDS) {
      const one = made(seed);
      for (const unit of ['degF', 'degC']) expect(told(one, unit).columns).toEqual([]);
      // 0 % from the middle of the season on, on 7 of 12 sensors: a code, and no temperature.
      const failed = one.moisture.map((its, sensor) => its.map((wb, i) => (sensor < 7 && 2 * i > its.length ? 0 : wb)));
      for (const unit of ['degF', 'degC']) expect(told({ ...one, moisture: failed }, unit).columns).toEqual([]);
    }
  });
});

describe('a quantity most of whose readings cannot be', () => {
  const one = made(15);
  const wet = (sensors: number): Made => ({
    ...one,
    moisture: one.moisture.map((its, sensor) => its.map((wb, i) => (sensor < sensors && i % 4 > 0 ? wb + 0.4 : wb))),
  });

  it('on most sensors of a file: the file’s columns and units are in doubt, before a sensor is', () => {
    const { columns } = told(wet(7));
    expect(columns.map(({ where, cells }) => [where, cells])).toEqual([['cables.csv', 0]]);
    expect(columns[0].text).toContain('most moisture readings of 7 of 12 sensors cannot be');
    expect(columns[0].advice).toContain('before a sensor is repaired');
  });

  it('on half of them: sensors that failed', () => {
    const { columns, findings } = told(wet(6));
    expect(columns).toEqual([]);
    expect(findings.some(({ advice }) => advice?.includes('repaired'))).toBe(true);
  });
});
