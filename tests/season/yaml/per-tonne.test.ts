import { afterAll, describe, expect, it } from 'vitest';
import { EXAMPLE, EXAMPLE_FILES } from './contract-example.ts';
import { problemsOf, read, removeFolders, seasonFolder } from './season-folder.ts';

afterAll(removeFolders);

// International avoirdupois pound (exact), legal bushels of the US states: corn 56 lb, wheat 60 lb.
const BUSHEL_T = { corn: (56 * 0.45359237) / 1000, wheat: (60 * 0.45359237) / 1000 };

const corn = (line: string): string =>
  EXAMPLE.replace(/^ {2}corn: .*$/m, `  corn: ${line}\n  wheat: { price: 345 USD/t }`);

describe('prices by the tonne', () => {
  it('are worth the same as by the crop’s legal bushel, in price, discount and schedules', async () => {
    const yaml = corn(
      '{ price: 171 USD/t, base_moisture: 15 %, discount: 1.2 USD/t/point, schedules: [{ above: 15 %, rate: 2 USD/t }] }',
    );
    const { prices } = await read(yaml, EXAMPLE_FILES);
    expect(prices.corn.pricePerBushel).toBeCloseTo(171 * BUSHEL_T.corn, 9);
    expect(prices.corn.discountPerBushelPoint).toBeCloseTo(1.2 * BUSHEL_T.corn, 9);
    expect(prices.corn.schedules?.[0].schedule.bands[0].rate).toBeCloseTo(2 * BUSHEL_T.corn, 9);
    expect(prices.wheat.pricePerBushel).toBeCloseTo(345 * BUSHEL_T.wheat, 9);
  });

  it('may be what another dryer costs', async () => {
    const yaml = EXAMPLE.replace(/^ {2}commercial: .*$/m, '  commercial: 4.5 USD/t/point')
      .replace(/fuel_use: [^,]*,/, 'fuel_use: 3 L/t/point,')
      .replace(/electricity: [^}]*}/, 'electricity: 0.4 kWh/t/point }');
    const { dryingAlternative } = await read(yaml, EXAMPLE_FILES);
    expect(dryingAlternative?.commercialPerPoint).toEqual({ amount: expect.closeTo(0.0045, 12), of: 'kg' });
    expect(dryingAlternative?.highTemperature?.fuelM3PerPoint).toEqual({ amount: expect.closeTo(3e-6, 15), of: 'kg' });
    expect(dryingAlternative?.highTemperature?.electricityKwhPerPoint?.amount).toBeCloseTo(0.0004, 12);
  });

  it('are named among the units where neither is given', async () => {
    const problems = (line: string) => problemsOf(seasonFolder({ ...EXAMPLE_FILES, 'season.yaml': corn(line) }));
    const [unit] = await problems('{ price: 171 USD/kg }');
    expect(unit).toMatchObject({ code: 'SEASON_UNIT' });
    expect(unit.message).toContain('"USD/kg" is no unit of price per bushel (units: USD/bu, USD/t)');
    const [range] = await problems('{ price: -171 USD/t }');
    expect(range).toMatchObject({ code: 'SEASON_RANGE' });
  });
});
