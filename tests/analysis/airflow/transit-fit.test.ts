import { describe, expect, it } from 'vitest';
import type { PassingCurve } from '../../../src/analysis/airflow/passing-curve.ts';
import { passingCurve } from '../../../src/analysis/airflow/passing-curve.ts';
import { transitFit } from '../../../src/analysis/airflow/transit-fit.ts';
import { HOUR_MS, START_MS, spansOf } from '../fronts/invented-bin.ts';

const curve = (tempAt: (h: number) => number, hours = 120, everyH = 1): PassingCurve => {
  const fanHour = Float64Array.from({ length: Math.floor(hours / everyH) + 1 }, (_, i) => i * everyH);
  return { cable: 'C1', sensor: 1, heightM: 1, fanHour, tempC: fanHour.map(tempAt) };
};
const weather = (h: number) => 12 - 0.05 * h + 4 * Math.cos((2 * Math.PI * h) / 24) + 3 * Math.sin(h / 31);
const all = { fromH: 0, toH: 120, runFromH: 0 };
const carriage = { ratioAt: () => 1.1, dryMatterKgM3: 620 };

describe('the airflow that carries what one sensor saw to the next', () => {
  // By hand: 2 m of 620 kg/m3 hold 1240 kg of dry grain a square metre. Air that carries a change past 1.1 kg of it a kilogram takes
  // 1240 / 1.1 = 1127.3 kg; at 0.06 kg/(s m2) that is 18788 s, 5.219 h.
  it('finds 0.06 kg/(s m2) in a log that comes 5.219 h later', () => {
    const fit = transitFit(
      curve(weather),
      curve((h) => weather(h - 5.219)),
      2,
      all,
      carriage,
    );
    // hourly readings and lines between them: a few percent of the delay
    expect(fit!.fluxKgM2S / 0.06).toBeGreaterThan(0.97);
    expect(fit!.fluxKgM2S / 0.06).toBeLessThan(1.03);
    expect(fit!.likeness).toBeGreaterThan(0.98);
    expect(fit!.logSd).toBeLessThan(0.1);
  });

  // A wave in drift with dispersion, first place held: exp(i w t - z), z = Pe / 2 (sqrt(1 + 4 i w tau / Pe) - 1), with tau the mean time
  // and 2 / Pe its variance over tau squared (dispersed plug flow, memory). Square root by hand: of modulus m and half the angle.
  const dispersed = (periodH: number, meanH: number, spread: number) => {
    const pe = 2 / spread;
    const w = (2 * Math.PI) / periodH;
    const imaginary = (4 * w * meanH) / pe;
    const modulus = (1 + imaginary ** 2) ** 0.25;
    const half = Math.atan(imaginary) / 2;
    return { fades: (pe / 2) * (modulus * Math.cos(half) - 1), lagsH: ((pe / 2) * modulus * Math.sin(half)) / w };
  };

  it('finds the mean time of waves that spread on their way, whose crests come early', () => {
    const [meanH, spread] = [10, 0.2];
    const waves = [
      { size: 4, periodH: 24 },
      { size: 3, periodH: 90 },
    ].map((one) => ({ ...one, ...dispersed(one.periodH, meanH, spread) }));
    // the daily crest is nearly a tenth ahead of the mean: by crests alone the airflow would come out so much too high
    expect(waves[0].lagsH / meanH).toBeLessThan(0.92);
    const sum = (h: number, later: boolean) =>
      waves.reduce(
        (all, { size, periodH, fades, lagsH }) =>
          all + size * (later ? Math.exp(-fades) : 1) * Math.cos((2 * Math.PI * (h - (later ? lagsH : 0))) / periodH),
        10,
      );
    const truth = (2 * 620) / 1.1 / (meanH * 3600);
    const fit = transitFit(
      curve((h) => sum(h, false)),
      curve((h) => sum(h, true)),
      2,
      { fromH: 40, toH: 120, runFromH: 0 },
      carriage,
    )!;
    expect(Math.abs(fit.fluxKgM2S / truth - 1)).toBeLessThan(0.03);
    expect(fit.likeness).toBeGreaterThan(0.98);
  });

  it('is not misled by a sensor that reads 0.4 K high', () => {
    const cooling = (h: number) => 20 - 0.08 * h + 2 * Math.cos((2 * Math.PI * h) / 24);
    const found = (offsetK: number) =>
      transitFit(
        curve(cooling),
        curve((h) => cooling(h - 8) + offsetK),
        2,
        { fromH: 20, toH: 120, runFromH: 0 },
        carriage,
      )!;
    const truth = (2 * 620) / 1.1 / (8 * 3600);
    // 0.4 K over 0.08 K/h would be taken for 5 of the 8 h by the fall alone
    expect(Math.abs(found(0.4).fluxKgM2S / truth - 1)).toBeLessThan(0.06);
    expect(Math.abs(found(0).fluxKgM2S / truth - 1)).toBeLessThan(0.03);
  });

  it('is less sure of a noisy log', () => {
    let state = 7;
    const noise = () => {
      state = (state * 16807) % 2147483647;
      return (4 * state) / 2147483647 - 2;
    };
    const clean = transitFit(
      curve(weather),
      curve((h) => weather(h - 5.219)),
      2,
      all,
      carriage,
    )!;
    const noisy = transitFit(
      curve(weather),
      curve((h) => weather(h - 5.219) + noise()),
      2,
      all,
      carriage,
    )!;
    expect(noisy.logSd).toBeGreaterThan(2 * clean.logSd);
    expect(Math.abs(Math.log(noisy.fluxKgM2S / 0.06))).toBeLessThan(2.5 * noisy.logSd);
  });

  it('tells nothing where nothing moves, or where too few moments have a partner', () => {
    expect(
      transitFit(
        curve(() => 10),
        curve(() => 10),
        2,
        all,
        carriage,
      ),
    ).toBeNull();
    expect(transitFit(curve(weather), curve(weather, 4), 2, all, carriage)).toBeNull();
  });
});

describe('what a sensor saw pass', () => {
  it('counts fan hours, keeps the day after a stop, and averages readings at one fan hour', () => {
    // on for hours 0 to 4, off until 40, on until 44
    const on = Uint8Array.from({ length: 44 }, (_, h) => (h < 4 || h >= 40 ? 1 : 0));
    const hours = [1, 3, 5, 7, 35, 41, 43];
    const made = passingCurve(
      {
        cable: 'C1',
        sensor: 1,
        heightM: 1,
        timeMs: Float64Array.from(hours, (h) => START_MS + h * HOUR_MS),
        tempC: Float64Array.of(20, 18, 16, 14, 99, 12, 10),
      },
      spansOf(on, 1),
    );
    // the two readings of the first rest share fan hour 4: 15; that of hour 35, a day and more after the stop, is left out
    expect([...made.fanHour]).toEqual([1, 3, 4, 5, 7]);
    expect([...made.tempC]).toEqual([20, 18, 15, 12, 10]);
  });
});
