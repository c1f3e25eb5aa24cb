import { toLocalMs, type Zone } from '../../base/zone.ts';
import { monthKey } from '../../money/local-time.ts';
import { countedHours, type FanTime } from './counted-hours.ts';
import type { MoistAir } from './entering-moist-air.ts';
import type { HourPieces } from './hour-pieces.ts';
import { sumWhere } from './hour-sums.ts';
import { DAY_BAND_H, HOUR_CLASSES, type HourGroup, OUTDOOR_BANDS, VERDICTS } from './useful-hours-types.ts';

const HOUR_MS = 3_600_000;
const FOR = VERDICTS.indexOf('for');
const AGAINST = VERDICTS.indexOf('against');
const UNKNOWN_VERDICT = VERDICTS.indexOf('unknown');
const UNCLASSED = [HOUR_CLASSES.indexOf('unknown'), HOUR_CLASSES.indexOf('empty')];

/** Fan hours by local month, by three hours of the day, and by the outdoor air of the moment. */
export function hourGroups(
  time: FanTime,
  outdoor: { on: MoistAir; silent: MoistAir },
  zone: Zone,
): { months: HourGroup[]; hoursOfDay: HourGroup[]; outdoor: HourGroup[] } {
  const text = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);
  const keysOf = (of: (pieces: HourPieces, air: MoistAir, i: number) => string): Keys => ({
    on: Array.from(time.on.midMs, (_, i) => of(time.on, outdoor.on, i)),
    silent: Array.from(time.silent.midMs, (_, i) => of(time.silent, outdoor.silent, i)),
  });
  const by = (keys: Keys, order: (a: string, b: string) => number) =>
    groupsBy(time, keys).sort((a, b) => order(a.key, b.key));
  return {
    months: by(
      keysOf(({ midMs }, _, i) => monthKey(zone, midMs[i])),
      text,
    ),
    hoursOfDay: by(
      keysOf(({ midMs }, _, i) => dayBand(toLocalMs(zone, midMs[i]))),
      (a, b) => Number(a) - Number(b),
    ),
    outdoor: by(
      keysOf((_, air, i) => airBand(air.tempC[i], air.rh[i])),
      text,
    ),
  };
}

function dayBand(localMs: number): string {
  const hour = Math.floor(localMs / HOUR_MS);
  return String(Math.floor((((hour % 24) + 24) % 24) / DAY_BAND_H) * DAY_BAND_H);
}

function airBand(tempC: number, rh: number): string {
  if (Number.isNaN(tempC + rh)) return 'none';
  return `${bandOf(tempC, OUTDOOR_BANDS.tempC)} ${bandOf(rh, OUTDOOR_BANDS.rh)}`;
}

function bandOf(value: number, ends: readonly number[]): number {
  return ends.filter((end) => value >= end).length;
}

/** The group of each piece, [pieces on] and [pieces silent]. */
interface Keys {
  on: readonly string[];
  silent: readonly string[];
}

function groupsBy(time: FanTime, keys: Keys): HourGroup[] {
  const { on, cases } = time;
  return [...new Set([...keys.on, ...keys.silent])].map((key) => {
    const part = { on: (i: number) => keys.on[i] === key, silent: (i: number) => keys.silent[i] === key };
    const verdict = (code: number) =>
      countedHours(
        time,
        ({ verdicts }, i) => verdicts[i] === code,
        ({ verdicts }, i) => verdicts[i] === UNKNOWN_VERDICT,
        part,
      );
    return {
      key,
      hours: countedHours(time, () => true, undefined, part),
      forGoal: verdict(FOR),
      against: verdict(AGAINST),
      unclassed: sumWhere(on, (i) => part.on(i) && UNCLASSED.includes(cases.main.classes[i])),
    };
  });
}
