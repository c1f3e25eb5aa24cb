import { type Estimate, withheld } from '../../base/estimate.ts';
import { toLocalMs, type Zone } from '../../base/zone.ts';
import { HANDBOOK_HOURS, RULE_OF_THUMB_HOURS } from './rule-of-thumb.ts';

/** Calendar months, from 0, of the handbook's fall and winter north of the equator; from March on it is spring. */
const FALL = [8, 9, 10];
const WINTER = [11, 0, 1];

/** The rule of thumb's hours for a bin's airflow. */
export function thumbHours(cfmPerBushel: Estimate): Estimate {
  return hoursAt(RULE_OF_THUMB_HOURS, cfmPerBushel);
}

/**
 * The handbook's hours of cooling for a bin's airflow, by the local month in which the campaign began.
 *
 * @param latitudeDeg  of the site; south of the equator the seasons lie half a year later. null: taken as north of it
 */
export function handbookCooling(
  cfmPerBushel: Estimate,
  beganMs: number,
  zone: Zone,
  latitudeDeg: number | null,
): Estimate {
  const local = new Date(toLocalMs(zone, beganMs)).getUTCMonth();
  const month = latitudeDeg !== null && latitudeDeg < 0 ? (local + 6) % 12 : local;
  const season = FALL.includes(month) ? 'fall' : WINTER.includes(month) ? 'winter' : null;
  if (season === null) return withheld('The handbook has no hours for cooling in summer.');
  return hoursAt(HANDBOOK_HOURS[season], cfmPerBushel);
}

/** Hours at 1 cfm/bu over an airflow with its interval. */
function hoursAt(atOne: number, cfm: Estimate): Estimate {
  if (cfm.value === null || !(cfm.value > 0)) return withheld(cfm.why ?? 'The airflow is not known.');
  const [low, high] = cfm.interval ?? [cfm.value, cfm.value];
  return {
    value: atOne / cfm.value,
    interval: [atOne / high, low > 0 ? atOne / low : Number.POSITIVE_INFINITY],
    why: null,
  };
}
