import type { BinReview } from '../analysis/types.ts';
import type { Estimate } from '../base/estimate.ts';
import type { Quantity } from '../report/quantities.ts';
import type { Units } from '../report/units.ts';
import { asGrain } from './per-grain.ts';

/** Who gave away most by ending drier than the market pays for, in money, else by weight, beside what its fans cost. */
export function givenAwayLead(bins: readonly BinReview[], units: Units): string {
  const most = (loss: (one: BinReview) => Estimate) =>
    bins
      .map((one) => ({ one, loss: loss(one) }))
      .filter((each) => each.loss.value !== null)
      .sort((a, b) => (b.loss.value ?? 0) - (a.loss.value ?? 0))[0];
  const money = most((one) => one.moisture.overdryingLoss);
  const weight = most((one) => asGrain(one.moisture.overdryingLossBushels, one, units));
  const found = money ?? weight;
  if (found === undefined) return 'Can’t tell what over-drying gave away; the notes of the table say why.';
  const { one, loss } = found;
  if ((loss.interval?.[0] ?? loss.value ?? 0) <= 0)
    return `${bins.length === 1 ? one.bin.name : 'No bin'} is ${bins.length === 1 ? 'not ' : ''}sure to have ended drier than the market pays for.`;
  const quantity: Quantity = money === undefined ? 'grain' : 'money';
  const fans = one.fan.cost.value === null ? '' : `; its fans cost ${units.say('money', one.fan.cost)}`;
  return `${one.bin.name} gave away ${bins.length === 1 ? '' : 'most '}by ending too dry, ${units.say(quantity, loss)}${fans}.`;
}
