import type { Estimate } from '../../base/estimate.ts';
import { toLocalMs, type Zone } from '../../base/zone.ts';
import { monthKey } from '../../money/local-time.ts';
import { countedHours, type FanTime } from './counted-hours.ts';
import type { MoistAir } from './entering-moist-air.ts';
import type { HourPieces } from './hour-pieces.ts';
import { sumWhere } from './hour-sums.ts';
import { mostByPart, type Untimed } from './untimed-bands.ts';
import { DAY_BAND_H, HOUR_CLASSES, type HourGroup, NO_PART, OUTDOOR_BANDS, VERDICTS } from './useful-hours-types.ts';

const HOUR_MS = 3_600_000;
const FOR = VERDICTS.indexOf('for');
const AGAINST = VERDICTS.indexOf('against');
const UNKNOWN_VERDICT = VERDICTS.indexOf('unknown');
const UNCLASSED = [HOUR_CLASSES.indexOf('unknown'), HOUR_CLASSES.indexOf('empty')];

/**
 * Fan hours by local month, by three hours of the day, and by the outdoor air of the moment. Hours whose moment no log tells are
 * a part of their own by day and by air, `none`, and the upper ends of the other parts hold as many of them as may lie there.
 */
export function hourGroups(
  time: FanTime,
  outdoor: { on: MoistAir; silent: MoistAir },
  zone: Zone,
  untimed: Untimed,
): { months: HourGroup[]; hoursOfDay: HourGroup[]; outdoor: HourGroup[] } {
  const text = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);
  const keysOf = (of: (pieces: HourPieces, air: MoistAir, i: number) => string): Keys => ({
    on: Array.from(time.on.midMs, (_, i) => of(time.on, outdoor.on, i)),
    silent: Array.from(time.silent.midMs, (_, i) => of(time.silent, outdoor.silent, i)),
  });
  const timed = (i: number) => untimed.on[i] !== 1;
  const band = (ms: number) => dayBand(toLocalMs(zone, ms));
  const inBand = mostByPart(time.on, untimed, zone, band);
  const all = sumWhere(time.on, (i) => !timed(i));
  const by = (keys: Keys, order: (a: string, b: string) => number, most?: (key: string) => number) =>
    groupsBy(time, keys, most).sort((a, b) => order(a.key, b.key));
  return {
    months: by(
      keysOf(({ midMs }, _, i) => monthKey(zone, midMs[i])),
      text,
    ),
    hoursOfDay: by(
      {
        on: Array.from(time.on.midMs, (ms, i) => (timed(i) ? band(ms) : NO_PART)),
        silent: Array.from(time.silent.midMs, band),
        more: [...inBand.keys()],
      },
      (a, b) => bandNumber(a) - bandNumber(b),
      (key) => inBand.get(key) ?? 0,
    ),
    outdoor: by(
      keysOf((pieces, air, i) => (pieces === time.on && !timed(i) ? NO_PART : airBand(air.tempC[i], air.rh[i]))),
      text,
      (key) => (key === NO_PART ? 0 : all),
    ),
  };
}

function dayBand(localMs: number): string {
  const hour = Math.floor(localMs / HOUR_MS);
  return String(Math.floor((((hour % 24) + 24) % 24) / DAY_BAND_H) * DAY_BAND_H);
}

function airBand(tempC: number, rh: number): string {
  if (Number.isNaN(tempC + rh)) return NO_PART;
  return `${bandOf(tempC, OUTDOOR_BANDS.tempC)} ${bandOf(rh, OUTDOOR_BANDS.rh)}`;
}

function bandOf(value: number, ends: readonly number[]): number {
  return ends.filter((end) => value >= end).length;
}

/** Hours of which nobody knows the part come last. */
const bandNumber = (key: string) => (key === NO_PART ? 24 : Number(key));

/** The group of each piece, [pieces on] and [pieces silent], and those in which others may lie. */
interface Keys {
  on: readonly string[];
  silent: readonly string[];
  more?: readonly string[];
}

/** @param most  hours that may belong to a group beside its own */
function groupsBy(time: FanTime, keys: Keys, most: (key: string) => number = () => 0): HourGroup[] {
  const { on, cases } = time;
  return [...new Set([...keys.on, ...keys.silent, ...(keys.more ?? [])])].map((key) => {
    const withMost = ({ value, interval, why }: Estimate): Estimate => ({
      value,
      interval: interval === null ? null : [interval[0], interval[1] + most(key)],
      why,
    });
    const part = { on: (i: number) => keys.on[i] === key, silent: (i: number) => keys.silent[i] === key };
    const verdict = (code: number) =>
      withMost(
        countedHours(
          time,
          ({ verdicts }, i) => verdicts[i] === code,
          ({ verdicts }, i) => verdicts[i] === UNKNOWN_VERDICT,
          part,
        ),
      );
    return {
      key,
      hours: withMost(countedHours(time, () => true, undefined, part)),
      forGoal: verdict(FOR),
      against: verdict(AGAINST),
      unclassed: sumWhere(on, (i) => part.on(i) && UNCLASSED.includes(cases.main.classes[i])),
    };
  });
}
