import { DAY_BAND_H, NO_PART, OUTDOOR_BANDS } from '../analysis/useful/useful-hours-types.ts';
import type { Units } from '../report/units.ts';
import type { Goal } from '../season/season.ts';

/** What counts for and against each goal, a whole sentence. */
export const GOAL_RULES: Readonly<Record<Goal, string>> = {
  dry: 'Dry: drying is for the goal and rewetting against it; once the grain is drier than its target by the threshold, drying is over-drying and against it, and rewetting is not. After the target is reached, an hour of air cooler than the grain is not against the goal, as cooling then is customary.',
  cool: 'Cool: cooling is for the goal until the grain’s mean is down to the target temperature; warming is against it, but not while the grain is colder than its target by the threshold.',
  condition:
    'Condition: rewetting is wanted, and drying against the goal; once the grain is wetter than its target by the threshold, the other way round.',
  hold: 'Hold: cooling is for the goal, warming and rewetting are against it; where a target temperature is stated, cooling is for the goal down to it, and warming not against it while the grain is colder by the threshold.',
};

/** Which of two effects names an hour. */
export const FIRST_WORDS =
  'An hour that could change both moisture and temperature is named by moisture where the goal is to dry or to condition, else by temperature.';

/** `6:00 to 9:00` */
export function dayBandText(key: string): string {
  if (key === NO_PART) return 'not known';
  const from = Number(key);
  return `${from}:00 to ${from + DAY_BAND_H}:00`;
}

/** `50 to 68 °F; humidity under 60 %` */
export function outdoorText(key: string, units: Units): string {
  if (key === NO_PART) return 'not known';
  const [t, rh] = key.split(' ').map(Number);
  const temp = between(
    OUTDOOR_BANDS.tempC.map((end) => units.number('temperature', end)),
    t,
    units.unit('temperature'),
  );
  const humid = between(
    OUTDOOR_BANDS.rh.map((end) => String(Math.round(100 * end))),
    rh,
    '%',
  );
  return `${temp}; humidity ${humid}`;
}

function between(ends: readonly string[], band: number, unit: string): string {
  if (band === 0) return `under ${ends[0]} ${unit}`;
  if (band === ends.length) return `${ends[ends.length - 1]} ${unit} and more`;
  return `${ends[band - 1]} to ${ends[band]} ${unit}`;
}
