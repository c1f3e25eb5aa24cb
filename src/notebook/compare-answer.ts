import type { Comparison, RankGroup } from '../analysis/compare/comparison.ts';
import { apart } from '../analysis/compare/cost-ratio.ts';
import { listed } from '../base/listed.ts';
import type { KeyNumber } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import { type Compared, costQuantity, costShown, type GoalPart, groupWords, nameOf } from './compare-words.ts';
import { capital, counted } from './words.ts';

/** More names than this are a number in a sentence. */
const NAMED = 3;

/** The page's first sentence: who was cheapest, how sure that is, and what the dearest cost against it; or why nobody can be ranked. */
export function comparedAnswer(bins: readonly Compared[], { groups }: Comparison, units: Units): string {
  if (bins.length === 0) return 'Can’t tell: there is no bin to compare.';
  if (bins.length === 1) return `${aloneSaid(bins[0], units)} There is no other bin to compare it with.`;
  const [main, ...others] = groups;
  if (main === undefined) return noneRanked(bins, units);
  const left = bins.filter((one) => one.beside.rank === null).length;
  const more = [
    ...(others.length === 0
      ? []
      : [`${counted(others.length, 'more group')} of bins ${others.length === 1 ? 'is' : 'are'} ranked below`]),
    ...(left === 0 ? [] : [`${counted(left, 'bin')} could not be ranked, each with its reason below`]),
  ];
  return `${groupSaid(bins, main, units)}${more.length === 0 ? '' : ` ${sentenceOf(more)}`}`;
}

function sentenceOf(parts: readonly string[]): string {
  const text = parts.join('; ');
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}

/** What the ranking of one group says, a whole sentence. */
export function groupSaid(bins: readonly Compared[], group: RankGroup, units: Units): string {
  const of = membersOf(bins, group);
  const [first] = of;
  const last = of[of.length - 1];
  const quantity = costQuantity(group.measure);
  const cost = (one: Compared) => `${units.say(quantity, costShown(one, units))} in ${one.review.bin.name}`;
  const leaders = of.filter((one) => one.beside.rank?.best === 1);
  const dearest = last.beside.ratio;
  if (leaders.length === of.length)
    return `The ${counted(of.length, groupWords(group), groupWords(group))} share their places, as their intervals overlap: from ${cost(first)} to ${cost(last)}${dearest === null ? '' : `, ${units.say('times', dearest.times)} as much`}.`;
  const end =
    dearest === null
      ? `the dearest is ${last.review.bin.name}`
      : `${of.length > 2 ? 'the dearest, ' : ''}${last.review.bin.name}${of.length > 2 ? ',' : ''} cost ${units.say('times', dearest.times)} as much`;
  if (leaders.length === 1)
    return `Of ${counted(of.length, groupWords(group), groupWords(group))}, ${first.review.bin.name} was cheapest at ${units.say(quantity, costShown(first, units))}; ${end}.`;
  const rest = leaders.filter((one) => one !== first).map((one) => one.review.bin.name);
  const with_ = rest.length <= NAMED ? listed(rest) : `${rest.length} others`;
  return `Of ${counted(of.length, groupWords(group), groupWords(group))}, the lowest cost is ${cost(first)}, sharing first place with ${with_}; ${end}.`;
}

function membersOf(bins: readonly Compared[], { binIds }: RankGroup): Compared[] {
  return binIds.flatMap((id) => bins.filter((one) => one.beside.binId === id));
}

function aloneSaid(one: Compared, units: Units): string {
  const cost = costShown(one, units);
  const { name } = one.review.bin;
  if (cost.value === null) return `What ${name} cost can’t be told. ${one.beside.why ?? ''}`.trim();
  return `${name} cost ${units.say(costQuantity(one.beside.measure), cost)}.`;
}

function noneRanked(bins: readonly Compared[], units: Units): string {
  const known = bins.filter((one) => one.beside.cost.value !== null);
  const said = known
    .slice(0, NAMED)
    .map((one) => `${one.review.bin.name} cost ${units.say(costQuantity(one.beside.measure), costShown(one, units))}`);
  const rest = known.length > NAMED ? ` (and ${known.length - NAMED} more below)` : '';
  const why = 'Can’t rank any bin: no two bins of one crop, run for one goal, have a cost that can be compared';
  return said.length === 0 ? `${why}.` : `${why}. ${listed(said)}${rest}.`;
}

/** The numbers under the answer. */
export function comparedKeys(bins: readonly Compared[], { groups }: Comparison, units: Units): KeyNumber[] {
  const ranked = bins.filter((one) => one.beside.rank !== null).length;
  const keys: KeyNumber[] = [];
  const [main] = groups;
  if (main !== undefined) {
    const of = membersOf(bins, main);
    for (const [word, one] of [
      ['Lowest', of[0]],
      ['Highest', of[of.length - 1]],
    ] as const) {
      keys.push({
        label: `${word} cost, ${groupWords(main)}`,
        quantity: costQuantity(main.measure),
        amount: costShown(one, units),
        note: one.review.bin.name,
      });
    }
  }
  const ratios = groups.flatMap((group) => {
    const dearest = membersOf(bins, group).at(-1);
    const { ratio = null } = dearest?.beside ?? {};
    return dearest === undefined || ratio === null ? [] : [{ group, dearest, ratio }];
  });
  for (const { group, dearest, ratio } of ratios.slice(0, NAMED)) {
    keys.push({
      label: `${dearest.review.bin.name} over ${nameOf(bins, ratio.againstId)}`,
      quantity: 'times',
      amount: ratio.times,
      note: apart(ratio.times) ? groupWords(group) : `${groupWords(group)}, can’t be told apart`,
    });
  }
  keys.push({ label: 'Bins ranked', quantity: 'count', amount: ranked, note: `of ${bins.length}; counted` });
  return keys;
}

/** What a goal's section begins with; the page's first sentence has told the first group already. */
export function groupLead(bins: readonly Compared[], part: GoalPart, groupsInAll: number, units: Units): string {
  const { groups, priced } = part;
  if (groups.length === 0) return 'No two of these bins can be ranked with each other; the last table says why.';
  const open = priced.filter(({ beside }) => beside.rank === null).length;
  const rings =
    open === 0 ? '' : ` ${capital(counted(open, 'bin'))} ${open === 1 ? 'is' : 'are'} shown without a place.`;
  if (groupsInAll > 1) return `${groups.map((group) => groupSaid(bins, group, units)).join(' ')}${rings}`;
  return `Bins are ranked with bins of their crop; where intervals overlap they share places.${rings}`;
}
