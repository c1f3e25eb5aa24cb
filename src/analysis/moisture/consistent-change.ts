import { type Estimate, withheld } from '../../base/estimate.ts';
import type { CableSpread } from './cable-spread.ts';
import { type MoistureMoment, sensorMoment, ticketStart } from './moisture-moment.ts';
import type { ObservedMoisture } from './observed-moisture.ts';
import { type PointsRemoved, pointsRemoved } from './points-removed.ts';
import { ticketEnd } from './ticket-end.ts';

/**
 * Two changes contradict each other from so many half-widths of their difference on: intervals that just part are let pass,
 * for readings in moving air may lean by more than the log's few stops show.
 */
const CLEAR_TIMES = 1.5;

/** Both moments with the points between them. */
export interface MoistureChange {
  start: MoistureMoment;
  end: MoistureMoment;
  removed: PointsRemoved;
}

/** The same, held against each source's own change. */
export interface ConsistentChange extends MoistureChange {
  /** the tickets tell both moments, for sensors and tickets contradict each other */
  byTickets: boolean;
  /** why nothing is told of the change, nor of what hangs on one of its moments; null where it stands */
  contradicted: string | null;
}

/**
 * A change from one source to another, held against what each source tells of the whole change by itself. Where all that do
 * contradict it (clearly beyond their 90 % intervals), the tickets tell both moments where they can; else it is withheld
 * where the sensors' own change goes the other way. A change by one source, or borne out by one, stays as it is.
 */
export function consistentChange(
  observed: ObservedMoisture,
  change: MoistureChange,
  pooled: CableSpread | null,
): ConsistentChange {
  const asItIs = { ...change, byTickets: false, contradicted: null };
  const { start, end, removed } = change;
  const sources = [start.mean.from, end.mean.from].sort().join(' ');
  if (sources !== 'sensors tickets') return asItIs;
  const sensors = bySensors(observed, pooled);
  const tickets = byTickets(observed, pooled);
  const own = [sensors, tickets].filter((one) => one !== null);
  if (own.length === 0 || !own.every((one) => contradict(one.removed.points, removed.points))) return asItIs;
  if (tickets !== null) return { ...tickets, byTickets: true, contradicted: null };
  const points = sensors!.removed.points;
  if (points.value! * removed.points.value! >= 0) return asItIs;
  const order =
    start.mean.from === 'tickets'
      ? 'by tickets at the start and sensors at the end'
      : 'by sensors at the start and tickets at the end';
  const why = `Sensors and scale tickets contradict each other: ${order} the grain ${went(removed.points)}, by the sensors at both it ${went(points)}. Which of them errs is not known, so the change is not told.`;
  return { ...asItIs, removed: { points: withheld(why), parts: [], degreesOfFreedom: null }, contradicted: why };
}

function bySensors(observed: ObservedMoisture, pooled: CableSpread | null): MoistureChange | null {
  if (observed.moments.start === null || observed.moments.end === null) return null;
  const start = sensorMoment(observed, 'start', pooled);
  const end = sensorMoment(observed, 'end', pooled);
  return { start, end, removed: pointsRemoved(observed, start, end, pooled) };
}

function byTickets(observed: ObservedMoisture, pooled: CableSpread | null): MoistureChange | null {
  const start = ticketStart(observed);
  const end = ticketEnd(observed);
  return start === null || end === null ? null : { start, end, removed: pointsRemoved(observed, start, end, pooled) };
}

function contradict(a: Estimate, b: Estimate): boolean {
  const [less, more] = a.value! < b.value! ? [a, b] : [b, a];
  const half = Math.hypot(less.interval![1] - less.value!, more.value! - more.interval![0]);
  return more.value! - less.value! > CLEAR_TIMES * half;
}

/** `lost 17.8 points (14.1 to 21.5)`, `took up 5.7 points (2.9 to 8.5)` */
function went({ value, interval }: Estimate): string {
  const up = value! < 0;
  const [low, high] = up ? [-interval![1], -interval![0]] : interval!;
  return `${up ? 'took up' : 'lost'} ${Math.abs(value!).toFixed(1)} points (${low.toFixed(1)} to ${high.toFixed(1)})`;
}
