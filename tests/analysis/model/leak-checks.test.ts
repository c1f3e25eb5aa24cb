import { describe, expect, it } from 'vitest';
import type { BinLog } from '../../../src/analysis/model/bin-log.ts';
import { powerDoubts, warmingDoubts } from '../../../src/analysis/model/leak-checks.ts';
import { airLost, leakDoubts, leakNotes } from '../../../src/analysis/model/leak-joined.ts';
import { estimate } from '../../../src/base/estimate.ts';

interface Plan {
  powerW?: number;
  pressurePa?: number;
  warmingK?: number | null;
  air?: 'up' | 'down';
  /** airflow by the fans' curves */
  curve?: readonly [number, number] | null;
  byNameplate?: boolean;
  /** bins into which the fan blows */
  users?: number;
  motorEfficiency?: number | null;
}
const logOf = ({
  powerW = 8000,
  pressurePa = 500,
  warmingK = null,
  air = 'up',
  curve = null,
  byNameplate = false,
  users = 1,
  motorEfficiency = null,
}: Plan) => {
  const energyFrom = byNameplate ? 'nameplate' : 'meter';
  return {
    bin: { air, fanIds: ['F1'] },
    season: {
      fans: [{ id: 'F1', heater: null, motorEfficiency, load: null, nameplateW: powerW }],
      bins: Array.from({ length: users }, () => ({ fanIds: ['F1'] })),
    },
    warmingK,
    meanVolumeM3Kg: 0.83,
    review: {
      fan: { fans: [{ fanId: 'F1', onHours: 100, energyKwh: powerW / 10, energyFrom, energyRelSd: 0.02 }] },
      airflow: { fanSet: 'F1', pressure: { pressurePa }, byFanCurve: { interval: curve } },
    },
  } as unknown as BinLog;
};
const about = (flowM3S: number) => estimate(flowM3S, 0.85 * flowM3S, 1.15 * flowM3S);

describe('a floor that leaks', () => {
  it('shows by power that makes too little pressure and airflow', () => {
    // 4 m3/s at 500 Pa, and 60 Pa of its own speed, are 2.2 kW of air, of 7 kW at the shaft 32 %. Pressure falls as airflow to the power
    // of 1.4 or so: half of the air meets 190 Pa, 500 W, 7 %; a third of it 107 Pa, 220 W, 3 %, of which a bed so light says nothing, but 299 cfm/hp do; two thirds 283 Pa, 915 W, 13 %.
    // Three quarters, 335 Pa, 1185 W, 17 %, may be a poor fan.
    expect(powerDoubts(logOf({}), 4)).toEqual([]);
    expect(powerDoubts(logOf({ pressurePa: 190 }), 2)[0].why).toContain('takes 7 % of');
    // By ln(1549 / 299) = 1.64, a fourteenth of the way to ln(0.4 / 0.031) / 2 = 1.28: e^1.62 = 5.1.
    expect(airLost(logOf({ pressurePa: 107 }), 1.33, about(1.33))[0].why).toContain(
      'By their power the fans blow 5.1 (',
    );
    expect(powerDoubts(logOf({ pressurePa: 283 }), 2.67)).toHaveLength(1);
    expect(powerDoubts(logOf({ pressurePa: 335 }), 3)).toEqual([]);
  });

  it('is not seen behind a fan on a bed too light for it: 1.2 m3/s at 100 Pa are 8 % of 1.5 kW, with the speed of the air 12 %', () => {
    expect(powerDoubts(logOf({ powerW: 1750, pressurePa: 100 }), 1.2)).toEqual([]);
  });

  it('is not seen behind a smallest fan that is merely too large, whose pressure alone takes 4 % of its power', () => {
    // 0.6 kW, 0.53 at the shaft: 0.15 m3/s at 160 Pa are 24 W, 4.5 %; 0.1 m3/s 16 W, 3 %.
    expect(powerDoubts(logOf({ powerW: 600, pressurePa: 160 }), 0.15)).toEqual([]);
    expect(powerDoubts(logOf({ powerW: 600, pressurePa: 160 }), 0.1)).toHaveLength(1);
    // On a light bed 0.4 m3/s are 1197 cfm/hp, 0.13 m3/s 389.
    expect(airLost(logOf({ powerW: 600, pressurePa: 60 }), 0.4, about(0.4))).toEqual([]);
    expect(airLost(logOf({ powerW: 600, pressurePa: 20 }), 0.13, about(0.13))).toHaveLength(1);
  });

  it('shows by air that is warmed too little for the power and the airflow that the grain got', () => {
    // 7.2 kW into 4 m3/s (4.8 kg/s) are 1.5 K. Where only a third of the air reaches the grain it is still 1.5 K.
    expect(warmingDoubts(logOf({ warmingK: 1.5 }), about(4))).toEqual([]);
    expect(warmingDoubts(logOf({ warmingK: 1.5 }), about(1.4))[0].why).toMatch(/2\.\d times the air/);
    // Of half a kelvin the thermometers leave a factor of three open, and air drawn down meets the grain before the fan.
    expect(warmingDoubts(logOf({ powerW: 2400, warmingK: 0.5 }), about(1.4))).toEqual([]);
    expect(warmingDoubts(logOf({ warmingK: 1.5, air: 'down' }), about(1.4))).toEqual([]);
  });
});

describe('all that tells of a leak together', () => {
  // 3 m3/s at 335 Pa are 17 % of the shaft's 7 kW: a quarter of the air is lost, or the fan is poor. 8 kW warm by 1.5 K what is 1.3 times
  // those 3 m3/s, which thermometers alone leave open too.
  const quarter = { pressurePa: 335, warmingK: 1.5 };

  it('is sure where each alone is not, and says how much', () => {
    expect(powerDoubts(logOf(quarter), 3)).toEqual([]);
    expect(warmingDoubts(logOf(quarter), about(3))).toEqual([]);
    const [{ why }] = leakDoubts(logOf(quarter), about(3));
    // ln(0.4 / 0.168) / 2 = 0.43 to 0.15, ln(3.96 / 3) = 0.28 to 0.25: 0.39, with the grain's airflow to 0.14; e^0.39 = 1.5.
    expect(why).toContain('By their power and the warming of the air the fans blow 1.5 (1.2 to 1.9) times the air');
  });

  it('leaves a poor fan alone whose air is warmed by all that it wastes', () => {
    // 20 % efficiency: 12.7 kW for 4 m3/s at 500 Pa, warmed by 2.4 K.
    expect(airLost(logOf({ powerW: 12_700, warmingK: 2.4 }), 4, about(4))).toEqual([]);
    expect(leakDoubts(logOf({ warmingK: 1.5 }), about(4))).toEqual([]);
  });

  it('takes the fans’ curves, and tells nothing on a light bed by power alone', () => {
    // 1.2 m3/s are 1573 cfm for each of the shaft's 1.6 hp, as such fans blow; 786 cfm at twice the power are under what is planned with: ln(1549 / 786) = 0.68 to 0.41.
    const light = { powerW: 1370, pressurePa: 100 };
    expect(leakDoubts(logOf(light), about(1.2))).toEqual([]);
    expect(leakDoubts(logOf({ ...light, powerW: 2740 }), about(1.2))).toHaveLength(1);
    const [{ why }] = leakDoubts(logOf({ ...light, curve: [1.9, 2.3] }), about(1.2));
    expect(why).toContain('By their power and their curves');
    expect(leakDoubts(logOf({ ...light, curve: [1.1, 1.4] }), about(1.2))).toEqual([]);
  });

  it('accuses no fan on a light bed that blows what is planned with, and does where a half of that comes through', () => {
    // "About 1,000 cfm/hp": Iowa State University crops newsletter 2018; 1 hp cools 10,000 bu in about 150 h, which takes 0.1 cfm/bu: University of Kentucky 2002.
    const hp = 2;
    const planned = (hp * 1000 * 0.3048 ** 3) / 60;
    const fan = { powerW: (hp * 745.7) / 0.88, pressurePa: 100 };
    expect(airLost(logOf(fan), planned, about(planned))).toEqual([]);
    expect(airLost(logOf({ ...fan, pressurePa: 40 }), planned, about(planned))).toEqual([]);
    expect(airLost(logOf({ ...fan, pressurePa: 40 }), planned / 2, about(planned / 2))).toHaveLength(1);
  });

  it('goes over from air for power to efficiency as the grain holds more back', () => {
    // 2 m3/s by 5 kW (4.4 at the shaft): 718 cfm/hp, ln(1549 / 718) = 0.77. From 200 Pa on efficiency alone: 280 Pa x 2 / 4.4 kW = 13 %, ln(0.4 / 0.13) / 2 = 0.57.
    const times = (pressurePa: number) =>
      Number(/fans blow ([\d.]+) /.exec(leakDoubts(logOf({ powerW: 5000, pressurePa }), about(2))[0].why)?.[1]);
    expect(times(99)).toBe(2.2);
    expect(times(101)).toBe(2.2);
    expect(times(220)).toBe(1.8);
  });

  it('is said to be open where a leak of a half would not show, and only there', () => {
    const light = { powerW: 1750, pressurePa: 100 };
    // 1231 cfm/hp: ln(1549 / 1231) = 0.23, to 0.40 and the airflow's 0.09: up to e^(0.23 + 1.645 x 0.41) = 2.5 times.
    expect(leakNotes(logOf(light), about(1.2))).toEqual([
      expect.stringContaining('by their power the fans may blow up to 2.5 times the air that the grain got'),
    ]);
    expect(leakNotes(logOf({ ...light, curve: [1.1, 1.4] }), about(1.2))).toEqual([]);
    // 32 % of the shaft's power: ln(0.4 / 0.32) / 2 = 0.11 to 0.16, up to 1.5 times.
    expect(leakNotes(logOf({}), about(4))).toEqual([]);
    expect(leakNotes(logOf({ ...light, users: 2 }), about(1.2))).toEqual([]);
  });

  it('clears by well told warming a fan that a damper throttles, and accuses none that blows into another bin too', () => {
    // Half of the air at three quarters of the power: 2 m3/s at 190 Pa are 10 % of the shaft, and all of it warms those 2 m3/s by 2.3 K.
    const throttled = { powerW: 6000, pressurePa: 190 };
    expect(airLost(logOf(throttled), 2, about(2))).toHaveLength(1);
    expect(airLost(logOf({ ...throttled, warmingK: 2.3 }), 2, about(2))).toEqual([]);
    expect(airLost(logOf({ ...throttled, users: 2 }), 2, about(2))).toEqual([]);
  });

  it('leaves to a fan that only its nameplate tells of what such a fan may draw', () => {
    // 4 m3/s at 500 Pa by 12 kW of nameplate, of which it may draw 8: warmed by 1.5 K as 8 kW would.
    const told = { powerW: 12_000, warmingK: 1.5 };
    expect(airLost(logOf(told), 4, about(4))).toHaveLength(1);
    expect(airLost(logOf({ ...told, byNameplate: true }), 4, about(4))).toEqual([]);
    // A third of the air is too little all the same.
    const third = { ...told, byNameplate: true, pressurePa: 107 };
    const [{ help }] = airLost(logOf(third), 1.33, about(1.33));
    expect(help).toContain('log current or power where only the nameplate tells it');
  });

  it('takes the motor’s own efficiency where it is stated', () => {
    // 2.2 m3/s at 260 Pa are 9 % of 8 kW; of the shaft of a motor that loses 40 % they are 15 %.
    const poor = { pressurePa: 260 };
    expect(powerDoubts(logOf(poor), 2.2)).toHaveLength(1);
    expect(powerDoubts(logOf({ ...poor, motorEfficiency: 0.55 }), 2.2)).toEqual([]);
  });
});
