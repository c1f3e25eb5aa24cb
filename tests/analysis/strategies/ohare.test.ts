import { beforeAll, describe, expect, it } from 'vitest';
import { FACTORS } from '../../../src/analysis/strategies/held-back.ts';
import { yearsHeldBack } from '../../../src/analysis/strategies/held-back-years.ts';
import type { OutdoorAir } from '../../../src/analysis/strategies/outdoor-air.ts';
import { yearsOnFile } from '../../../src/analysis/strategies/weather-years.ts';
import { bareBin, binIn, CHICAGO, ohareAir, YEARS } from './ohare-bin.ts';

// The order of these autumns is known from outside: hours under 70 % from 15 September to 15 November are 608, 864 and 752, counted from the
// archive files, and 2018's October and November lay below the normals, 2016's above (NOAA, from memory).
describe('corn in O’Hare’s autumns', () => {
  let air: OutdoorAir;
  beforeAll(async () => {
    air = await ohareAir();
  });
  const told = (month: number, day: number, moistureWb: number, strategy = 'humidity-limit') => {
    const bare = bareBin(month, day, moistureWb);
    const years = YEARS.map((year) => ({ year, spec: binIn(bare, air, year), why: null }));
    return yearsHeldBack(years, [strategy])[0].years;
  };

  it('finds the three years on file and no other', () => {
    const { hours, endHour } = bareBin(10, 1, 0.18);
    expect(yearsOnFile(hours.startMs, hours.startMs + endHour * 3_600_000, air, CHICAGO)).toEqual([...YEARS]);
  });

  it.each([
    [9, 24, 0.18],
    [10, 1, 0.18],
    [10, 1, 0.19],
    [10, 1, 0.2],
    [10, 8, 0.2],
  ])('a humidity rule finishes first in the dry 2017: filled %i-%i at %d', (month, day, moistureWb) => {
    const { best, others, untold } = told(month, day, moistureWb);
    expect(untold).toEqual([]);
    expect(best).toMatchObject({ weather: '2017', reached: true });
    for (const { slower } of others) expect(slower).toBeGreaterThan(1.02);
    for (const { times, slower } of others)
      expect(FACTORS.reduce((product, factor) => product * times[factor], 1)).toBeCloseTo(slower, 9);
  });

  it.each([0.18, 0.19, 0.2])(
    'the damp 2016 lacked hours, the cold 2018 warmth: corn at %d on 1 October',
    (moistureWb) => {
      const [damp, cold] = told(10, 1, moistureWb).others;
      const most = ({ times }: typeof damp) => FACTORS.reduce((a, b) => (times[b] > times[a] ? b : a));
      expect([damp.air.weather, most(damp)]).toEqual(['2016', 'hours']);
      expect([cold.air.weather, most(cold)]).toEqual(['2018', 'warmth']);
    },
  );

  it('with the fan always on the damp 2016 shows in air near balance instead', () => {
    const [damp] = told(10, 1, 0.18, 'always-on').others;
    expect(damp.times.hours).toBeCloseTo(1, 9);
    expect(damp.times.dryness).toBeGreaterThan(damp.times.warmth);
  });
});
