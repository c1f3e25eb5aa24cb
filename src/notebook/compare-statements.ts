import type { CostRatio, FactorRatio } from '../analysis/compare/comparison.ts';
import { type ConditionLean, conditionLeans } from '../analysis/compare/condition-leans.ts';
import { apart } from '../analysis/compare/cost-ratio.ts';
import type { Estimate } from '../base/estimate.ts';
import { listed } from '../base/listed.ts';
import type { Entry } from '../report/page.ts';
import type { Quantity } from '../report/quantities.ts';
import type { Units } from '../report/units.ts';
import { ratioShown } from './compare-ratio.ts';
import { airflowShown, scaled } from './compare-scale.ts';
import { type Compared, cropName, perWhat } from './compare-words.ts';
import { capital, counted } from './words.ts';

/** What the shares of a difference are. */
export const SHARES =
  'A cost is exactly price of energy × all charges over it × energy used, and so is the ratio of two costs. Shares are of the ratio’s logarithm and add up to 100 %; one goes beyond where something pulled the other way.';

/** Said of so many bins; the tables tell of all. */
const TOLD = 6;

/** The bins that clearly differ from the one they are held against, farthest first, in plain statements. */
export function ratioEntries(
  bins: readonly Compared[],
  all: readonly Compared[],
  units: Units,
): { entries: Entry[]; untold: number } {
  const held = heldAgainst(bins, all, units);
  const entries = held.slice(0, TOLD).flatMap((own) => {
    const other = all.find((one) => one.beside.binId === own.beside.ratio?.againstId);
    return other === undefined ? [] : [entryOf(own, other, all, units)];
  });
  return { entries, untold: held.length - entries.length };
}

/** Those that are held against another bin, farthest first. */
function heldAgainst(bins: readonly Compared[], all: readonly Compared[], units: Units): Compared[] {
  const from = (one: Compared) => Math.abs(Math.log(ratioShown(one, all, units).times.value ?? 1));
  return bins.filter(({ beside }) => beside.ratio !== null).sort((a, b) => from(b) - from(a));
}

/** What made the largest part of the clearest difference between two bins of one crop. */
export function differenceLead(bins: readonly Compared[], all: readonly Compared[], units: Units): string {
  const held = heldAgainst(bins, all, units);
  if (held.length === 0) return 'No bin has another that it can be held against.';
  for (const own of held) {
    const ratio = ratioShown(own, all, units);
    const other = all.find((one) => one.beside.binId === own.beside.ratio?.againstId);
    if (other === undefined || !ratio.sameCrop || !apart(ratio.times)) continue;
    const [most] = costParts(ratio, own, other, units)
      .filter(({ of }) => of.share.value !== null)
      .sort((a, b) => Number(b.of.share.value) - Number(a.of.share.value));
    if (most === undefined) continue;
    const [a, b] = [own.review.bin.name, other.review.bin.name];
    return `The largest part of what ${a} cost more than ${b} is ${most.name}: ${units.say('share of difference', most.of.share)} of the difference.`;
  }
  return 'No two bins of one crop cost clearly different amounts, so there is no difference to explain.';
}

function entryOf(own: Compared, other: Compared, all: readonly Compared[], units: Units): Entry {
  const ratio = ratioShown(own, all, units);
  const [a, b] = [own.review.bin.name, other.review.bin.name];
  const per = perWhat(own.beside.measure, units);
  const said = units.say('times', ratio.times);
  const crops = ratio.sameCrop
    ? ''
    : ` ${a} holds ${cropName(own.review.bin.grain.crop)}, ${b} ${cropName(other.review.bin.grain.crop)}, so they are not ranked.`;
  const tail = apart(ratio.times)
    ? overlap(own, other)
      ? '. Their intervals overlap, so they share places; held against each other the difference is clear'
      : ''
    : ': the two can’t be told apart';
  return {
    term: `${a} against ${b}`,
    text: `${a} cost ${said} as much ${per} as ${b}${tail}.${crops}`,
    details: [
      ...(apart(ratio.times) ? [moneySaid(ratio, own, other, units)] : []),
      energySaid(ratio, own, units),
      ...conditionsSaid(ratio, own, other, units),
    ],
  };
}

/** Ranked together, with intervals that overlap? Two can overlap and yet differ, for a ratio's error is less than the sum of both. */
function overlap(own: Compared, other: Compared): boolean {
  const [a, b] = [own.beside.cost.interval, other.beside.cost.interval];
  return own.beside.rank !== null && a !== null && b !== null && a[0] <= b[1] && b[0] <= a[1];
}

/** Price, charges and energy of a ratio, each with what is told of it; none where a factor is not known. */
function costParts(ratio: CostRatio, own: Compared, other: Compared, units: Units) {
  const [mine, theirs] = [own.beside.factors, other.beside.factors];
  if (mine === null || theirs === null) return [];
  const against = (quantity: Quantity, a: Estimate, b: Estimate) =>
    `${units.amount(quantity, a)} against ${units.say(quantity, b)}`;
  const points = own.beside.measure !== 'costPerBushel';
  return [
    {
      of: ratio.factors.price,
      name: 'the price of energy',
      detail: ` (${against('money per kWh', mine.price, theirs.price)})`,
    },
    {
      of: ratio.factors.charges,
      name: `what comes on top of energy${topSaid([own, other])}`,
      detail: `, all charges over energy’s ${against('times', mine.charges, theirs.charges)}`,
    },
    {
      of: ratio.energy,
      name: `the energy ${points ? 'used for a point' : 'used'}`,
      detail: ` (${units.say('times', ratio.energy.times)} as much${apart(ratio.energy.times) ? '' : ', not to be told from alike'})`,
    },
  ];
}

/** Price, charges and energy: which made the difference. */
function moneySaid(ratio: CostRatio, own: Compared, other: Compared, units: Units): string {
  const parts = costParts(ratio, own, other, units);
  if (parts.length === 0) return 'What makes the difference is not known.';
  if (parts.some(({ of }) => of.share.value === null))
    return `${capital(listed(parts.map(({ of, name }) => `${name} made it ${units.say('times', of.times)}`)))}; these multiply.`;
  const shared = parts
    .map(({ of, name, detail }) => ({ share: of.share, text: `${name}${detail}` }))
    .sort((x, y) => Number(y.share.value) - Number(x.share.value));
  const toward = shared.filter(({ share }) => Number(share.value) >= 0);
  const away = shared.filter(({ share }) => Number(share.value) < 0);
  const told = ({ share, text }: { share: Estimate; text: string }) =>
    `${units.say('share of difference', share)} is ${text}`;
  const other_ =
    away.length === 0
      ? ''
      : ` The other way pulled ${listed(away.map(({ share, text }) => `${text}, ${units.say('share of difference', turned(share))}`))}.`;
  return `Of the difference ${listed(toward.map(told))}.${other_}`;
}

/** ` (demand and connected load)`: the charges that one of the bins has. */
function topSaid(bins: readonly Compared[]): string {
  const has = (pick: (fan: Compared['review']['fan']) => Estimate) =>
    bins.some(({ review }) => (pick(review.fan).value ?? 0) > 0);
  const names = [
    ...(has((fan) => fan.demandCost) ? ['demand'] : []),
    ...(has((fan) => fan.connectedCost) ? ['connected load'] : []),
    ...(has((fan) => fan.heatCost) ? ['heat'] : []),
  ];
  return names.length === 0 ? '' : ` (${listed(names)})`;
}

function turned({ value, interval, why }: Estimate): Estimate {
  return {
    value: value === null ? null : -value,
    interval: interval === null ? null : [-interval[1], -interval[0]],
    why,
  };
}

/** Power and hours behind the energy. */
function energySaid({ factors, energy, times: cost }: CostRatio, own: Compared, units: Units): string {
  const times = ({ times: of }: FactorRatio) => units.say('times', of);
  const points = own.beside.measure !== 'costPerBushel' ? ' for a point' : '';
  const behind = `power for the grain ${times(factors.power)} the other’s by fan hours${points} ${times(factors.hours)}`;
  // Where the difference was parted, the energy has been told.
  return apart(cost)
    ? `Behind that energy: ${behind}.`
    : `Energy${points} was ${times(energy)} as much${apart(energy.times) ? '' : ', which can’t be told from alike'}: ${behind}.`;
}

/** What went with the hours, and what is not known. */
function conditionsSaid(ratio: CostRatio, own: Compared, other: Compared, units: Units): string[] {
  const { goal } = own.review.bin;
  if (goal !== 'dry' && goal !== 'condition') return [];
  const leans = conditionLeans(goal, own.beside.conditions, other.beside.conditions, ratio.sameCrop);
  const toward = (way: ConditionLean['hours']) =>
    leans.filter(({ hours }) => hours === way).map((lean) => leanSaid(lean, units));
  const [more, fewer] = [toward('more'), toward('fewer')];
  const out: string[] = [];
  if (more.length > 0) out.push(`Toward more fan hours for a point: ${listed(more)}.`);
  if (fewer.length > 0) out.push(`Toward fewer fan hours for a point: ${listed(fewer)}.`);
  const { times } = ratio.factors.hours;
  const longer = Number(times.value) > 1;
  if (apart(times) && (longer ? more : fewer).length === 0) {
    out.push(
      `None of the conditions known here explains the ${longer ? 'longer' : 'shorter'} hours: how it was run, where the air went and what was not measured are left.`,
    );
  } else if (leans.length > 0) {
    out.push('These are directions; how much each did, one season’s logs can’t tell.');
  }
  const unknown = [own, other].filter(({ beside }) => beside.conditions.airflowCfmPerBushel.value === null);
  if (unknown.length > 0)
    out.push(
      `The airflow of ${listed(unknown.map(({ review }) => review.bin.name))} is not known, so its part can’t be told.`,
    );
  return out;
}

/** `grain 2.8 points (1.9 to 3.7) drier at the start`. */
function leanSaid({ condition, difference }: ConditionLean, units: Units): string {
  const high = Number(difference.value) > 0;
  const size = high ? difference : scaled(difference, -1);
  const points = () => units.say('points', scaled(size, 100));
  switch (condition) {
    case 'airflow':
      return `${units.say('airflow per grain', airflowShown(size, units))} ${high ? 'more' : 'less'} air`;
    case 'start moisture':
      return `grain ${points()} ${high ? 'wetter' : 'drier'} at the start`;
    case 'end moisture':
      return `an end ${points()} ${high ? 'wetter' : 'drier'}`;
    case 'air moisture':
      return `air at fill in which grain settles ${points()} ${high ? 'wetter' : 'drier'}`;
    case 'air temperature':
      return `outdoor air at fill ${units.say('temperature difference', size)} ${high ? 'warmer' : 'colder'} (measured)`;
  }
}

/** `The table tells of 3 more bins.` */
export function untoldNote(untold: number): string[] {
  return untold === 0 ? [] : [`The tables tell of ${counted(untold, 'more bin')}.`];
}
