import { describe, expect, it } from 'vitest';
import { checkSeason } from '../../../src/season/checks/check-season.ts';
import { FLAGS } from '../../../src/tables/flags.ts';
import { HOUR, type Made, START, TYPICAL } from './made-bin.ts';
import { madeSeason, tablesOf } from './made-season.ts';

const DAYS = 40;
const SENSORS = 6;

/**
 * A cable of six sensors in a bin whose fan starts on day 20 in air of `airC`: grain of `grainC` (each sensor a little else), which the front
 * brings to the air's temperature, a sensor up every `crossH` hours.
 */
function crossed(made: {
  everyH: number;
  crossH: number;
  grainC: number;
  airC: number;
  fan?: false;
  fanLog?: false;
}): Made {
  const { everyH, crossH, grainC, airC } = made;
  const count = Math.floor((DAYS * 24) / everyH);
  const timeMs = Float64Array.from({ length: count }, (_, i) => START + i * everyH * HOUR);
  const own = (s: number) => 0.4 * (s % 3) - 0.4;
  const temp = Array.from({ length: SENSORS }, (_, s) =>
    Float64Array.from(timeMs, (ms, i) => {
      const hours = (ms - START) / HOUR - 20 * 24 - s * crossH;
      // A front of 0.45 m in sensors 0.9 m apart takes half of the time between them.
      const part = Math.min(1, Math.max(0, hours / Math.max(1, crossH / 2)));
      const level = grainC + own(s) + part * (airC - grainC);
      return Math.round(10 * (level + 0.1 * Math.sin(i + s))) / 10;
    }),
  );
  const airMs = Float64Array.from({ length: DAYS * 24 }, (_, h) => START + h * HOUR);
  return {
    options: { ...TYPICAL, days: DAYS, everyH, cables: 1, sensors: SENSORS, fanLog: made.fanLog ?? true },
    timeMs,
    temp,
    moisture: temp.map(() => Float64Array.from(timeMs, (_, i) => 0.16 + 0.0005 * Math.sin(i))),
    airMs,
    airC: Float64Array.from(
      airMs,
      (_, h) => Math.round(10 * (airC + 2 * Math.sin((h * Math.PI) / 12) + Math.sin(h * h))) / 10,
    ),
    airRh: Float64Array.from(
      airMs,
      (_, h) => Math.round(100 * (0.7 - 0.1 * Math.sin((h * Math.PI) / 12) + 0.05 * Math.sin(h))) / 100,
    ),
    fanOn: Uint8Array.from(airMs, (_, h) => (made.fan !== false && h >= 20 * 24 && h < 25 * 24 ? 1 : 0)),
  };
}

/** As the file says the readings, in a log that is right up to day 20 or from there on. */
function misread(made: Made, read: (tempC: number) => number, from: 'before' | 'after'): Made {
  const isWrong = (ms: number) => ms < START + 20 * 24 * HOUR === (from === 'before');
  return {
    ...made,
    temp: made.temp.map((one) => one.map((value, i) => (isWrong(made.timeMs[i]) ? read(value) : value))),
  };
}

const unitOf = (made: Made, unit: string) => {
  const { findings, flags } = checkSeason(madeSeason(made.options, { unit }), tablesOf(made));
  const cells = flags.readings.temp.filter((bits) => (bits & FLAGS.unit) !== 0).length;
  return { told: findings.filter(({ kind }) => kind === 'unit').length, cells };
};

const FRONTS = [
  { what: 'hot grain in a °C file, read twice a day', unit: 'degC', everyH: 12, crossH: 2, grainC: 35, airC: 2 },
  { what: 'hot grain in a °C file, read every three hours', unit: 'degC', everyH: 3, crossH: 3, grainC: 35, airC: 2 },
  {
    what: 'hot grain in a °C file, read daily, without a fan log',
    unit: 'degC',
    everyH: 24,
    crossH: 3,
    grainC: 36,
    airC: 3,
    fanLog: false,
  },
  {
    what: 'warm grain in a °F file that deep frost crosses',
    unit: 'degF',
    everyH: 12,
    crossH: 2,
    grainC: 12,
    airC: -11,
  },
] as const;

describe('a front that crosses a cable between two readings', () => {
  // 35 °C is 35 °F read wrongly, 1.7 °C; so a front from 35 to 2 °C joins by the other scale as a mistake of units would.
  it.each(FRONTS)('is no change of the scale: $what', ({ unit, ...made }) => {
    expect(unitOf(crossed(made), unit)).toEqual({ told: 0, cells: 0 });
  });

  const asF = (tempC: number) => tempC * 1.8 + 32;
  const asC = (tempC: number) => (tempC - 32) / 1.8;
  const half = (made: Made) => made.timeMs.filter((ms) => ms < START + 20 * 24 * HOUR).length * SENSORS;

  it('does not hide a logger that changed its scale', () => {
    const still = { crossH: 2, fan: false } as const;
    // °F in a °C file up to day 20, grain of 2 °C throughout: with the fan at rest nothing else makes 35.6 of it.
    const rest = misread(crossed({ ...still, everyH: 3, grainC: 2, airC: 2 }), asF, 'before');
    expect(unitOf(rest, 'degC')).toEqual({ told: 1, cells: half(rest) });
    // While the fan blows, all sensors within three hours: no front is so fast.
    const blown = misread(crossed({ ...still, fan: undefined, everyH: 3, grainC: 2, airC: 2 }), asF, 'before');
    expect(unitOf(blown, 'degC')).toEqual({ told: 1, cells: half(blown) });
    // Read twice a day while the fan blows, grain of 12 °C shown as 53.6: no grain is so hot.
    const hot = misread(crossed({ ...still, fan: undefined, everyH: 12, grainC: 12, airC: 12 }), asF, 'before');
    expect(unitOf(hot, 'degC')).toEqual({ told: 1, cells: half(hot) });
    // °C in a °F file from day 20 on: 12 °C shown as -11.1 in air of 12 °C, which cools no grain so far.
    const cold = misread(crossed({ ...still, fan: undefined, everyH: 12, grainC: 12, airC: 12 }), asC, 'after');
    expect(unitOf(cold, 'degF').told).toBe(1);
  });
});
