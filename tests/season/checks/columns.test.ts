import { describe, expect, it } from 'vitest';
import { checkSeason } from '../../../src/season/checks/check-season.ts';
import { FLAGS } from '../../../src/tables/flags.ts';
import { fileOf } from '../readers/season-of.ts';
import { type Made, make } from './made-bin.ts';
import { madeSeason, table, tablesOf, text } from './made-season.ts';

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

  // Of a bin in °C that few cold days make impossible as moistures: 8 °C told as 8 %, 14 % told as 14 °C. Its grain is kept
  // above 4 °C, which no moisture below 3 % gives away.
  const mild = (one: Made): Made => ({ ...one, temp: one.temp.map((its) => its.map((tempC) => Math.max(4, tempC))) });

  it('are told by their pattern where hardly a moisture is impossible: each moves as what it is', () => {
    for (const seed of SEEDS) {
      const one = swapC(mild(made(seed)));
      const impossible = one.moisture.flatMap((its) => [...its]).filter((wb) => wb < 0.03 || wb > 0.45).length;
      expect(impossible / (one.moisture.length * one.timeMs.length)).toBeLessThan(0.02);
      const { columns, flags } = told(one, 'degC');
      expect(
        columns.map(({ where, kind }) => `${kind} ${where}`),
        `${seed}`,
      ).toEqual(['unit cables.csv']);
      expect(columns[0].text).toContain('move as far as the season’s temperatures do');
      expect(flags.temp.every((bits) => (bits & FLAGS.unit) !== 0)).toBe(true);
    }
  });

  it('are not told by it of mild grain as it is, nor where all thermometers stand at some degrees while the grain dries', () => {
    for (const seed of SEEDS) {
      const one = mild(made(seed));
      expect(told(one, 'degC').columns).toEqual([]);
      // A dead board that wavers by a tenth about 14 °C; the grain dries by eight points over the season, ever more slowly.
      const dried = one.moisture.map((its) => its.map((_, i) => 0.13 + 0.08 * Math.exp((-4 * i) / its.length)));
      const dead = { ...one, temp: one.temp.map((its) => its.map((_, i) => 14 + (i % 3) / 10)), moisture: dried };
      expect(told(dead, 'degC').columns, `${seed}`).toEqual([]);
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

describe('columns of temperature and humidity of a plenum exchanged in season.yaml', () => {
  /** Outdoor air 1.5 K warmer, with the vapour that it had: 90 % of its humidity. */
  const airOf = (one: Made) => ({
    temp_c: one.airC.map((tempC) => tempC + 1.5),
    rh: one.airRh.map((rh) => 0.9 * rh),
  });
  // A number in the wrong column: 68 (percent) told as 68 °F is 20 °C, 41 (°F) told as percent is 0.41.
  const swapped = (one: Made, unit: 'degF' | 'degC', column = { temp: airOf(one).temp_c, rh: airOf(one).rh }) =>
    unit === 'degF'
      ? { temp_c: column.rh.map((rh) => (100 * rh - 32) / 1.8), rh: column.temp.map((c) => (1.8 * c + 32) / 100) }
      : { temp_c: column.rh.map((rh) => 100 * rh), rh: column.temp.map((c) => c / 100) };
  const checked = (one: Made, unit: string, air: { temp_c: Float64Array; rh: Float64Array }, outdoors = true) => {
    const rows = one.airMs.length;
    const plenum = table('plenum', rows, { time: one.airMs, bin: text(rows, 'B1'), ...air });
    const season = madeSeason(one.options, { unit });
    const column = (header: string, its: string | null) => ({ header, unit: its });
    const columns = { time: column('t', null), temperature: column('T', unit), humidity: column('rh', '%') };
    const files = [...season.files, fileOf('plenum', 'plenum.csv', { columns })];
    const none = outdoors ? {} : { weather: table('weather', 0, {}) };
    const { findings, flags } = checkSeason({ ...season, files }, tablesOf(one, { plenum, ...none }));
    const its = findings.filter(({ where }) => where.includes('plenum'));
    return { its, columns: its.filter(({ text: said }) => said.includes('swapped')), flags: flags.plenum };
  };

  it.each(['degF', 'degC'] as const)(
    'in %s: told once as what it is, with the next step, and no row believed',
    (unit) => {
      for (const seed of SEEDS) {
        const one = made(seed);
        const { its, flags } = checked(one, unit, swapped(one, unit));
        expect(
          its.map(({ kind, where }) => `${kind} ${where}`),
          `${seed}`,
        ).toEqual(['unit plenum.csv']);
        expect(its[0].text).toContain('temperature and humidity are swapped');
        expect(its[0].advice).toContain('exchange the two columns');
        expect(flags.every((bits) => bits === FLAGS.unit)).toBe(true);
      }
    },
  );

  it('without weather: in °C, where much of what is said cannot be; in °F nobody can be sure', () => {
    const one = made(11);
    expect(checked(one, 'degC', swapped(one, 'degC'), false).columns).toHaveLength(1);
    expect(checked(one, 'degF', swapped(one, 'degF'), false).columns).toEqual([]);
  });

  it('are not told of a plenum as it is, of one on the other scale, of a heated one, nor of one whose sensor failed', () => {
    for (const seed of SEEDS.slice(0, 2)) {
      const one = made(seed);
      const air = airOf(one);
      for (const outdoors of [true, false]) {
        for (const unit of ['degF', 'degC']) {
          expect(checked(one, unit, air, outdoors).columns).toEqual([]);
          const heated = { temp_c: air.temp_c.map((c) => c + 15), rh: air.rh.map((rh) => rh * 0.4) };
          expect(checked(one, unit, heated, outdoors).columns).toEqual([]);
          const failed = { ...air, temp_c: air.temp_c.map((c, i) => (i % 3 === 0 ? 85 : c)) };
          expect(checked(one, unit, failed, outdoors).columns).toEqual([]);
        }
        expect(
          checked(one, 'degF', { ...air, temp_c: air.temp_c.map((c) => (c - 32) / 1.8) }, outdoors).columns,
        ).toEqual([]);
      }
    }
  });

  it.each([
    [0, 15],
    [0, 18],
    [-4, 18],
    [-8, 20],
  ])(
    'nor of air at %d °C in the mean that a heater warms by %d K: its humidity, told in °F, looks like that air',
    (meanC, warmedK) => {
      // Tetens over water (Murray 1967): the vapour stays, what the air could hold rises.
      const most = (tempC: number) => Math.exp((17.27 * tempC) / (tempC + 237.3));
      for (const seed of SEEDS.slice(0, 2)) {
        const warm = made(seed);
        const mean = warm.airC.reduce((sum, c) => sum + c, 0) / warm.airC.length;
        const one = { ...warm, airC: warm.airC.map((c) => 0.6 * (c - mean) + meanC) };
        const temp_c = one.airC.map((c) => c + warmedK);
        const rh = one.airRh.map((own, i) => (own * most(one.airC[i])) / most(temp_c[i]));
        expect(checked(one, 'degF', { temp_c, rh }).columns, `${seed}`).toEqual([]);
        // The same columns exchanged in season.yaml are still told for unheated air of such a winter.
        expect(checked(one, 'degF', swapped(one, 'degF')).columns, `${seed}`).toHaveLength(1);
      }
    },
  );
});
