import { describe, expect, it } from 'vitest';
import { airByHour } from '../../../src/analysis/model/air-by-hour.ts';
import type { WeatherHours } from '../../../src/analysis/model/hours-of-weather.ts';

const hoursOf = (tempC: number[]) =>
  ({
    hours: { tempC: Float64Array.from(tempC), humidityRatio: new Float64Array(tempC.length), pressurePa: 101_325 },
  }) as unknown as WeatherHours;

describe('the air that a fan takes in', () => {
  it('is by the mean of its hours, and denser where it is colder, as a perfect gas is', () => {
    // ASHRAE Handbook Fundamentals 2017, ch. 1, table 2: dry air at 20 °C takes 0.8304 m3/kg, at -10 °C 0.7451 (cells from memory); the fan rests at 40 °C.
    const { meanVolumeM3Kg, volumeM3Kg } = airByHour(hoursOf([20, -10, 40]), { on: Float64Array.of(1, 1, 0) });
    expect(meanVolumeM3Kg).toBeCloseTo((0.8304 + 0.7451) / 2, 3);
    expect(volumeM3Kg[0]).toBeCloseTo(0.8304, 3);
    expect(volumeM3Kg[1]).toBeCloseTo(0.7451, 3);
    expect(volumeM3Kg[0] / volumeM3Kg[1]).toBeCloseTo(293.15 / 263.15, 6);
  });

  it('is by all hours where the fan never ran', () => {
    expect(airByHour(hoursOf([20, 20]), { on: new Float64Array(2) }).meanVolumeM3Kg).toBeCloseTo(0.8304, 3);
  });
});
