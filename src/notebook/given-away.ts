import type { BinReview } from '../analysis/types.ts';
import type { Estimate } from '../base/estimate.ts';
import type { Quantity } from '../report/quantities.ts';
import type { Units } from '../report/units.ts';
import type { Season } from '../season/season.ts';
import { cameInDry } from './came-in-dry.ts';
import { reaching, thoughSaid } from './may-be-alike.ts';
import { asGrain } from './per-grain.ts';

/**
 * Who gave away most by ending drier than the market pays for, in money, else by weight, beside what its fans cost; what came in
 * as dry already the fans did not dry.
 */
export function givenAwayLead(bins: readonly BinReview[], units: Units, season: Pick<Season, 'prices'>): string {
  const known = (loss: (one: BinReview) => Estimate) =>
    bins
      .map((one) => ({ one, name: one.bin.name, of: loss(one) }))
      .filter((each) => each.of.value !== null)
      .sort((a, b) => (b.of.value ?? 0) - (a.of.value ?? 0));
  const money = known((one) => one.moisture.overdryingLoss);
  const weight = known((one) => asGrain(one.moisture.overdryingLossBushels, one, units));
  const [found, ...others] = money.length > 0 ? money : weight;
  if (found === undefined) return 'Can’t tell what over-drying gave away; the notes of the table say why.';
  const { one, of: loss } = found;
  if ((loss.interval?.[0] ?? loss.value ?? 0) <= 0)
    return `${bins.length === 1 ? one.bin.name : 'No bin'} is ${bins.length === 1 ? 'not ' : ''}sure to have ended drier than the market pays for.`;
  const quantity: Quantity = money.length === 0 ? 'grain' : 'money';
  const though = thoughSaid(reaching(found, others), 'may have given away as much');
  const whose = though === '' ? 'its fans' : `the fans of ${one.bin.name}`;
  const fans = one.fan.cost.value === null ? '' : `; ${whose} cost ${units.say('money', one.fan.cost)}`;
  const already = cameInDry(one, season) ? ` ${one.bin.name} came in drier than the market pays for already.` : '';
  return `${one.bin.name} gave away ${bins.length === 1 ? '' : 'most '}by ending too dry, ${units.say(quantity, loss)}${though}${fans}.${already}`;
}
