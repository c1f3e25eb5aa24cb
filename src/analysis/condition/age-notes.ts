import type { StorageRule } from '../../grain/storage-rules.ts';
import type { Bin } from '../../season/season.ts';
import type { PlaceMoistures } from './place-moistures.ts';
import type { PlaceTrack } from './place-tracks.ts';
import { STEPS_A_DAY } from './step-grid.ts';

type Place = { track: PlaceTrack; moistureWb: Float64Array };

export interface AgeNotesInput {
  bin: Bin;
  rule: StorageRule;
  moistures: PlaceMoistures;
  places: readonly Place[];
  /** whether any outdoor air is known */
  weather: boolean;
}

/** What a reader of a bin's storage time must know of it, whole sentences. */
export function ageNotes(input: AgeNotesInput): string[] {
  return [byMeanSaid(input), ...outsideSaid(input), carriedSaid(input), unreadSaid(input)].filter(
    (note) => note !== null,
  );
}

function byMeanSaid({ bin, moistures: { byMean, moistureWb } }: AgeNotesInput): string | null {
  if (byMean === 0) return null;
  return byMean < moistureWb.length
    ? `${byMean} of ${moistureWb.length} places have no moisture of their own: the bin’s mean stands for it.`
    : `No place of ${bin.name} has a moisture of its own: the bin’s mean stands for it, and wet layers may have used more.`;
}

/** Where grain lay outside the rule, which then speaks by its nearest end. */
function outsideSaid({ rule, places }: AgeNotesInput): (string | null)[] {
  const [driest, wettest] = rule.moistureRangeWb.map((one) => `${(100 * one).toFixed(0)} %`);
  const [coldest, hottest] = rule.tempRangeC.map((one) => `${one} °C (${1.8 * one + 32} °F)`);
  const said = (holds: (place: Place) => boolean, how: string, errs: 'more' | 'less') => {
    const count = places.filter(holds).length;
    if (count === 0) return null;
    const where = count === places.length ? 'The grain' : `Grain at ${count} of ${places.length} places`;
    return `${where} ${how}, where the rule ends and speaks by its end: it used ${errs} than is told.`;
  };
  const any = (holds: (place: Place, step: number) => boolean) => (place: Place) => {
    for (let i = place.track.from; i < place.track.to; i++) if (holds(place, i)) return true;
    return false;
  };
  return [
    said(
      any(({ moistureWb }, i) => moistureWb[i] > rule.moistureRangeWb[1]),
      `was wetter than ${wettest}`,
      'more',
    ),
    said(
      any(({ track }, i) => track.tempC[i] > rule.tempRangeC[1]),
      `was hotter than ${hottest}`,
      'more',
    ),
    said(
      ({ moistureWb, track }) => moistureWb[track.to - 1] < rule.moistureRangeWb[0],
      `ended drier than ${driest}`,
      'less',
    ),
    said(
      any(({ track }, i) => track.tempC[i] < rule.tempRangeC[0]),
      `was colder than ${coldest} for some time`,
      'less',
    ),
  ];
}

function carriedSaid({ places }: AgeNotesInput): string | null {
  const longest = Math.max(0, ...places.map(({ track: { carried } }) => longestRun(carried)));
  if (longest === 0) return null;
  const days = Math.round((longest + 1) / STEPS_A_DAY);
  return `Readings lie up to ${days} days apart: between two of them the grain is taken to go from the one to the other, mostly while air was blown, and the interval holds it as cold and as warm as both, and as the air and the edges may have made it.`;
}

function longestRun(flags: Uint8Array): number {
  let run = 0;
  let longest = 0;
  for (const flag of flags) {
    run = flag === 1 ? run + 1 : 0;
    longest = Math.max(longest, run);
  }
  return longest;
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
