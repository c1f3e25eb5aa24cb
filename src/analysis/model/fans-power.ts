import type { Fan, Heater } from '../../bin/fan.ts';
import { binsOnFan } from '../energy/bins-on-fan.ts';
import { runningPowerW } from '../energy/fan-cost.ts';
import { heaterInPowerW } from '../energy/heater-use.ts';
import { DEFAULT_MOTOR_EFFICIENCY, nominalPower } from '../fan/nominal-power.ts';
import type { BinLog } from './bin-log.ts';

/** The fans of which the airflow is told, while all of them run. */
export interface FansPower {
  /** electric power without heaters, W; of a fan that serves several bins this bin's part */
  powerW: number;
  /** relative standard error of `powerW` */
  relSd: number;
  /** of one of them or more nothing tells the power but the horsepower on its nameplate */
  byNameplate: boolean;
  /** one of them blows into other bins too */
  shared: boolean;
  /** as stated, weighed by power; where none is, the usual one */
  motorEfficiency: number;
}

/** A heater of one of those fans. */
export interface HeaterPart {
  heater: Heater;
  /** this bin's part, one over the bins that the fan serves */
  part: number;
  /** an electric one that the fan's own meter or current includes */
  inPower: boolean;
}

function fansTold({ bin, season, review }: BinLog): Fan[] {
  const main = review.airflow.fanSet.split('+').filter((id) => bin.fanIds.includes(id));
  return season.fans.filter(({ id }) => (main.length > 0 ? main : bin.fanIds).includes(id));
}

function runningOf({ review }: BinLog, fan: Fan) {
  const own = review.fan.fans.find(({ fanId }) => fanId === fan.id);
  const ran = own !== undefined && own.onHours > 0 && own.energyKwh > 0;
  const runningW = ran ? runningPowerW(fan, own) : nominalPower(fan).powerW;
  return { own, ran, runningW, heaterW: ran ? heaterInPowerW(fan, own, runningW) : 0 };
}

/** The heaters of the fans of which the airflow is told: an output is parted among bins as the fan's power is. */
export function heatersOf(log: BinLog): HeaterPart[] {
  return fansTold(log).flatMap((fan) =>
    fan.heater === null
      ? []
      : [{ heater: fan.heater, part: 1 / binsOnFan(log.season, fan.id), inPower: runningOf(log, fan).heaterW > 0 }],
  );
}

export function fansPower(log: BinLog): FansPower {
  const parts = fansTold(log).map((fan) => {
    const { own, ran, runningW, heaterW } = runningOf(log, fan);
    const users = binsOnFan(log.season, fan.id);
    return {
      powerW: Math.max(0, runningW - heaterW) / users,
      // Which part of its air a bin gets nobody says.
      shared: users > 1,
      byNameplate:
        (!ran || own?.energyFrom === 'nameplate' || own?.energyFrom === null) &&
        fan.load === null &&
        fan.motorEfficiency === null,
      relSd: own?.energyRelSd ?? 0,
      motorEfficiency: fan.motorEfficiency ?? DEFAULT_MOTOR_EFFICIENCY,
    };
  });
  const powerW = parts.reduce((sum, one) => sum + one.powerW, 0);
  const mean = (of: (one: (typeof parts)[number]) => number) =>
    powerW > 0 ? parts.reduce((sum, one) => sum + one.powerW * of(one), 0) / powerW : Number.NaN;
  return {
    powerW,
    relSd: mean((one) => one.relSd),
    byNameplate: parts.some((one) => one.byNameplate),
    shared: parts.some((one) => one.shared),
    motorEfficiency: mean((one) => one.motorEfficiency),
  };
}
