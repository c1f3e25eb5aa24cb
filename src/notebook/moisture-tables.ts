import type { BinMoisture, BinReview, MomentMean } from '../analysis/types.ts';
import { moistureOverTime } from '../report/figures/moisture-over-time.ts';
import { moistureProfile } from '../report/figures/moisture-profile.ts';
import type { Cell, Figure, Table } from '../report/page.ts';
import type { Amount, Units } from '../report/units.ts';
import type { LoadedSeason } from '../season/loaded.ts';
import { momentEstimate } from './bin-table.ts';
import { fanDays, localSpan } from './fan-days.ts';
import { sectionFigure } from './section-figure.ts';
import { capital } from './words.ts';

/** Start and end: which readings, and what the fan-on readings would have said. */
export function momentTable(review: BinReview): Table {
  const { start, end, why } = review.moisture;
  const row = (label: string, of: MomentMean): Record<string, Cell> => ({
    moment: label,
    mean: momentEstimate(of, why ?? 'No reading could be used.'),
    fanOn: of.fanOn ?? { value: null, why: 'No reading with the fan running lies near enough.' },
    from: of.window?.fromMs ?? { value: null, why: why ?? 'No day of readings could be used.' },
    to: of.window?.toMs ?? { value: null, why: why ?? 'No day of readings could be used.' },
    still: of.value === null ? { value: null, why: why ?? 'No reading could be used.' } : of.stillAir ? 'yes' : 'no',
    readings: of.readings,
    sensors: of.sensors,
  });
  return {
    id: 'moments',
    caption: 'The readings behind start and end',
    folded: 'on screen',
    columns: [
      { key: 'moment', label: 'Moment', quantity: null },
      { key: 'mean', label: 'Mean moisture', quantity: 'moisture' },
      { key: 'fanOn', label: 'Fan running', quantity: 'moisture', known: 'measured' },
      { key: 'from', label: 'From', quantity: 'moment' },
      { key: 'to', label: 'To', quantity: 'moment' },
      { key: 'still', label: 'Still air', quantity: null },
      { key: 'readings', label: 'Readings', quantity: 'count' },
      { key: 'sensors', label: 'Sensors', quantity: 'count' },
    ],
    rows: [row('Start', start), row('End', end)],
  };
}

/** What moment the number is read at, as the parts of a difference between two sources name it. */
const AT_END = /, at the end$/;

/**
 * What the intervals are made of, and what cancels: how far each cause alone would put the moisture at the end and the
 * points off, on either side.
 */
export function errorTable(moisture: BinMoisture): Table {
  const { pointsRemoved } = moisture;
  const { points, end: single } = errorShares(moisture);
  const ofEnd = (cause: string) => single.parts.find((one) => one.cause === cause.replace(AT_END, ''));
  const inPoints = points.parts.map(({ cause, off }) => ({
    cause: capital(cause),
    end: /, at the start$/.test(cause) ? NO_PART : (ofEnd(cause)?.off ?? NO_PART),
    off,
  }));
  const named = new Set(points.parts.map(({ cause }) => cause.replace(AT_END, '')));
  const gone = single.parts
    .filter(({ cause }) => !named.has(cause))
    .map(({ cause, off }) => ({ cause: capital(cause), end: off, off: points.parts.length > 0 ? CANCELS : null }));
  const rows = [...gone, ...inPoints];
  return {
    id: 'errors',
    caption: 'What makes the numbers unsure, and what cancels: how far each cause alone would put them off, either way',
    folded: 'on screen',
    columns: [
      { key: 'cause', label: 'Cause', quantity: null },
      { key: 'end', label: 'Moisture at the end off by up to', quantity: 'points, fine', known: '90 % limit' },
      { key: 'off', label: 'Points removed off by up to', quantity: 'points, fine', known: '90 % limit' },
    ],
    rows: rows.map((row) => ({ ...row, off: row.off ?? { value: null, why: pointsRemoved.why ?? 'Not known.' } })),
    total:
      rows.length === 0
        ? undefined
        : {
            cause: 'All together, as they partly cancel',
            end: single.half > 0 ? single.half : { value: null, why: 'There is no interval.' },
            off: points.half > 0 ? points.half : { value: null, why: pointsRemoved.why ?? 'There is no interval.' },
          },
    empty: 'there is no interval.',
  };
}

const NO_PART = { value: null, why: 'It plays no part in the moisture at the end.' };
const CANCELS = { value: null, why: 'It cancels: the same error stands in the moisture at the start and at the end.' };

/** The causes behind the points removed and behind the moisture at the end, each by how far it alone would put them off, points. */
export function errorShares({ errorParts, endParts = [], pointsRemoved, end }: BinMoisture) {
  return {
    points: scaled(errorParts, pointsRemoved.interval, 1),
    end: scaled(endParts, end.interval ?? null, 100),
  };
}

/** Each standard error takes the same step to its part of the 90 % interval, so that all together are half its width. */
function scaled(
  parts: readonly { cause: string; sd: number }[],
  interval: readonly [number, number] | null,
  scale: number,
): { parts: { cause: string; off: number }[]; half: number } {
  const all = Math.sqrt(parts.reduce((sum, part) => sum + part.sd ** 2, 0));
  const half = interval === null ? 0 : (scale * (interval[1] - interval[0])) / 2;
  if (!(all > 0 && half > 0)) return { parts: [], half: 0 };
  return { parts: parts.map(({ cause, sd }) => ({ cause, off: (sd / all) * half })), half };
}

/** Each sensor's share of the grain and its start and end. */
export function sharesTable(moisture: BinMoisture): Table {
  const why = 'No reading of this sensor could be used then.';
  return {
    id: 'shares',
    caption: 'Each sensor’s share of the grain, and its means over the hours that tell the moisture at start and end',
    folded: 'on screen',
    columns: [
      { key: 'sensor', label: 'Cable and sensor', quantity: null },
      { key: 'height', label: 'Height', quantity: 'length', known: 'stated' },
      { key: 'share', label: 'Share', quantity: 'share', known: 'from stated' },
      { key: 'start', label: 'Moisture at start', quantity: 'moisture', known: 'measured' },
      { key: 'end', label: 'Moisture at end', quantity: 'moisture', known: 'measured' },
      { key: 'startC', label: 'Temperature at start', quantity: 'temperature', known: 'measured' },
      { key: 'endC', label: 'Temperature at end', quantity: 'temperature', known: 'measured' },
    ],
    rows: moisture.shares.map((one) => ({
      sensor: `${one.cable} ${one.sensor}`,
      height: one.heightM,
      share: one.share,
      start: one.startWb ?? { value: null, why },
      end: one.endWb ?? { value: null, why },
      startC: one.startC ?? { value: null, why },
      endC: one.endC ?? { value: null, why },
    })),
    empty: 'no sensor could be used.',
  };
}

/** A bin's moisture figures, those that there are data for: mean through time, profile, sections. */
export function moistureFigures(review: BinReview, loaded: LoadedSeason, units: Units): Figure[] {
  const { moisture, bin, fan, grain } = review;
  const { zone } = units;
  const out: Figure[] = [];
  const said = (amount: Amount) => units.say('moisture', amount);
  const change =
    moisture.start.value === null || moisture.end.value === null
      ? ''
      : ` from ${said(momentEstimate(moisture.start, null))} to ${said(momentEstimate(moisture.end, null))}`;
  if (moisture.daily.some((day) => day.mean !== null)) {
    out.push(
      moistureOverTime(
        {
          id: 'over-time',
          title: change === '' ? `The mean moisture of ${bin.name}` : `The mean went${change}`,
          days: moisture.daily.map((day) => ({ ...day, dayMs: day.dayMs + zone.offsetMs(day.dayMs) })),
          fanDays: fanDays(fan.spans, zone),
          start: moisture.start.window === null ? null : localSpan(moisture.start.window, zone),
          end: moisture.end.window === null ? null : localSpan(moisture.end.window, zone),
          target: bin.grain.targetMoistureWb,
        },
        units,
      ),
    );
  }
  const ends = moisture.shares.filter((one) => one.endWb !== null);
  if (ends.length > 0) {
    const wettest = ends.reduce((most, one) => ((one.endWb ?? 0) > (most.endWb ?? 0) ? one : most), ends[0]);
    out.push(
      moistureProfile(
        {
          id: 'profile',
          title: `Wettest at the end: cable ${wettest.cable} at ${units.say('length', wettest.heightM)}, ${said(wettest.endWb)}, measured`,
          sensors: moisture.shares.map((one) => ({
            cable: one.cable,
            heightM: one.heightM,
            start: one.startWb,
            end: one.endWb,
          })),
          depthM: grain.depthM,
        },
        units,
      ),
    );
  }
  for (const quantity of ['moisture', 'temperature'] as const) {
    const title = quantity === 'moisture' ? wetTitle(review, units) : warmTitle(review, units);
    const figure = sectionFigure(review, quantity, loaded, units, title);
    if (figure !== null) out.push(figure);
  }
  return out;
}

/** The finding of the moisture section: where it ended wet and where dry. */
function wetTitle({ bin, moisture }: BinReview, units: Units): string {
  const { wettest, driest } = moisture.layers?.unload ?? {};
  if (!wettest || !driest || wettest.name === driest.name) return `Where ${bin.name} was wet, and when`;
  const said = (third: typeof wettest) => units.say('moisture', third.moisture);
  return `${capital(wettest.name)} third ended at ${said(wettest)}, ${driest.name} at ${said(driest)}`;
}

/** The finding of the temperature section. */
function warmTitle({ bin, temperature }: BinReview, units: Units): string {
  const { start, end } = temperature;
  if (start.value === null || end.value === null) return `Where ${bin.name} was warm, and when`;
  return `At the cables the grain went from ${units.say('temperature', momentEstimate(start, null))} to ${units.say('temperature', momentEstimate(end, null))}`;
}
