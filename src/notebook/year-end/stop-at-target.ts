import { type DryEnough, dryEnoughDay } from '../../analysis/moisture/dry-enough-day.ts';
import { overdryingLoss } from '../../analysis/moisture/overdrying-loss.ts';
import { baseMoisture, wantedMoisture } from '../../analysis/moisture/wanted-moisture.ts';
import type { BinReview } from '../../analysis/types.ts';
import { type Estimate, withheld } from '../../base/estimate.ts';
import type { Units } from '../../report/units.ts';
import type { LoadedSeason } from '../../season/loaded.ts';
import type { Season } from '../../season/season.ts';
import { asGrain } from '../per-grain.ts';
import type { Played } from '../strategy-words.ts';
import { type Measure, surely } from './measure.ts';
import { fanWord, PROBE_FIRST } from './measure-words.ts';

/** Grain that went out drier than the buyer pays for, and than was wanted. */
export function stopAtTarget(
  review: BinReview,
  { season }: LoadedSeason,
  units: Units,
  run: Played | undefined,
): Measure[] {
  const { name, goal } = review.bin;
  // Grain that came in drier than the base, or was cooled or conditioned, was not over-dried by a fan run too long.
  const base = baseMoisture(season, review.bin);
  // A target below the base was wanted: what is lost down to it stopping there does not save.
  const wanted = wantedMoisture(season, review.bin);
  const start = review.moisture.start.value;
  if (goal !== 'dry' || base === null || wanted === null || start === null || start <= base) return [];
  const { bushels, money: loss } = lostBelow(wanted, review, season);
  if (!surely(loss)) return [];
  const limit = wanted < base ? 'its own target' : 'the market’s base';
  const stop = dryEnoughDay(review.moisture, wanted, review.bin.grain.targetMoistureWb ?? base);
  const late = stop?.layerLast === true;
  return [
    {
      kind: 'stop-at-target',
      title: `${name}: stop at the target`,
      bins: [review],
      seen: `${name} went out drier than ${limit}: ${units.say('grain', asGrain(bushels, review, units))} of weight, ${units.say('money', loss)}, left with the water.${late ? ` ${layerLastSaid(stop, units)}` : ''}`,
      todo: `Stop the ${fanWord(review)} of ${name} ${late ? 'once the mean is at the target and the wettest layer within 1.5 points, by a probe' : 'when the bin’s mean comes to the target, and check the wettest layer with a probe'}.`,
      tells: loss,
      saving: late ? savedAfter(stop, wanted, review, season, units) : loss,
      energy: withheld('The hours past the target were not worked out apart.'),
      from: 'by the logs',
      cautions: [
        ...wetLayerSaid(run, units),
        PROBE_FIRST,
        'The mean must be safe to store: a wet layer spoils in a bin whose mean is right.',
        'Water is never added to grain to win weight back (unlawful in the US).',
      ],
    },
  ];
}

/** What was lost below a moisture: as told on the pages against the market's base, else worked out in the same way. */
function lostBelow(wb: number, { bin, grain, moisture }: BinReview, season: Season) {
  return wb === baseMoisture(season, bin)
    ? { bushels: moisture.overdryingLossBushels, money: moisture.overdryingLoss }
    : overdryingLoss(bin, season, grain, { mean: moisture.end, parts: [], why: moisture.why }, wb);
}

/** That a layer was still wet when the mean was dry: what stopping there saves, that layer asks back. @param of  the bin with its runs, where it has any */
function wetLayerSaid(of: Played | undefined, units: Units): string[] {
  const { logged = null, strategies = [], weights = null } = of?.whatIf ?? {};
  if (of === undefined || logged === null || logged.outcome.reachedTarget) return [];
  const rule = strategies.find(({ id }) => id === weights?.pick);
  const loses = weights?.ways.find(({ id }) => id === rule?.id)?.givenAway.value ?? null;
  return [
    `By the model its wettest layer was still at ${units.say('moisture', logged.outcome.wettestWb)} at the end: a bin stopped when its mean is dry has that layer to be dried elsewhere, and not all of the weight is won.${rule === undefined ? '' : ` “${rule.title}”, which dries it too and comes to the least with over-drying counted, loses ${units.say('money', loses)} of weight.`}`,
  ];
}

/** That the wettest layer came down after the mean, or not at all. */
function layerLastSaid({ mean, wettestWb }: DryEnough, units: Units): string {
  return mean === null
    ? `Its wettest tenth, by sensor, was still at ${units.say('moisture', wettestWb)} at the end, measured.`
    : `Its wettest tenth, by sensor, came within 1.5 points only at a mean of ${units.say('moisture', mean)}.`;
}

/** What stopping saves where the wettest layer decides: the weight that left after it was dry enough. */
function savedAfter(
  { mean, wettestWb }: DryEnough,
  wanted: number,
  review: BinReview,
  season: Season,
  units: Units,
): Estimate {
  return mean === null
    ? withheld(
        `Its wettest tenth, by sensor, was still at ${units.say('moisture', wettestWb)} at the end, measured, more than 1.5 points above the target: there was no day to stop on.`,
      )
    : lostBelow(Math.min(wanted, mean.value ?? wanted), review, season).money;
}
