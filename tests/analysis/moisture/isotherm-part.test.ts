import { describe, expect, it } from 'vitest';
import { binMoisture } from '../../../src/analysis/moisture/bin-moisture.ts';
import { isothermPart } from '../../../src/analysis/moisture/isotherm-part.ts';
import { observeMoisture } from '../../../src/analysis/moisture/observed-moisture.ts';
import { FAN_OFF, FAN_ON } from '../../../src/analysis/types.ts';
import { makeBin, makeCable, makeSeason, makeSeries, makeSpans } from './make-bin.ts';

/** One cable with two sensors: the same moistures at both, at a temperature; fans on between. */
function observe(crop: string, startWb: number, endWb: number, tempC: number, isotherm: string | null = null) {
  const cable = makeCable('C1', 2, 1.5, 4.5);
  const bin = makeBin([cable], { crop });
  const errors = makeSeason().sensors;
  const season = makeSeason({ sensors: { ...errors, moisture: { ...errors.moisture, isotherm, biasWb: null } } });
  const read = (hour: number) => (hour < 100 ? startWb : endWb);
  const series = [1, 2].map((sensor) => makeSeries(cable, sensor, 0, 560, read, () => tempC, 4));
  const spans = makeSpans([60, FAN_OFF], [400, FAN_ON], [100, FAN_OFF]);
  const fanHours = { value: 400, interval: null, why: null };
  return { bin, season, series, spans, fanHours, tickets: [] };
}

/** By hand: the isotherms of ASAE D245 (from memory) written out; % dry basis, C, fraction. */
const halsey = {
  rh: (m: number, t: number) => Math.exp(-Math.exp(2.87 - 0.0054 * t) * m ** -1.38),
};
const chungPfost = (rh: number, t: number) => -Math.log((-(t + 100.288) * Math.log(rh)) / 328.3) / 0.13917;
const henderson = (rh: number, t: number) => (-Math.log(1 - rh) / (0.000305327 * (t + 134.136))) ** (1 / 1.2164);
const dry = (wb: number) => (100 * wb) / (1 - wb);
const wet = (db: number) => (100 * db) / (100 + db);

describe('what the choice of the isotherm leaves open in the points removed', () => {
  it('is the root mean square of what the other editions would say: soybeans from 17 to 12 % at 10 C, cables by Halsey', () => {
    const points = (curve: (rh: number, t: number) => number) =>
      wet(curve(halsey.rh(dry(0.17), 10), 10)) - wet(curve(halsey.rh(dry(0.12), 10), 10));
    // 17 % are 77 % humidity by Halsey, 12 % are 64 %: the other two curves are flatter there and give two thirds of the points or less.
    expect(points(chungPfost)).toBeGreaterThan(1.5);
    expect(points(chungPfost)).toBeLessThan(4);
    // Halsey counts half, each of the other two a quarter.
    const expected = Math.sqrt(((points(chungPfost) - 5) ** 2 + (points(henderson) - 5) ** 2) / 4);
    const part = isothermPart(observeMoisture(observe('soybean', 0.17, 0.12, 10)));
    expect(part.sd).toBeCloseTo(expected, 6);
    expect(part.df).toBe(Number.POSITIVE_INFINITY);
  });

  it('spans what each edition says of the same humidities', () => {
    const { pointsRemoved } = binMoisture(observe('soybean', 0.17, 0.12, 10));
    const low = wet(chungPfost(halsey.rh(dry(0.17), 10), 10)) - wet(chungPfost(halsey.rh(dry(0.12), 10), 10));
    expect(pointsRemoved.interval![0]).toBeLessThan(low);
  });

  it('keeps within the stated bias of the sensors: 0.6 point that 95 % keep, at both moments', () => {
    const input = observe('soybean', 0.17, 0.12, 10);
    const { moisture } = input.season.sensors;
    const stated = { ...input.season.sensors, moisture: { ...moisture, biasWb: 0.006 } };
    const part = isothermPart(observeMoisture({ ...input, season: { ...input.season, sensors: stated } }));
    // Each edition's two errors shrink together until their root mean square is 0.6 point; what is left parts them.
    const squares = [chungPfost, henderson].map((curve) => {
      const [start, end] = [17, 12].map((wb) => wet(curve(halsey.rh(dry(wb / 100), 10), 10)) - wb);
      const size = Math.sqrt((start ** 2 + end ** 2) / 2);
      expect(size).toBeGreaterThan(0.6);
      return ((0.6 / size) * (start - end)) ** 2;
    });
    expect(part.sd).toBeCloseTo(Math.sqrt((squares[0] + squares[1]) / 4), 3);
    expect(part.sd).toBeLessThan(0.6);
  });

  it('is nothing where nothing changed at one temperature, for the editions differ the same at both moments', () => {
    expect(isothermPart(observeMoisture(observe('corn', 0.15, 0.15, 10))).sd).toBeCloseTo(0, 12);
  });

  it('begins at the isotherm that the cables work by, and is nothing where a crop has one only', () => {
    const byDefault = isothermPart(observeMoisture(observe('soybean', 0.17, 0.12, 10))).sd;
    const named = isothermPart(observeMoisture(observe('soybean', 0.17, 0.12, 10, 'modified Chung-Pfost D245.4'))).sd;
    expect(named).toBeGreaterThan(0);
    expect(named).not.toBeCloseTo(byDefault, 2);
    // Sunflower has one set of constants, rapeseed too.
    expect(isothermPart(observeMoisture(observe('rapeseed', 0.12, 0.08, 10))).sd).toBe(0);
  });
});
