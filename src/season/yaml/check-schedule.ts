import type { Check } from './check.ts';
import type { Draft } from './draft.ts';
import type { YamlPath } from './path-text.ts';
import { si } from './quantity.ts';
import type { ScheduleText } from './schedule.ts';
import { rateTakes, readRate, type ScheduleUnit } from './schedule-rate.ts';
import { show } from './show.ts';

/** What the keys of one schedule say together. @returns what it takes off, null where that cannot be told */
export function checkSchedule(
  schedule: Draft<ScheduleText>,
  base: string | undefined,
  path: YamlPath,
  { report, bad, currency }: Check,
): ScheduleUnit | null {
  const wrong = (key: string) => bad.under([...path, key]);
  const has = (key: 'rate' | 'rates' | 'above') => schedule[key] !== undefined || wrong(key);
  if (has('rate') && has('rates')) {
    report('SEASON_CONFLICT', [...path, 'rate'], 'stands beside rates. Keep one of them.', 'key');
  } else if (!has('rate') && !has('rates')) {
    report(
      'SEASON_MISSING',
      [...path, 'rate'],
      `is missing; it takes ${rateTakes(currency)}, or a list of rates.`,
      'parent',
    );
  }
  if (schedule.points_by !== undefined && !has('rates')) {
    report('SEASON_CONFLICT', [...path, 'points_by'], 'is for a schedule with rates. Leave it out.', 'key');
  }
  if (!has('above') && base === undefined) {
    report(
      'SEASON_MISSING',
      [...path, 'above'],
      'is missing, and so is base_moisture of the crop. Write e.g. above: 15 %.',
      'parent',
    );
  }
  const unit = oneUnit(schedule, path, report, currency);
  if (unit === 'weight' && schedule.bushels !== undefined) {
    report(
      'SEASON_CONFLICT',
      [...path, 'bushels'],
      'does not belong to a shrink, which is counted on the wet weight. Leave it out.',
      'key',
    );
  }
  checkMoistures(schedule, base, path, report, currency);
  return unit;
}

function oneUnit(
  { rate: single, rates = [] }: Draft<ScheduleText>,
  path: YamlPath,
  report: Check['report'],
  currency: string,
): ScheduleUnit | null {
  const unitOf = (value: string | undefined) => {
    const read = value === undefined ? null : readRate(value, currency);
    return read?.ok ? read.unit : null;
  };
  let first = unitOf(single);
  rates.forEach((one, i) => {
    const unit = unitOf(one?.rate);
    if (first !== null && unit !== null && unit !== first) {
      const reason = `is ${show(one?.rate)}, but the rates before it are of another kind. One schedule takes off one thing: money, a share of the price, or weight.`;
      report('SEASON_CONFLICT', [...path, 'rates', i, 'rate'], reason);
    }
    first ??= unit;
  });
  return first;
}

/** Moistures must rise from the base on, and what is above the last must be told. */
function checkMoistures(
  { above, rates, refuse_above }: Draft<ScheduleText>,
  base: string | undefined,
  path: YamlPath,
  report: Check['report'],
  currency: string,
): void {
  const from = above ?? base;
  let below = from;
  const wetter = (one: string, other: string) => si('moisture', one, currency) > si('moisture', other, currency);
  rates?.forEach((one, i) => {
    if (one === undefined) return;
    const at = [...path, 'rates', i, 'up_to'];
    const last = i === (rates?.length ?? 0) - 1;
    if (one.up_to === undefined) {
      if (!last) report('SEASON_MISSING', at, 'is missing; only the last rate has no end.', 'parent');
      return;
    }
    if (below !== undefined && !wetter(one.up_to, below)) {
      report('SEASON_RANGE', at, `is ${show(one.up_to)}; it must lie above ${show(below)}, where the rate begins.`);
    }
    below = one.up_to;
    if (last && (refuse_above === undefined || wetter(refuse_above, one.up_to))) {
      const reason = `is ${show(one.up_to)}, and nothing is said of wetter loads. Leave it out of the last rate, or set refuse_above: ${one.up_to}.`;
      report('SEASON_RANGE', at, reason);
    }
  });
  if (refuse_above !== undefined && from !== undefined && !wetter(refuse_above, from)) {
    report('SEASON_RANGE', [...path, 'refuse_above'], `is ${show(refuse_above)}; it must lie above ${show(from)}.`);
  }
}
