import { agreeing } from '../../base/agreeing.ts';
import { ASSUMED_SPREAD, type CableSpread, ownSpread } from './cable-spread.ts';
import type { ConsistentChange } from './consistent-change.ts';
import type { MoistureMoment } from './moisture-moment.ts';
import { DAY_MS, type MomentName } from './moment-window.ts';
import type { ObservedMoisture } from './observed-moisture.ts';
import { ASSUMED_ACCURACY, ASSUMED_BIAS } from './reading-parts.ts';

/** What a reader must know to judge the points removed, whole sentences. */
export function moistureNotes(
  observed: ObservedMoisture,
  { start, end, byTickets }: ConsistentChange,
  pooled: CableSpread | null,
): string[] {
  const { moments, fill, input, cables } = observed;
  const bySensors = start.mean.from === 'sensors' || end.mean.from === 'sensors';
  const notes = [
    ...fill.notes,
    ...momentNotes(observed, 'start', start, byTickets),
    ...momentNotes(observed, 'end', end, byTickets),
  ];
  if (byTickets) {
    notes.push(
      'Sensors and scale tickets contradict each other, so neither moment is taken from the one and the other from the other: the tickets tell both. What is told by day, by height or by cable is the sensors’.',
    );
  }
  if (moments.leftOut > 0 && bySensors) {
    notes.push(
      `${moments.leftOut} of ${moments.seen} sensors ${agreeing(moments.leftOut, 'is', 'are')} left out, for want of believable readings on the days compared; ${agreeing(moments.leftOut, 'its neighbours stand for its', 'their neighbours stand for their')} grain.`,
    );
  }
  if (start.mean.from !== null && end.mean.from !== null && start.mean.from !== end.mean.from) {
    notes.push(
      'Start and end come from different instruments, so their own errors do not cancel and the interval is wide.',
    );
  }
  if (bySensors) {
    const stated = input.season.sensors.moisture;
    if (stated.accuracyWb === null || stated.biasWb === null) {
      notes.push(
        `Where season.yaml states no accuracy of the moisture sensors, ±${ASSUMED_ACCURACY} point a sensor and ±${ASSUMED_BIAS} point shared are taken; both cancel in the points removed.`,
      );
    }
  }
  if (cables.length === 1) {
    const known = pooled !== null && pooled.df > 0;
    notes.push(
      `One cable cannot tell how the rest of the bin dried; the spread between cables is ${known ? "that of the season's other bins" : 'an assumed one'}, not seen in this bin.`,
    );
  } else if (cables.length > 1 && (pooled?.df ?? 0) + ownSpread(cables, observed.points).df < ASSUMED_SPREAD.df) {
    notes.push('With so few cables the interval leans on an assumed spread between them.');
  }
  return notes;
}

function momentNotes(
  observed: ObservedMoisture,
  name: MomentName,
  moment: MoistureMoment,
  byTickets: boolean,
): string[] {
  const { moments, input, movingAir } = observed;
  if (moment.mean.from === 'tickets') {
    const instead =
      moments[name] === null || byTickets
        ? ''
        : `, which here ${agreeing(moment.mean.readings, 'is', 'are')} surer than the sensors, read in moving air only`;
    return [
      `The moisture at the ${name} is that of ${moment.mean.readings} scale ${agreeing(moment.mean.readings, 'ticket', 'tickets')}${instead}.`,
    ];
  }
  if (moment.mean.from === 'stated') return [`The moisture at the ${name} is the one stated in season.yaml.`];
  const window = moments[name];
  if (window === null) return [];
  const notes: string[] = [];
  if (!window.stillAir) {
    const why = input.spans === null ? 'no log tells when the fan ran' : 'no still-air readings lie near enough';
    const size = movingAir.stops >= 3 ? `from ${movingAir.stops} stops of the fan in this log` : 'by an assumed amount';
    notes.push(
      `The ${name} is taken from all readings of its day because ${why}; readings while the fan runs lean towards the passing air, and the interval is widened for it ${size}.`,
    );
  }
  const days = Math.round(window.slidMs / DAY_MS);
  if (days >= 3) {
    notes.push(
      name === 'start'
        ? `The readings used for the start begin ${days} days after filling; what was removed before is not seen.`
        : `The readings used for the end stop ${days} days before the end; what was removed after is not seen.`,
    );
  }
  return notes;
}
