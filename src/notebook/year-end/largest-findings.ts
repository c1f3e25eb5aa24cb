import type { BinReview, SeasonReview } from '../../analysis/types.ts';
import type { Estimate } from '../../base/estimate.ts';
import { listed } from '../../base/listed.ts';
import type { Units } from '../../report/units.ts';
import type { Season } from '../../season/season.ts';
import { cameInDry } from '../came-in-dry.ts';
import { asGrain } from '../per-grain.ts';
import { knownTotal } from '../words.ts';
import { grouped, seenByName } from './grouped.ts';
import { type Measure, surely, WORTH, worthTelling } from './measure.ts';
import { namesBin } from './names-bin.ts';

const FINDINGS = 3;

/** A finding and the money that it tells, by which it is ranked. */
interface Weighed {
  text: string;
  money: Estimate;
}

/**
 * The findings that weigh most in money, each bin and kind once; where nothing has a price, the share of hours against the goal.
 * A loss counts with all that it tells, also where no measure would spare it.
 */
export function largestFindings(
  season: Pick<Season, 'prices'>,
  review: SeasonReview,
  measures: readonly Measure[],
  units: Units,
): string[] {
  const telling = worthTelling(measures, review.bins);
  const told = grouped(telling, (saving) => units.say('money', saving)).map((one) => ({
    text: seenByName(one),
    money: one.tells ?? one.saving,
  }));
  const byMoney = [...told, ...lightSold(season, review, telling, units)].sort(
    (a, b) => (b.money.value ?? 0) - (a.money.value ?? 0),
  );
  const priced = byMoney.map(({ text }) => text);
  const shares = review.bins
    .flatMap((one) => {
      const share = one.useful?.againstShare;
      if (share?.value == null || (share.interval?.[0] ?? 0) <= 0 || one.useful == null) return [];
      const text = `${units.say('share', share)} of the fan hours of ${one.bin.name} pushed air that worked against its goal, ${units.say('hours', one.useful.against)}.`;
      return [{ value: share.value, name: one.bin.name, text }];
    })
    .sort((a, b) => b.value - a.value)
    .filter(({ name }) => !priced.some((text) => namesBin(text, name)))
    .map(({ text }) => text);
  return [...priced, ...shares].slice(0, FINDINGS);
}

/** Bins that surely went out drier than the market pays for, and of which no measure tells it. */
function lightSold(
  season: Pick<Season, 'prices'>,
  { bins }: SeasonReview,
  telling: readonly Measure[],
  units: Units,
): Weighed[] {
  const stopped = telling.filter(({ kind }) => kind === 'stop-at-target').flatMap((one) => one.bins);
  const light = bins.filter(
    (one) =>
      surely(one.moisture?.overdryingLoss) && !stopped.some(({ bin }) => bin.id === one.bin.id) && one.failure === null,
  );
  const money = knownTotal(light.map((one) => one.moisture.overdryingLoss)).total;
  const cost = bins.reduce((sum, { fan }) => sum + (fan.cost.value ?? 0), 0);
  if (light.length === 0 || !(Number(money.value) >= WORTH * cost)) return [];
  const grain = knownTotal(light.map((one) => asGrain(one.moisture.overdryingLossBushels, one, units))).total;
  const dryBefore = light.filter((one) => cameInDry(one, season));
  const already =
    dryBefore.length === 0
      ? ''
      : ` ${dryBefore.length === light.length && light.length > 1 ? 'All of it' : listed(names(dryBefore))} came in drier than that already.`;
  const market = light.every(({ bin }) => (season.prices[bin.grain.crop]?.baseMoistureWb ?? null) !== null);
  return [
    {
      text: `${listed(names(light))} went out drier than ${market ? 'the market’s base' : 'the base or target'} and weighed ${units.say('grain', grain)} less than at it, ${units.say('money', money)}.${already}`,
      money,
    },
  ];
}

const names = (bins: readonly BinReview[]) => bins.map(({ bin }) => bin.name);
