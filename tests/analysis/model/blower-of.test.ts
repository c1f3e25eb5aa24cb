import { describe, expect, it } from 'vitest';
import type { BinLog } from '../../../src/analysis/model/bin-log.ts';
import { blowerOf } from '../../../src/analysis/model/blower-of.ts';
import type { Heater } from '../../../src/bin/fan.ts';

const FAN_KW = 8;
const HEAT_W = 20_000;
const KWH_J = 3.6e6;
const GALLON_J = 91_500 * 1055.05585262;

/** A fan of 8 hp that drew so many kW through 100 h; 1.5 kg/s of dry air go through it. */
const log = (heater: Heater | null, kw = FAN_KW, bins = [['F1']]) =>
  ({
    bin: { fanIds: ['F1'], air: 'up' },
    season: {
      fans: [{ id: 'F1', nameplateW: 745.7 * FAN_KW, load: null, motorEfficiency: null, heater }],
      bins: bins.map((fanIds) => ({ fanIds })),
    },
    review: {
      fan: { fans: [{ fanId: 'F1', onHours: 100, energyKwh: 100 * kw, energyFrom: 'current', energyRelSd: 0.03 }] },
      airflow: { fanSet: 'F1' },
    },
    depthM: 4,
    floorAreaM2: 10,
    meanVolumeM3Kg: 0.8,
    warmingK: 5,
  }) as unknown as BinLog;
const blower = (of: BinLog) => blowerOf(of, 1.2, 4);
const heater = (fuel: Heater['fuel'], pricePerJ: number | null, efficiency = 1): Heater => ({
  ...{ fuel, outputW: HEAT_W, pricePerJ, efficiency },
});

// Worked by hand: 1.2 m3/s of 0.8 m3/kg are 1.5 kg/s; 20 kW warm that by 20000 / (1.5 x 1006) = 13.254 K, whatever the efficiency.
describe('a heater beside the fan', () => {
  it('burns output over efficiency: propane at 95 %, 1.80 a gallon of 91,500 BTU: 71,834 BTU in an hour x 1.80 / 91,500 = 1.413', () => {
    const got = blower(log(heater('propane', 1.8 / GALLON_J, 0.95)));
    expect(got.heaterK).toBeCloseTo(13.254, 3);
    expect(got.heaterFuelPerHour).toBeCloseTo(1.413, 3);
    expect(got.heaterW).toBe(0);
    // 0.9 x 8 kW / (1.5 x 1006): the fan's own, not the plenum's 5 K.
    expect(got.warmingK).toBeCloseTo(4.771, 3);
  });

  it('costs its own price where it is electric and has one: 20 kWh x 0.20 = 4 an hour; else it draws from the tariff', () => {
    const own = blower(log(heater('electric', 0.2 / KWH_J)));
    expect([own.heaterW, own.heaterFuelPerHour]).toEqual([0, expect.closeTo(4, 9)]);
    const tariff = blower(log(heater('electric', null)));
    expect([tariff.heaterW, tariff.heaterFuelPerHour]).toEqual([HEAT_W, 0]);
    // 28 kW seen of a fan of 8: on its meter, priced as that is.
    const metered = blower(log(heater('electric', 0.2 / KWH_J), FAN_KW + HEAT_W / 1000));
    expect([metered.heaterW, metered.heaterFuelPerHour]).toEqual([HEAT_W, 0]);
    expect(metered.powerW).toBeCloseTo(1000 * FAN_KW, 6);
  });

  it('is parted as the fan’s power is among the bins that it serves', () => {
    const got = blower(log(heater('electric', null), FAN_KW, [['F1'], ['F1']]));
    expect(got.heaterK).toBeCloseTo(13.254 / 2, 3);
    expect(got.heaterW).toBe(HEAT_W / 2);
    expect(got.powerW).toBeCloseTo(500 * FAN_KW, 6);
  });

  it('has no price where none is stated for its fuel', () => {
    expect(blower(log(heater('natural gas', null))).heaterFuelPerHour).toBeNaN();
    expect(blower(log(null))).toMatchObject({ heaterK: 0, heaterW: 0, heaterFuelPerHour: 0, warmingK: 5 });
  });
});
