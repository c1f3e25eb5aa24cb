import { toLocalMs, type Zone } from '../../base/zone.ts';
import { monthKey } from '../../money/local-time.ts';
import type { MoistAir } from './entering-moist-air.ts';
import type { HourPieces } from './hour-pieces.ts';
import { type JudgedCases, spanned } from './judged-hours.ts';
import { DAY_BAND_H, HOUR_CLASSES, type HourGroup, OUTDOOR_BANDS, VERDICTS } from './useful-hours-types.ts';

const HOUR_MS = 3_600_000;
const FOR = VERDICTS.indexOf('for');
const AGAINST = VERDICTS.indexOf('against');
const UNKNOWN_VERDICT = VERDICTS.indexOf('unknown');
const UNKNOWN = HOUR_CLASSES.indexOf('unknown');
const EMPTY = HOUR_CLASSES.indexOf('empty');

/** Fan hours by local month, by three hours of the day, and by the outdoor air of the moment. */
export function hourGroups(
  pieces: HourPieces,
  cases: JudgedCases,
  outdoor: MoistAir,
  zone: Zone,
): { months: HourGroup[]; hoursOfDay: HourGroup[]; outdoor: HourGroup[] } {
  const by = (keyOf: (i: number) => string | null, order: (a: string, b: string) => number) =>
    groupsBy(pieces, cases, keyOf).sort((a, b) => order(a.key, b.key));
  const text = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);
  return {
    months: by((i) => monthKey(zone, pieces.midMs[i]), text),
    hoursOfDay: by(
      (i) => {
        const hour = Math.floor(toLocalMs(zone, pieces.midMs[i]) / HOUR_MS);
        return String(Math.floor((((hour % 24) + 24) % 24) / DAY_BAND_H) * DAY_BAND_H);
      },
      (a, b) => Number(a) - Number(b),
    ),
    outdoor: by((i) => {
      const t = outdoor.tempC[i];
      const rh = outdoor.rh[i];
      if (Number.isNaN(t + rh)) return 'none';
      return `${bandOf(t, OUTDOOR_BANDS.tempC)} ${bandOf(rh, OUTDOOR_BANDS.rh)}`;
    }, text),
  };
}

function bandOf(value: number, ends: readonly number[]): number {
  return ends.filter((end) => value >= end).length;
}

function groupsBy(pieces: HourPieces, cases: JudgedCases, keyOf: (i: number) => string | null): HourGroup[] {
  const rows = new Map<string, number[]>();
  for (let i = 0; i < pieces.midMs.length; i++) {
    const key = keyOf(i);
    if (key === null) continue;
    const found = rows.get(key);
    if (found === undefined) rows.set(key, [i]);
    else found.push(i);
  }
  return [...rows].map(([key, of]) => {
    const sum = (codes: Uint8Array, code: number) =>
      of.reduce((all, i) => all + (codes[i] === code ? pieces.hours[i] : 0), 0);
    const hours = of.reduce((all, i) => all + pieces.hours[i], 0);
    const more = sum(cases.main.verdicts, UNKNOWN_VERDICT);
    return {
      key,
      hours,
      forGoal: spanned(cases, ({ verdicts }) => sum(verdicts, FOR), hours, more),
      against: spanned(cases, ({ verdicts }) => sum(verdicts, AGAINST), hours, more),
      unclassed: sum(cases.main.classes, UNKNOWN) + sum(cases.main.classes, EMPTY),
    };
  });
}
