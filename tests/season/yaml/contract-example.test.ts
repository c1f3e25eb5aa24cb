import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Season } from '../../../src/season/season.ts';
import { EXAMPLE, EXAMPLE_FILES } from './contract-example.ts';
import { placeOf, read, removeFolders } from './season-folder.ts';

// Expected values by hand from the definitions of the units (NIST SP 811): 1 ft = 0.3048 m, 1 gal = 3.785411784 L,
// 1 hp = 745.69987 W, 1 lb = 0.45359237 kg, 1 Btu(IT) = 1055.05585 J, 1 inH2O = 249.0889 Pa, 1 cfm = 4.719474e-4 m3/s.
const FT = 0.3048;
const CHICAGO_SUMMER_H = 5; // hours behind UTC, central daylight time

let season: Season;
beforeAll(async () => {
  season = await read(EXAMPLE, EXAMPLE_FILES);
});
afterAll(removeFolders);

const near = (value: number, expected: number) => expect(value / expected).toBeCloseTo(1, 6);

describe('the example of the contract', () => {
  it('says what season it is', () => {
    expect(season).toMatchObject({
      title: 'Harvest 2024',
      preparedFor: 'Larkspur Flats',
      preparedBy: 'A. Consultant',
      showUnits: 'us',
      currency: 'USD',
      startsMs: Date.UTC(2024, 8, 20, CHICAGO_SUMMER_H),
      // the last day counts whole
      endsMs: Date.UTC(2025, 4, 1, CHICAGO_SUMMER_H),
    });
    expect(season.site).toEqual({
      latitudeDeg: 42.1,
      longitudeDeg: -94,
      elevationM: expect.closeTo(320.04, 9),
      timeZone: 'America/Chicago',
    });
  });

  it('prices energy', () => {
    expect(season.tariffs).toEqual([
      {
        id: 'rural-tou',
        energy: [
          {
            pricePerKwh: 0.162,
            when: { months: new Set([6, 7, 8, 9]), days: new Set([1, 2, 3, 4, 5]), hours: [[780, 1140]] },
          },
          { pricePerKwh: 0.081, when: { months: null, days: null, hours: [[1320, 360]] } },
          { pricePerKwh: 0.112, when: null },
        ],
        demand: [{ pricePerKw: 9.5, when: { months: null, days: null, hours: [[420, 1320]] }, ratchet: 0.6 }],
        fixedPerMonth: 38,
        connectedPerHpYear: 12,
        minimumPerMonth: 45,
      },
    ]);
    expect(season.prices).toEqual({
      corn: {
        pricePerBushel: 4.35,
        baseMoistureWb: 0.15,
        shrinkPerPoint: expect.closeTo(0.014, 12),
        discountPerBushelPoint: 0.03,
        schedules: [],
      },
    });
    const hot = season.dryingAlternative?.highTemperature;
    expect(season.dryingAlternative?.commercialPerPoint).toEqual({ amount: 0.05, of: 'bushel' });
    near(hot?.fuelPricePerM3 ?? 0, 1.75 / 0.003785411784);
    near(hot?.fuelM3PerPoint.amount ?? 0, 0.02 * 0.003785411784);
    expect(hot?.electricityKwhPerPoint).toEqual({ amount: 0.01, of: 'bushel' });
  });

  it('describes the first bin', () => {
    const [bin] = season.bins;
    expect(bin).toMatchObject({
      id: 'B1',
      name: 'North 36',
      openFloor: 1,
      goal: 'dry',
      air: 'up',
      airflowFactor: 1.5,
      airflowFactorFrom: 'stated',
      managedAs: 'dry-air window',
      strategy: 'equilibrium-window',
      fanIds: ['F1'],
    });
    near(bin.diameterM, 10.9728);
    near(bin.eaveHeightM ?? 0, 6.4008);
    expect(bin.grain).toEqual({
      crop: 'corn',
      depthSteps: [{ fromMs: Number.NEGATIVE_INFINITY, depthM: expect.closeTo(6.096, 9) }],
      // 56 lb in 1.2445 ft3: 25.40117 kg in 0.0352402 m3
      bulkDensityKgM3: expect.closeTo((56 * 0.45359237) / (1.2445 * FT ** 3), 6),
      bulkDensityFrom: 'stated',
      moistureInWb: expect.closeTo(0.178, 12),
      moistureOutWb: null,
      isotherm: 'modified Henderson D245.5',
      targetMoistureWb: 0.15,
      targetTempC: expect.closeTo(40 / 9, 9),
      filledMs: Date.UTC(2024, 9, 4, CHICAGO_SUMMER_H),
      unloadedMs: Date.UTC(2025, 2, 18, CHICAGO_SUMMER_H),
    });
    expect(bin.cables).toEqual([
      {
        id: 'C1',
        fromCentreM: expect.closeTo(2.7432, 9),
        bearingDeg: 0,
        sensorHeightsM: [2, 5, 8, 11, 14, 17].map((ft) => expect.closeTo(ft * FT, 9)),
      },
      {
        id: 'C5',
        fromCentreM: 0,
        bearingDeg: null,
        sensorHeightsM: [2, 5, 8, 11, 14, 17].map((ft) => expect.closeTo(ft * FT, 9)),
      },
    ]);
  });

  it('describes the second bin, with the defaults of what it leaves out', () => {
    const bin = season.bins[1];
    expect(bin).toMatchObject({
      id: 'B2',
      name: 'B2',
      diameterM: 11,
      eaveHeightM: null,
      openFloor: 0.6,
      goal: 'hold',
      air: 'down',
      airflowFactor: 1.3, // the contract: 1.5 corn, 1.3 others
      airflowFactorFrom: 'crop',
      managedAs: null,
      strategy: null,
      fanIds: [],
    });
    expect(bin.grain).toMatchObject({
      depthSteps: [
        { fromMs: Date.UTC(2024, 9, 1, 5), depthM: 3 },
        { fromMs: Date.UTC(2024, 9, 3, 19, 30), depthM: 5 },
        { fromMs: Date.UTC(2025, 3, 1), depthM: 0 },
      ],
      bulkDensityFrom: 'crop',
      // a legal bushel of soybeans is 60 lb
      bulkDensityKgM3: expect.closeTo((60 * 0.45359237) / (1.2445 * FT ** 3), 6),
      moistureInWb: null,
      moistureOutWb: 0.125,
      isotherm: null,
      targetMoistureWb: null,
      targetTempC: null,
      filledMs: null,
      unloadedMs: null,
    });
    expect(bin.cables).toEqual([{ id: 'K1', fromCentreM: 1, bearingDeg: 270, sensorHeightsM: [2.5, 1.5, 0.5] }]);
  });

  it('describes the fan', () => {
    const [fan] = season.fans;
    expect(fan).toMatchObject({
      id: 'F1',
      supply: { phases: 3, volts: 230, powerFactor: 0.85 },
      load: expect.closeTo(0.95, 12),
      motorEfficiency: 0.9,
      runningAboveA: 4,
      tariffId: 'rural-tou',
    });
    near(fan.nameplateW, 11185.498);
    const [still, working] = fan.curve ?? [];
    expect(still[0]).toBe(0);
    near(still[1], 17800 * 4.719474e-4);
    near(working[0], 996.3556);
    near(working[1], 11900 * 4.719474e-4);
    expect(fan.heater).toMatchObject({ fuel: 'propane', efficiency: expect.closeTo(0.95, 12) });
    near(fan.heater?.outputW ?? 0, 17584.264); // 60000 * 1055.05585 / 3600
    near(fan.heater?.pricePerJ ?? 0, 1.8 / (91_500 * 1055.05585)); // 91,500 Btu/gal of propane, common practice
    near(fan.heater?.sold?.unitJ ?? 0, 91_500 * 1055.05585);
    expect(fan.heater?.sold?.unit).toBe('gal');
  });

  it('knows the errors of the sensors; a limit in degrees is a difference', () => {
    expect(season.sensors).toEqual({
      temperature: { accuracyK: expect.closeTo(5 / 9, 9), noiseK: null, biasK: null },
      moisture: {
        accuracyWb: 0.005,
        noiseWb: 0.001,
        biasWb: 0.003,
        isotherm: 'modified Henderson D245.5',
      },
    });
  });

  it('finds the files', () => {
    expect(season.files.map((file) => [file.holds, file.paths])).toEqual([
      ['grain', ['logs/cables-1.csv', 'logs/cables-2.csv']],
      ['grain', ['logs/b2.csv']],
      ['fan', ['logs/fans.csv']],
      ['plenum', ['logs/plenum.csv']],
      ['weather', ['weather/site.csv']],
      ['weather', ['weather/history/1998.epw']],
      ['tickets', ['tickets.csv']],
      ['probes', ['probes.csv']],
      ['bills', ['bills.csv']],
    ]);
    expect(season.files[0]).toEqual({
      pattern: 'logs/cables-*.csv',
      at: placeOf(EXAMPLE, 'logs/cables-*.csv'),
      paths: ['logs/cables-1.csv', 'logs/cables-2.csv'],
      holds: 'grain',
      shape: 'long',
      columns: {
        time: { header: 'Stamp', unit: null },
        bin: { header: 'Bin', unit: null },
        cable: { header: 'Cable', unit: null },
        sensor: { header: 'No', unit: null },
        temperature: { header: 'T', unit: 'degF' },
        moisture: { header: 'MC', unit: '%' },
      },
      constants: {},
      timeFormat: null,
      timeZone: null,
      delimiter: null,
      decimal: null,
      format: null,
      role: 'season',
    });
    expect(season.files[1]).toMatchObject({
      shape: 'wide',
      constants: { bin: 'B2' },
      timeFormat: 'MM/dd/yyyy hh:mm a',
      timeZone: 'America/Chicago',
      columns: { temperature: { header: 'T {cable}-{sensor}', unit: 'degC' } },
    });
    expect(season.files[4].columns).toMatchObject({
      dew_point: { header: 'dp', unit: 'degF' },
      pressure: { header: 'bp', unit: 'inHg' },
    });
    expect(season.files[5]).toMatchObject({ format: 'epw', role: 'history', columns: null });
    expect(season.files[8].columns).toMatchObject({ amount: { header: 'usd', unit: 'USD' } });
  });
});
