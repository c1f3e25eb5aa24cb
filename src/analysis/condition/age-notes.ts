import type { StorageRule } from '../../grain/storage-rules.ts';
import type { Bin } from '../../season/season.ts';
import type { PlaceMoistures } from './place-moistures.ts';
import type { PlaceTrack } from './place-tracks.ts';

export interface AgeNotesInput {
  bin: Bin;
  rule: StorageRule;
  moistures: PlaceMoistures;
  places: readonly { track: PlaceTrack; moistureWb: Float64Array }[];
  /** whether any outdoor air is known */
  weather: boolean;
}

/** What a reader of a bin's storage time must know of it, whole sentences. */
export function ageNotes(input: AgeNotesInput): string[] {
  return [byMeanSaid(input), drySaid(input), unreadSaid(input)].filter((note) => note !== null);
}

function byMeanSaid({ bin, moistures: { byMean, moistureWb } }: AgeNotesInput): string | null {
  if (byMean === 0) return null;
  return byMean < moistureWb.length
    ? `${byMean} of ${moistureWb.length} places have no moisture of their own: the bin’s mean stands for it.`
    : `No place of ${bin.name} has a moisture of its own: the bin’s mean stands for it, and wet layers may have used more.`;
}

function drySaid({ rule, places }: AgeNotesInput): string | null {
  const [driest] = rule.moistureRangeWb;
  const dry = places.filter(({ moistureWb, track }) => moistureWb[track.to - 1] < driest).length;
  if (dry === 0) return null;
  return `${dry === places.length ? 'The grain' : `Grain at ${dry} of ${places.length} places`} ended drier than ${(100 * driest).toFixed(0)} %, where the rule ends: it is taken as that moist, so that it used less than is told.`;
}

function unreadSaid({ places, weather }: AgeNotesInput): string | null {
  const most = (of: 'before' | 'after') => Math.max(0, ...places.map(({ track }) => track.unread[of]));
  const before = most('before');
  const after = most('after');
  const parts = [
    ...(before > 0 ? [`begins up to ${Math.ceil(before)} days after the grain came in`] : []),
    ...(after > 0 ? [`ends up to ${Math.ceil(after)} days before it was out`] : []),
  ];
  if (parts.length === 0) return null;
  return `The log ${parts.join(' and ')}: the grain is taken to have been as warm as at the nearest reading, ${
    weather
      ? 'and the interval reaches to the outdoor air of those days.'
      : 'and as no weather was read, the interval does not hold how warm it may have been.'
  }`;
}
