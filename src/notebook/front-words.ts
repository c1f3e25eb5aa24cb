import { aboutArrival, type FrontFinding, type HeldSensor } from '../analysis/fronts/front-finding.ts';
import { ARRIVAL_WITHIN_H } from '../analysis/fronts/front-limits.ts';
import type { FrontArrival } from '../analysis/types.ts';
import { listed } from '../base/listed.ts';
import type { Units } from '../report/units.ts';
import { counted } from './words.ts';

/** How many bins or places a sentence names before it counts the rest. */
export const NAMED = 3;

/** `a, b and 2 more bins`. */
export function some(items: readonly string[], one: string): string {
  if (items.length <= NAMED) return listed(items);
  return listed([...items.slice(0, NAMED), counted(items.length - NAMED, `more ${one}`)]);
}

/** `C4 at 15.1 ft`, `C4 from 8.5 to 15.1 ft`: by cable, sensors that stand one above the other as a stretch. */
export function placesSaid(
  sensors: readonly Pick<FrontArrival, 'cable' | 'sensor' | 'heightM'>[],
  units: Units,
  before = '',
): string {
  const cables = [...new Set(sensors.map((one) => one.cable))];
  const unit = units.unit('length');
  const places = cables.map((id) => {
    const cable = before === '' || id.toLowerCase().startsWith(before) ? id : `${before} ${id}`;
    const of = sensors.filter((one) => one.cable === id).sort((a, b) => a.heightM - b.heightM);
    const at = (one: { heightM: number }) => units.number('length', one.heightM);
    const [low, high] = [of[0], of[of.length - 1]];
    const stretch = of.every((one, i) => i === 0 || Math.abs(one.sensor - of[i - 1].sensor) === 1);
    if (of.length > 2 && stretch) return `${cable} from ${at(low)} to ${at(high)} ${unit}`;
    return `${cable} at ${listed(of.map(at))} ${unit}`;
  });
  return some(places, 'cable');
}

/** What the front did at the bin's sensors, for a cell: `17 of 20; not C4 from 8.5 to 15.1 ft`. */
export function reachedSaid(found: FrontFinding, units: Units): string {
  const { passed, followed, held, untold, seen } = found;
  const parts = [
    `${passed.length} of ${seen}`,
    heldSaid(held, seen, units),
    followed.length > 0 ? `${followed.length} undated` : '',
    untold.length > 0 ? `${untold.length} unread` : '',
  ];
  return parts.filter((part) => part !== '').join('; ');
}

/** Up to two cables by their places, more as a count. */
function heldSaid(held: readonly FrontArrival[], seen: number, units: Units): string {
  if (held.length === 0 || held.length === seen) return '';
  const cables = new Set(held.map((one) => one.cable)).size;
  return cables <= 2 ? `not ${placesSaid(held, units)}` : `${held.length} not, on ${cables} cables`;
}

export function slowestSaid({ slowest }: FrontFinding, units: Units): string | null {
  if (slowest === null) return null;
  if (slowest.behindHours <= ARRIVAL_WITHIN_H) return `within ${ARRIVAL_WITHIN_H} h`;
  return `${placesSaid([slowest.arrival], units)}, +${units.say('hours', aboutArrival(slowest.behindHours))}`;
}

/** The warmest that grain was left at, C. */
export function leftC(held: readonly HeldSensor[]): number | null {
  const left = held.map((one) => one.endC ?? one.behindC ?? one.aheadC).filter((one) => one !== null);
  return left.length === 0 ? null : Math.max(...left);
}
