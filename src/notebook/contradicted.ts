import type { MomentAgreement } from '../analysis/moisture/ticket-agreement-types.ts';
import { contradictionSaid } from '../analysis/surface/surface-said.ts';
import type { BinReview } from '../analysis/types.ts';
import { type Estimate, estimate, turned } from '../base/estimate.ts';
import { listed } from '../base/listed.ts';
import type { Units } from '../report/units.ts';
import { sentence } from './words.ts';

/** A difference so many times the half-width of its interval is no chance of one moment among many. */
const CLEAR_TIMES = 1.5;

/** Bins whose sensors, or whose depth, the scale tickets contradict clearly, or whose depth their temperatures at rest do, as warnings: what leans on these stands beside them. */
export function contradictedBins(bins: readonly BinReview[], units: Units): string[] {
  return [...bins.flatMap(otherWeight), ...bins.flatMap(otherDepth), ...otherMoisture(bins, units)];
}

function otherDepth({ bin, surface, grain }: BinReview): string[] {
  const said = contradictionSaid(surface);
  if (said === null) return [];
  const leans =
    grain.from === 'tickets'
      ? 'Its means by height and its airflow'
      : 'Its bushels, what is told for each, its water and airflow';
  return [`${bin.name}: ${said} ${leans} stand on the stated depth: check it and the heights of the sensors first.`];
}

function otherWeight({ bin, grain }: BinReview): string[] {
  if (grain.contradicted !== true) return [];
  return [
    `${bin.name}: ${(grain.notes ?? []).map(sentence).join(' ')} Its bushels, what is told for each, its water and airflow stand on depth and test weight: check these and the tickets first.`,
  ];
}

function otherMoisture(bins: readonly BinReview[], units: Units): string[] {
  return bins.flatMap(
    ({ bin, moisture: { tickets, start, end, why, overdryingLossBushels, ticketsAlone = false } }) => {
      const apart = [tickets?.start, tickets?.end].flatMap((of) => (of != null && isClear(of) ? [of] : []));
      if (apart.length === 0 || (start.from !== 'sensors' && end.from !== 'sensors' && !ticketsAlone)) return [];
      const said = apart.map((of) => {
        const more = beyondFans(of);
        const drier = (more.value ?? 0) < 0;
        return `${units.say('points', drier ? turned(more) : more)} ${drier ? 'drier' : 'wetter'} at the ${of.moment}`;
      });
      const leans = ticketsAlone
        ? 'Its moistures and points are those of the tickets alone; what is told by day, by height or by cable leans on the sensors'
        : why !== null && overdryingLossBushels.value === null
          ? 'Its points, costs per point and over-drying are not told'
          : 'Its moistures, points, costs per point and over-drying lean on the sensors';
      return [
        `${bin.name}: the sensors read ${listed(said)} than the scale tickets, what the fans did in between left out. ${leans}: see Moisture, on sensors and tickets, before you use them.`,
      ];
    },
  );
}

/** The difference less what the fans made between tickets and readings. */
function beyondFans({ difference, expected }: MomentAgreement): Estimate {
  const { value, interval } = difference;
  if (value === null || interval === null) return difference;
  return estimate(value - expected.value, interval[0] - expected.value, interval[1] - expected.value);
}

function isClear(of: MomentAgreement): boolean {
  const { value, interval } = beyondFans(of);
  if (of.agree !== false || value === null || interval === null) return false;
  return Math.abs(value) > (CLEAR_TIMES * (interval[1] - interval[0])) / 2;
}
