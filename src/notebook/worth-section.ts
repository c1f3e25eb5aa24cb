import type { BinReview } from '../analysis/types.ts';
import { type BinValueSteps, type ValueSteps, valueSteps } from '../analysis/value/value-steps.ts';
import { type Estimate, turned } from '../base/estimate.ts';
import { waterfall } from '../report/figures/waterfall.ts';
import type { SectionBody } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import type { LoadedSeason } from '../season/loaded.ts';
import { counted, knownTotal, sentence } from './words.ts';

const NAMES: readonly (readonly [keyof ValueSteps, string])[] = [
  ['shrinkSpared', 'Shrink spared'],
  ['discountSpared', 'Discount spared'],
  ['waterToBase', 'Weight of water, to the base'],
  ['waterBeyondBase', 'Weight of water, beyond it'],
  ['energy', 'Energy of the fans'],
  ['charges', 'Demand and other charges'],
  ['heat', 'Fuel or current for heat'],
];

/** The steps that are told: heat only where some bin had any. */
const namesOf = (each: readonly BinValueSteps[]) =>
  NAMES.filter(([key]) => key !== 'heat' || each.some(({ steps }) => steps !== null && steps.heat !== 0));

/** What the change of moisture was worth: from what was spared at the scale down to what was left, all bins that can be told together. */
export function worthSection({ season }: LoadedSeason, bins: readonly BinReview[], units: Units): SectionBody {
  const each = bins.map((review) => ({ review, ...valueSteps(review, season) }));
  const told = each.flatMap((one) => (one.steps === null ? [] : [{ ...one, steps: one.steps }]));
  const lacking = each.filter((one) => one.steps === null);
  const { total } = knownTotal(each.map((one) => one.left));
  if (told.length === 0 || total.value === null)
    return {
      lead: `Can’t tell what the change of moisture was worth: ${sentence(each[0]?.left.why ?? 'there is no bin')}`,
    };
  const steps = namesOf(told).map(([key, name]) => ({
    name,
    value: told.reduce((sum, one) => sum + one.steps[key], 0),
  }));
  const said = gainSaid(total, units);
  const grain =
    told.length === bins.length ? counted(told.length, 'bin') : `${told.length} of ${counted(bins.length, 'bin')}`;
  return {
    lead: `Sold as it came out instead of as it went in, less what the fans cost, the grain of ${grain} brought ${said}.`,
    figures: [
      waterfall(
        {
          id: 'steps',
          title: `After the fans’ cost the change of moisture came to ${said}`,
          subtitle: `${units.unit('money')}, grain as it came out over the same grain as it went in, at the price and deductions of season.yaml; ${grain}`,
          alt: `${steps.map(({ name, value }) => `${name} ${units.say('money', value)}`).join('; ')}. Left: ${units.say('money', total)}.`,
          quantity: 'money',
          steps: steps.filter(({ value }) => value !== 0),
          left: { name: 'Left', of: total },
          notShown:
            lacking.length === 0
              ? null
              : `${lacking.length} of ${counted(bins.length, 'bin')} not shown. ${lacking.map(({ review, left }) => `${review.bin.name}: ${sentence(left.why ?? 'not known')}`).join(' ')}`,
        },
        units,
      ),
    ],
    tables: [stepTable(each)],
    notes: [
      `Steps are at the middles of moistures and ${units.system === 'us' ? 'bushels' : 'weights'}; what is left carries the interval. Both sales are at one price: what the market did meanwhile, storage itself and hauling are not in it.`,
    ],
  };
}

/** `a gain of 1,200 USD (…)`, a loss, or that it may be either. */
export function gainSaid(left: Estimate, units: Units): string {
  const [low, high] = left.interval ?? [Number(left.value), Number(left.value)];
  if (low <= 0 && high >= 0) return `${units.say('money', left)}, which may be a gain or a loss`;
  return low > 0 ? `a gain of ${units.say('money', left)}` : `a loss of ${units.say('money', turned(left))}`;
}

function stepTable(each: readonly (BinValueSteps & { review: BinReview })[]) {
  const names = namesOf(each);
  return {
    id: 'worth',
    caption: 'From what was spared at the scale to what was left, bin by bin',
    folded: true as const,
    columns: [
      { key: 'bin', label: 'Bin', quantity: null },
      ...names.map(([key, label]) => ({ key, label, quantity: 'money' as const, known: 'at the middles' as const })),
      { key: 'left', label: 'Left', quantity: 'money' as const },
    ],
    rows: each.map(({ review, steps, left }) => ({
      bin: review.bin.name,
      ...Object.fromEntries(
        names.map(([key]) => [key, steps?.[key] ?? { value: null, why: left.why ?? 'Not known.' }]),
      ),
      left,
    })),
  };
}
