import type { SeasonFront } from '../analysis/fronts/season-front.ts';
import { listed } from '../base/listed.ts';
import type { Units } from '../report/units.ts';
import { leftC, NAMED, placesSaid, some } from './front-words.ts';
import { counted, sentence } from './words.ts';

/** The page's first words: did the season's cooling get through everywhere? */
export function frontsAnswer(fronts: readonly SeasonFront[], units: Units): string {
  const of = (verdict: SeasonFront['verdict']) => fronts.filter((one) => one.verdict === verdict);
  const [through, held, untold] = (['through', 'held', 'untold'] as const).map(of);
  const names = (list: readonly SeasonFront[]) => list.map((one) => one.review.bin.name);
  if (through.length + held.length === 0) return cantTell(fronts);
  const cant = untold.length === 0 ? '' : ` It can’t be told of ${some(names(untold), 'bin')}.`;
  const took = hoursSaid(through, units);
  if (held.length === 0) {
    const where =
      through.length > 4
        ? `${untold.length === 0 ? 'all ' : ''}${counted(through.length, 'bin')}`
        : listed(names(through));
    const yes = untold.length === 0 ? 'Yes: the' : 'The';
    return `${yes} cooling front got through everywhere in ${where}${took}.${cant}`;
  }
  const places = held.slice(0, NAMED).map((one) => missedSaid(one, units));
  const rest = held.length - places.length;
  if (rest > 0) places.push(`nor all of ${counted(rest, 'more bin')}`);
  const got =
    through.length === 0
      ? ''
      : ` It got through everywhere in ${through.length > 2 ? `the ${through.length} other bins${untold.length === 0 ? '' : ' that can be told'}` : listed(names(through))}${took}.`;
  return `Not everywhere: the cooling front did not reach ${listed(places)}.${got}${cant}`;
}

function cantTell(fronts: readonly SeasonFront[]): string {
  const told = 'Can’t tell whether a cooling front got through any bin';
  const [reason, ...others] = new Set(fronts.map((one) => one.why ?? 'Not known.'));
  if (reason === undefined) return `${told}: there is no bin in season.yaml.`;
  if (others.length > 0) return `${told}: each bin’s section says why.`;
  const of = fronts.length > 1 ? 'of each, ' : '';
  return `${told}: ${of}${sentence(reason.charAt(0).toLowerCase() + reason.slice(1))}`;
}

/** `cable C4 at 15.2 ft in Creek 33 (1 of 20 sensors, left at 53 °F, measured)`. */
function missedSaid({ held, main, review }: SeasonFront, units: Units): string {
  const left = leftC(held);
  const warm =
    left === null ? '' : `, left at ${held.length > 1 ? 'up to ' : ''}${units.say('temperature', left)}, measured`;
  return `${placesSaid(held, units, 'cable')} in ${review.bin.name} (${held.length} of ${counted(main?.seen ?? 0, 'sensor')}${warm})`;
}

/** `, in 61.1 (55.1 to 67.1) fan hours of its coldest campaign`: the least and the most. */
function hoursSaid(through: readonly SeasonFront[], units: Units): string {
  const dated = through
    .flatMap(({ main, review }) => {
      const hours = main?.throughHours;
      return hours === undefined || hours.value === null ? [] : [{ name: review.bin.name, hours, value: hours.value }];
    })
    .sort((a, b) => a.value - b.value);
  const [least, most] = [dated[0], dated[dated.length - 1]];
  if (least === undefined) return '';
  const said = ({ hours }: (typeof dated)[number]) => units.amount('hours', hours);
  const took = `${said(least)} fan hours of`;
  if (dated.length > 1 && said(least) === said(most)) return `, in ${took} the coldest campaign of each`;
  const known = new Set(dated.map((one) => one.name));
  const rest = through.map((one) => one.review.bin.name).filter((name) => !known.has(name));
  const unknown = rest.length === 0 ? '' : ` (not known of ${some(rest, 'bin')})`;
  if (dated.length === 1)
    return through.length === 1
      ? `, in ${took} its coldest campaign`
      : `, in ${least.name} in ${took} its coldest campaign${unknown}`;
  return `, in ${took} the coldest campaign in ${least.name} and up to ${said(most)} in ${most.name}${unknown}`;
}
