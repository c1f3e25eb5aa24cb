import type { BinReview } from '../../analysis/types.ts';
import { cropOf } from '../../grain/crops.ts';
import type { Units } from '../../report/units.ts';
import { aimsAtTemperature } from '../../season/goal.ts';
import { momentEstimate } from '../bin-table.ts';
import { perGrain } from '../per-grain.ts';
import { changeSaid, known, sentence } from '../words.ts';

/** One bin's season in a sentence or two, with what its goal asks for; says why where it cannot be told. */
export function binSaid(review: BinReview, units: Units): string {
  const { bin, fan, moisture, temperature, unitCosts, failure } = review;
  if (failure !== null) return `${bin.name} could not be worked out: ${sentence(failure)}`;
  const cost = fan.cost.value === null ? '; what they cost can’t be told' : ` and cost ${units.say('money', fan.cost)}`;
  const ran =
    fan.hours.value === null
      ? `Can’t tell how long the fans of ${bin.name} ran: ${sentence(fan.hours.why ?? 'not known')}`
      : `The fans of ${bin.name} ran ${units.say('hours', fan.hours)}${cost}.`;
  const points = known(moisture.pointsRemoved);
  if (aimsAtTemperature(bin.goal)) {
    const { start, end } = temperature;
    if (start.value === null || end.value === null)
      return `${ran} How far it cooled can’t be told: ${sentence(temperature.why ?? 'its temperatures are not known')}`;
    return `${ran} Its grain went from ${units.say('temperature', momentEstimate(start, null))} to ${units.say('temperature', momentEstimate(end, null))}.`;
  }
  if (points === null)
    return `${ran} The change of its moisture can’t be told: ${sentence(moisture.pointsRemoved.why ?? 'not known')}`;
  const each = perGrain(bin.goal === 'dry' ? unitCosts.perBushelPoint : unitCosts.perBushelPointAdded, review, units);
  // What a point costs to add is no cost of a point removed, which the table beside it withholds.
  const at =
    each.value === null ? '' : `, at ${units.say('money per grain point', each)}${bin.goal === 'dry' ? '' : ' added'}`;
  return `${ran} It ${changeSaid(points, units)}${at}.`;
}

/** How a bin is built and filled, for its page: `42 ft across, corn 22 ft deep, 15 hp …`. */
export function binBuilt({ bin, grain }: BinReview, nameplateW: number | null, units: Units): string {
  const depth = grain.depthM === null ? '' : `, ${units.say('length', grain.depthM)} deep`;
  const hp = nameplateW === null ? '' : `, ${units.say('nameplate', nameplateW)} of fan`;
  const cables = `${bin.cables.length} ${bin.cables.length === 1 ? 'cable' : 'cables'}`;
  return `${bin.name}: ${units.say('length', bin.diameterM)} across, ${cropOf(bin.grain.crop).name.toLowerCase()}${depth}${hp}, ${cables}, as stated; goal: ${bin.goal}.`;
}
