import { describe, expect, it } from 'vitest';
import { checkSeason } from '../../../src/season/checks/check-season.ts';
import { FLAGS, type FlagName } from '../../../src/tables/flags.ts';
import { draws, HOUR, type Made, make, type Options } from './made-bin.ts';
import { madeSeason, tablesOf } from './made-season.ts';

/** Cells that a fault was planted in, `sensor:reading`. */
type Planted = Set<string>;

const LOGS: Partial<Options>[] = [
  { everyH: 1, tempStepK: 1 / 18, tempNoiseK: 0.05 },
  { everyH: 1, tempStepK: 5 / 9, tempNoiseK: 0.2 },
  { everyH: 2, tempStepK: 0.1, tempNoiseK: 0.1, fan: 'nights' },
  { everyH: 3, tempStepK: 1 / 18, tempNoiseK: 0.1 },
];

/** Plant, check, and count: share of planted cells found, and cells flagged where nothing was planted. */
function trial(
  plant: (made: Made, uniform: () => number) => Planted,
  cell: 'temp' | 'moisture',
  flag: FlagName,
  given: { options?: Partial<Options>; unit?: string } = {},
): { found: number; planted: number; wrong: number; cells: number } {
  const sum = { found: 0, planted: 0, wrong: 0, cells: 0 };
  for (let seed = 1; seed <= 8; seed++) {
    const made = make({ ...LOGS[seed % LOGS.length], days: 150, cables: 3, ...given.options, seed: 7000 + seed });
    const planted = plant(made, draws(900 + seed).uniform);
    const { flags } = checkSeason(madeSeason(made.options, { unit: given.unit }), tablesOf(made));
    const n = made.timeMs.length;
    flags.readings[cell].forEach((bits, row) => {
      const isPlanted = planted.has(`${Math.floor(row / n)}:${row % n}`);
      const has = (bits & FLAGS[flag]) !== 0;
      sum.cells += 1;
      if (isPlanted) sum.planted += 1;
      if (isPlanted && has) sum.found += 1;
      // A planted cell may carry another flag beside; elsewhere there must be none of any kind.
      if (!isPlanted && bits !== 0) sum.wrong += 1;
    });
  }
  return sum;
}

function hold(made: Made, column: Float64Array[], sensor: number, first: number, days: number): Planted {
  const planted: Planted = new Set();
  const value = column[sensor][first];
  const last = Math.min(made.timeMs.length, first + Math.round((days * 24) / made.options.everyH));
  for (let i = first; i < last; i++) {
    column[sensor][i] = value;
    planted.add(`${sensor}:${i}`);
  }
  return planted;
}

const DETECTED = 0.95;

describe('planted faults are found, and nothing beside them', () => {
  it('a stuck temperature in the drying weeks', () => {
    const { found, planted, wrong } = trial(
      (made, uniform) =>
        hold(made, made.temp, 6 + 1 + Math.floor(uniform() * 4), Math.floor(24 / made.options.everyH), 20),
      'temp',
      'stuck',
    );
    expect(planted).toBeGreaterThan(1000);
    expect(found / planted).toBeGreaterThanOrEqual(DETECTED);
    // A run may grow by a reading that happens to be the same before or after.
    expect(wrong).toBeLessThanOrEqual(8);
  });

  it('a sensor that flickers and then freezes in still grain, at any place on the cable', () => {
    const { found, planted, wrong } = trial(
      (made, uniform) =>
        hold(made, made.temp, Math.floor(uniform() * 18), Math.floor((100 * 24) / made.options.everyH), 15),
      'temp',
      'stuck',
      { options: { everyH: 1, tempStepK: 1 / 18, tempNoiseK: 0.05 } },
    );
    expect(found / planted).toBeGreaterThanOrEqual(DETECTED);
    expect(wrong).toBeLessThanOrEqual(16);
  });

  it('a stuck moisture', () => {
    const { found, planted, wrong } = trial(
      (made, uniform) =>
        hold(made, made.moisture, 6 + 1 + Math.floor(uniform() * 4), Math.floor(48 / made.options.everyH), 30),
      'moisture',
      'stuck',
    );
    expect(found / planted).toBeGreaterThanOrEqual(DETECTED);
    expect(wrong).toBeLessThanOrEqual(16);
  });

  it('spikes of one to three readings, up and down', () => {
    const { found, planted, wrong } = trial(
      (made, uniform) => {
        const cells: Planted = new Set();
        for (let k = 0; k < 30; k++) {
          const sensor = Math.floor(uniform() * made.temp.length);
          const first = 10 + Math.floor(uniform() * (made.timeMs.length - 20));
          const width = 1 + Math.floor(uniform() * 3);
          const height = (uniform() < 0.5 ? -1 : 1) * (14 + 15 * uniform());
          if ([...Array(width + 12).keys()].some((i) => cells.has(`${sensor}:${first - 6 + i}`))) continue;
          for (let i = first; i < first + width; i++) {
            made.temp[sensor][i] += height;
            cells.add(`${sensor}:${i}`);
          }
        }
        return cells;
      },
      'temp',
      'spike',
    );
    expect(planted).toBeGreaterThan(300);
    expect(found / planted).toBeGreaterThanOrEqual(DETECTED);
    expect(wrong).toBe(0);
  });

  it('moisture spikes of six points', () => {
    const { found, planted, wrong } = trial(
      (made, uniform) => {
        const cells: Planted = new Set();
        for (let k = 0; k < 20; k++) {
          const sensor = Math.floor(uniform() * made.temp.length);
          const i = 10 + 40 * k + Math.floor(uniform() * 20);
          made.moisture[sensor][i] += uniform() < 0.5 ? -0.06 : 0.06;
          cells.add(`${sensor}:${i}`);
        }
        return cells;
      },
      'moisture',
      'spike',
    );
    expect(found / planted).toBeGreaterThanOrEqual(DETECTED);
    expect(wrong).toBe(0);
  });

  it('failure codes for weeks', () => {
    const { found, planted, wrong } = trial(
      (made, uniform) => {
        const cells: Planted = new Set();
        const code = [85, -127, -72.777777, 537.2][Math.floor(uniform() * 4)];
        for (let i = Math.floor(made.timeMs.length / 2); i < made.timeMs.length; i++) {
          made.temp[4][i] = code;
          cells.add(`4:${i}`);
        }
        return cells;
      },
      'temp',
      'spike',
    );
    expect(found).toBe(planted);
    expect(wrong).toBe(0);
  });

  it('sensors bared all season, with and without a fan log', () => {
    for (const fanLog of [true, false]) {
      for (const cell of ['temp', 'moisture'] as const) {
        const { found, planted, wrong } = trial(
          (made) => {
            const cells: Planted = new Set();
            for (let c = 0; c < 3; c++) {
              for (const s of [4, 5]) for (let i = 0; i < made.timeMs.length; i++) cells.add(`${c * 6 + s}:${i}`);
            }
            return cells;
          },
          cell,
          'headspace',
          { options: { bare: 2, fan: fanLog ? 'nights' : 'none', fanLog } },
        );
        expect(found / planted).toBeGreaterThanOrEqual(DETECTED);
        expect(wrong).toBe(0);
      }
    }
  });

  it('a cable that comes out of the grain, and the day it did', () => {
    const { found, planted, wrong, cells } = trial(
      (made, uniform) => {
        const set: Planted = new Set();
        const from = Math.floor(((50 + 60 * uniform()) * 24) / made.options.everyH);
        for (let s = 6; s < 12; s++) {
          for (let i = from; i < made.timeMs.length; i++) {
            const hour = Math.floor((i * made.options.everyH) / 1) - 1;
            made.temp[s][i] = Math.round((made.airC[hour] + 2) * 10) / 10;
            set.add(`${s}:${i}`);
          }
        }
        return set;
      },
      'temp',
      'headspace',
    );
    expect(found / planted).toBeGreaterThanOrEqual(DETECTED);
    // The day is found to two days either way: of six sensors and eight seasons.
    expect(wrong).toBeLessThanOrEqual(cells * 0.002);
  });

  const MISTAKES = [
    { unit: 'degF', how: '°C in a °F file', read: (trueC: number) => (trueC - 32) / 1.8 },
    { unit: '°C', how: '°F in a °C file', read: (trueC: number) => trueC * 1.8 + 32 },
  ];
  for (const { unit, how, read } of MISTAKES) {
    const misread = (made: Made, sensors: number[], first: number, last: number): Planted => {
      const set: Planted = new Set();
      for (const s of sensors) {
        for (let i = first; i < last; i++) {
          made.temp[s][i] = read(made.temp[s][i]);
          set.add(`${s}:${i}`);
        }
      }
      return set;
    };
    const all = Array.from({ length: 18 }, (_, s) => s);
    const within = (made: Made, share: number) => Math.floor(made.timeMs.length * share);

    it.each([
      ['one cable for some weeks', [6, 7, 8, 9, 10, 11], 0.3, 0.45],
      ['one cable from a day on', [6, 7, 8, 9, 10, 11], 0.6, 1],
      ['one cable all season', [6, 7, 8, 9, 10, 11], 0, 1],
      ['the bin for some weeks', all, 0.2, 0.4],
      ['the bin until a day', all, 0, 0.7],
      ['the bin all season', all, 0, 1],
    ] as const)(`${how}: %s`, (_, sensors, from, to) => {
      const { found, planted, wrong } = trial(
        (made) => misread(made, [...sensors], within(made, from), within(made, to)),
        'temp',
        'unit',
        { unit },
      );
      expect(found / planted).toBeGreaterThanOrEqual(DETECTED);
      expect(wrong).toBe(0);
    });
  }

  it('moisture as a fraction where percent was said, and the reverse', () => {
    for (const factor of [0.01, 100]) {
      const { found, planted, wrong } = trial(
        (made) => {
          const set: Planted = new Set();
          for (let i = 200; i < 400; i++) {
            made.moisture[3][i] *= factor;
            set.add(`3:${i}`);
          }
          return set;
        },
        'moisture',
        'unit',
      );
      expect(found).toBe(planted);
      expect(wrong).toBe(0);
    }
  });

  it('tell the days: findings have place, span and sentence', () => {
    const made = make({ seed: 5, days: 100 });
    hold(made, made.temp, 8, 24, 21);
    const { findings } = checkSeason(madeSeason(made.options), tablesOf(made));
    const stuck = findings.filter((one) => one.kind === 'stuck');
    expect(stuck.map((one) => one.where)).toEqual(['B1 C2 sensor 3']);
    expect(Math.abs(stuck[0].fromMs! - made.timeMs[24])).toBeLessThanOrEqual(2 * HOUR);
    expect(stuck[0].text).toMatch(/^The temperature stood still at \d+\.\d °F for 21 days \(50\d readings\)/);
  });
});
