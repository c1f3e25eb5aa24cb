import { describe, expect, it } from 'vitest';
import { stationFromAltimeterPa } from '../../src/air/altimeter.ts';
import { standardPressurePa } from '../../src/air/pressure.ts';

describe('station pressure from an altimeter setting', () => {
  it('is what Lincoln airport, 362.7 m, reports beside it (NOAA LCD, January 2023, hPa)', () => {
    // The station's field and its barometer differ in height by some metres: 0.1 hPa a metre.
    for (const [setting, station] of [
      [1009.1, 966.5],
      [1013.2, 970.4],
      [1015.9, 973.1],
    ]) {
      expect(Math.abs(stationFromAltimeterPa(setting * 100, 362.7) / 100 - station)).toBeLessThan(0.15);
    }
  });
  it('is the standard atmosphere at 1013.25 hPa (ASHRAE Fundamentals 2017 ch. 1 eq. 3)', () => {
    for (const z of [0, 300, 1500, 3000]) {
      expect(Math.abs(stationFromAltimeterPa(101325, z) / standardPressurePa(z) - 1)).toBeLessThan(3e-4);
    }
  });
});
