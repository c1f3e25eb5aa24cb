import type * as z from 'zod';
import type { MoistureSchedule } from '../../money/moisture-schedule.ts';
import type { PriceSchedule } from '../season.ts';
import type { Check } from './check.ts';
import type { Draft } from './draft.ts';
import { checked, choice, list, map, text } from './fields.ts';
import type { YamlPath } from './path-text.ts';
import { MOISTURE, quantity, readQuantity, si, siOrNull } from './quantity.ts';
import { show } from './show.ts';

type Unit = MoistureSchedule['unit'];
type Read<T> = ({ ok: true } & T) | { ok: false; reason: string };

const SHARE = /^([\d.]+) *% +of +(price|weight)$/;
const POINTS = /^(\d+\.?\d*|\.\d+) +points?$/;

/** `0.05 USD/bu`, `1 % of price`, `0.7 % of weight`. */
function readRate(given: string, currency: string): Read<{ rate: number; unit: Unit }> {
  const share = SHARE.exec(given.trim());
  if (share !== null) {
    const percent = Number(share[1]);
    if (!(percent <= 100)) return { ok: false, reason: `is ${show(given)}; it must lie between 0 % and 100 %.` };
    return { ok: true, rate: percent / 100, unit: share[2] as Unit };
  }
  const money = readQuantity('price per bushel', given, currency);
  if (money.ok && money.si >= 0) return { ok: true, rate: money.si, unit: 'money' };
  const reason = `is ${show(given)}; it takes ${rateTakes(currency)}.`;
  return { ok: false, reason: money.ok ? `is ${show(given)}; it must not be negative.` : reason };
}

const rateTakes = (currency: string) => `e.g. "0.05 ${currency}/bu", "1 % of price" or "0.7 % of weight"`;

const rate = (currency: string) =>
  checked('SEASON_UNIT', rateTakes(currency), (value) => readRate(value, currency), {
    description: `what is taken off: ${rateTakes(currency)}`,
    pattern: `^ *[\\d.,]+ *(?:% +of +(?:price|weight)|[A-Z]{3} */ *bu) *$`,
  });

function readPoints(given: string): Read<{ points: number }> {
  const match = POINTS.exec(given.trim());
  const points = match === null ? Number.NaN : Number(match[1]);
  if (points >= 0.01 && points <= 10) return { ok: true, points };
  const why =
    match === null
      ? 'it takes points of moisture with the word, e.g. "0.5 point"'
      : 'it must lie between 0.01 and 10 points';
  return { ok: false, reason: `is ${show(given)}; ${why}.` };
}

const points = (description: string) =>
  checked('SEASON_UNIT', 'points of moisture, e.g. "0.5 point"', readPoints, { description, pattern: POINTS.source });

export const scheduleSchema = (currency: string) =>
  map(
    {
      name: text('what it is called, e.g. drying charge').optional(),
      above: quantity(
        'moisture',
        currency,
        'nothing is taken off up to here; base_moisture when left out',
        MOISTURE,
      ).optional(),
      rate: rate(currency).optional(),
      rates: list(
        map(
          {
            up_to: quantity(
              'moisture',
              currency,
              'moisture up to which the rate holds; left out of the last',
              MOISTURE,
            ).optional(),
            rate: rate(currency),
          },
          'a rate and how far it holds',
        ),
        'rates by moisture, rising',
        'a list of rates, e.g. [{ up_to: 20 %, rate: 0.05 USD/bu }, { rate: 0.02 USD/bu }]',
        1,
      ).optional(),
      per: points('points that a rate is for; 1 point when left out').optional(),
      step: points(
        'points counted at a time, a started step as a whole one; the moisture as it was read when left out',
      ).optional(),
      points_by: choice(
        ['own rate', 'last rate'],
        'with rates: each point by the rate that holds there (own rate, when left out), or all points by the rate that the load reaches',
      ).optional(),
      bushels: choice(
        ['wet', 'dry'],
        'counted on bushels as delivered (wet, when left out) or after shrink',
      ).optional(),
      refuse_above: quantity('moisture', currency, 'wetter loads are not taken', MOISTURE).optional(),
    },
    'a deduction that rises with moisture',
  );

export type ScheduleText = z.infer<ReturnType<typeof scheduleSchema>>;

/** What the keys of one schedule say together. @returns what it takes off, null where that cannot be told */
export function checkSchedule(
  schedule: Draft<ScheduleText>,
  base: string | undefined,
  path: YamlPath,
  { report, bad, currency }: Check,
): Unit | null {
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
): Unit | null {
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

/** @param base  `base_moisture` of the crop, for a schedule that says no `above` */
export function toSchedule(given: ScheduleText, base: string | undefined, currency: string): PriceSchedule {
  const pointsOf = (value: string | undefined): number | null => {
    const read = value === undefined ? null : readPoints(value);
    return read?.ok ? read.points : null;
  };
  let unit: Unit = 'money';
  const rates = given.rates ?? [{ rate: given.rate as string, up_to: undefined }];
  const bands = rates.map((one) => {
    const read = readRate(one.rate, currency);
    if (!read.ok) throw new Error(`unchecked rate: ${read.reason}`);
    unit = read.unit;
    return {
      toWb: one.up_to === undefined ? Number.POSITIVE_INFINITY : si('moisture', one.up_to, currency),
      rate: read.rate,
    };
  });
  return {
    name: given.name ?? null,
    schedule: {
      baseWb: si('moisture', (given.above ?? base) as string, currency),
      perPoints: pointsOf(given.per) ?? 1,
      stepPoints: pointsOf(given.step),
      bands,
      banding: given.points_by === 'last rate' ? 'reached' : 'cumulative',
      unit,
      bushels: given.bushels ?? 'wet',
      rejectOverWb: siOrNull('moisture', given.refuse_above, currency),
    },
  };
}
