import { onTheirFans, sharedFans } from '../../analysis/energy/fan-groups.ts';
import { frontGroups, ranOnTogether } from '../../analysis/fronts/ran-on-together.ts';
import { type SeasonFront, seasonFront } from '../../analysis/fronts/season-front.ts';
import { type DryEnough, dryEnoughDay } from '../../analysis/moisture/dry-enough-day.ts';
import { overdryingLoss } from '../../analysis/moisture/overdrying-loss.ts';
import { baseMoisture, wantedMoisture } from '../../analysis/moisture/wanted-moisture.ts';
import type { BinReview, SeasonReview } from '../../analysis/types.ts';
import { type Estimate, isAboveNothing, scaled, withheld } from '../../base/estimate.ts';
import { listed } from '../../base/listed.ts';
import type { Units } from '../../report/units.ts';
import type { LoadedSeason } from '../../season/loaded.ts';
import type { Season } from '../../season/season.ts';
import { sensorSeries } from '../../tables/sensors.ts';
import { missingRule, noRule } from '../no-rule.ts';
import { asGrain } from '../per-grain.ts';
import { adviceFor, type Played, playedBins, targetSaid } from '../strategy-words.ts';
import { lessTogether, moreDriedAway, savingCounted } from '../weight-sums.ts';
import { capital, counted, knownTotal, sentence } from '../words.ts';
import { bySaving, type Measure } from './measure.ts';

/** kWh of some of a bin's fan hours, at its mean power. */
function ofHours(hours: Estimate, { fan }: BinReview): Estimate {
  if (fan.energyKwh.value === null || fan.hours.value === null || fan.hours.value <= 0)
    return withheld(fan.energyKwh.why ?? 'The energy of the fan is not known.');
  return scaled(hours, fan.energyKwh.value / fan.hours.value);
}

const PROBE_FIRST = 'Probe the grain and meter its moisture before a fan is stopped on these numbers.';
const WEATHER = 'Another year is another weather; the saving is this season’s.';
const ELECTRICIAN = 'Controls are wired by a licensed electrician; a fan on a controller starts without warning.';

/** Whether an amount lies above nothing with its whole interval. */
const surely = (of: Estimate | undefined): of is Estimate =>
  of !== undefined && Number(of.value) >= 0.5 && isAboveNothing(of);

/** Every measure that the season's numbers speak for or against, clear savings first. */
export function measuresOf(loaded: LoadedSeason, review: SeasonReview, units: Units): Measure[] {
  const series = sensorSeries(loaded.tables.readings);
  const played = playedBins(review);
  const ofBins = [
    ...played.flatMap((one) => otherRule(one, units)),
    ...review.bins.flatMap((one) => [
      ...stopAtTarget(
        one,
        loaded,
        units,
        played.find(({ review: { bin } }) => bin.id === one.bin.id),
      ),
      ...usefulOnly(one, units),
    ]),
  ];
  return bySaving([
    ...ofBins.map((one) => unlessShared(one, review.bins)),
    ...inTurns(review, units),
    ...frontGroups(review.bins.map((one) => seasonFront(one, series))).flatMap((group) =>
      stopWhenThrough(group, units),
    ),
  ]);
}

/** A fan that serves other bins too is run for one of them and on all: what a measure of one bin would come to is then not known. */
function unlessShared(measure: Measure, bins: readonly BinReview[]): Measure {
  const beside = onTheirFans(measure.bins, bins);
  if (beside.length === 0) return measure;
  const others = beside.map(({ bin }) => bin.name);
  const own = measure.bins.flatMap(({ bin }) => bin.fanIds);
  const fans = sharedFans([...measure.bins, ...beside]).filter((id) => own.includes(id));
  const why = `${fans.length > 1 ? `Fans ${listed(fans)} serve` : `Fan ${fans[0]} serves`} ${listed(others)} too: what is done for one bin is done to the other, and what the two would come to was not worked out.`;
  return { ...measure, saving: withheld(why), energy: withheld(why) };
}

/** Another rule for the fan, by the bin's fitted bed; withheld where that is not trusted. */
export function otherRule(one: Played, units: Units): Measure[] {
  const { review, whatIf, pick, saving } = one;
  const { logged } = whatIf;
  const left = savingCounted(one) ?? saving;
  const other = lessTogether(one);
  const orOther =
    other === null
      ? ''
      : `, or to “${other.title.toLowerCase()}”, which ${whatIf.weights?.clear === true ? 'comes' : 'may come'} to less with over-drying counted,`;
  const better = logged !== null && !logged.outcome.reachedTarget && pick !== null;
  const energy =
    logged === null || pick === null
      ? withheld(missingRule(one) ?? 'There are no runs.')
      : { value: logged.outcome.energyKwh - pick.outcome.energyKwh, interval: null, why: null };
  return [
    {
      kind: 'other-rule',
      title:
        pick === null ? `${review.bin.name}: another rule` : `${review.bin.name}: run by “${pick.title.toLowerCase()}”`,
      bins: [review],
      seen: sentence(adviceFor(one, units)),
      todo:
        pick === null
          ? withoutRule(one)
          : `Set the controller to “${pick.title.toLowerCase()}”${orOther} and let it rest at ${targetSaid(one, units)}.`,
      saving: better
        ? withheld('As it was run, the bin did not come to its target by the model; the two costs buy different grain.')
        : saving.value !== null && saving.value > 0 && (left.value ?? 0) <= 0
          ? withheld(
              `Over-drying takes ${units.say('money', moreDriedAway(one))} more of the grain’s weight than as run: no less than the fans would have saved.`,
            )
          : left,
      energy,
      from: 'by the model',
      cautions: [WEATHER, PROBE_FIRST, ELECTRICIAN],
    },
  ];
}

/** What to do where no rule is named. */
function withoutRule(one: Played): string {
  switch (noRule(one)?.kind) {
    case 'held':
      return 'Keep the rule as it is: a bin to be held has no target to reach.';
    case 'unpriced':
      return 'Have a price for every hour of the season, then ask again which rule is cheapest.';
    case 'none reaches':
      return 'Look at airflow, start moisture and fill date: no rule alone brings this bin to its target.';
    default:
      return 'Keep the rule as it is until a model can be trusted.';
  }
}

/** Fans of one meter in turns, tariff by tariff. */
function inTurns({ demandWays = [], bins }: SeasonReview, units: Units): Measure[] {
  return [...new Set(demandWays.map((way) => way.tariffId))].flatMap((tariff) => {
    const ways = demandWays.filter((way) => way.tariffId === tariff);
    const saving = knownTotal(ways.map((way) => way.saving)).total;
    if (!surely(saving)) return [];
    const of = knownTotal(ways.map((way) => way.asRun.cost)).total;
    return [
      {
        kind: 'fans-in-turns' as const,
        title: `Tariff ${tariff}: run the fans in turns`,
        bins,
        seen: `The fans on tariff ${tariff} made ${units.say('money', of)} of demand charge, because several ran in one quarter hour; in turns, the same hours of the same days would have cost ${units.say('money', saving)} less.`,
        todo: 'Let a controller that sees all fans of the meter run them one after the other in the hours of the demand charge.',
        saving,
        energy: { value: 0, interval: [0, 0], why: null },
        from: 'by the logs' as const,
        cautions: [
          'A fan in turn meets the air of other hours: what that does to the grain is not in the number.',
          'What else the meter feeds has peaks of its own, which turns do not lower.',
          ELECTRICIAN,
        ],
      },
    ];
  });
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

/** Grain that went out drier than the buyer pays for, and than was wanted. */
function stopAtTarget(review: BinReview, { season }: LoadedSeason, units: Units, run: Played | undefined): Measure[] {
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

/** Two fans of a bin are its fans. */
function fanWord({ bin }: BinReview): string {
  return bin.fanIds.length === 1 ? 'fan' : 'fans';
}

/** Fan hours whose air worked against what the bin was run for. */
function usefulOnly(review: BinReview, units: Units): Measure[] {
  const { useful } = review;
  if (useful == null || !surely(useful.againstCost)) return [];
  const { name } = review.bin;
  return [
    {
      kind: 'useful-hours-only',
      title: `${name}: no hours against the goal`,
      bins: [review],
      seen: `In ${units.say('hours', useful.against)}, ${units.say('share', useful.againstShare)} of all, the ${fanWord(review)} of ${name} pushed air that worked against the bin’s goal; their energy cost ${units.say('money', useful.againstCost)}.`,
      todo: `Let a humidity or temperature limit stop the ${fanWord(review)} of ${name} while the air works against the bin’s goal (${review.bin.goal}).`,
      saving: useful.againstCost,
      energy: ofHours(useful.against, review),
      from: 'by the logs',
      cautions: [
        'Wet grain is not left without air for long: hours of poor air may have been run to keep it cool.',
        ELECTRICIAN,
      ],
    },
  ];
}

/** A cooling fan that ran on after its front was through, in the last of its bins where several share it. */
function stopWhenThrough(group: readonly SeasonFront[], units: Units): Measure[] {
  const bins = group.map(({ review }) => review);
  if (bins.some(({ bin }) => bin.goal !== 'cool') || group.some(({ verdict }) => verdict !== 'through')) return [];
  const { hours, cost, last } = ranOnTogether(group);
  if (!surely(cost)) return [];
  const { name } = bins[0].bin;
  const names = listed(bins.map(({ bin }) => bin.name));
  const shared = sharedFans(bins);
  const fans = shared.length > 1 ? `fans ${listed(shared)}` : `fan ${shared[0]}`;
  const energy = knownTotal(bins.map((one) => ofHours(hours, one)));
  return [
    {
      kind: 'stop-when-through',
      title:
        shared.length === 0
          ? `${name}: stop when the front is through`
          : `${names}, which share ${fans}: stop when the front is through in the last of them`,
      bins,
      seen:
        shared.length === 0
          ? `The fan of ${name} ran on for ${units.say('hours', hours)} after the cooling front had come through everywhere, for ${units.say('money', cost)} of energy.`
          : `${capital(fans)}, shared by ${names}, ran on for ${units.say('hours', hours)} after the cooling front had come through in ${last?.review.bin.name ?? ''}, the last of them, for ${units.say('money', cost)} of energy.`,
      todo:
        shared.length === 0
          ? `Stop the fan of ${name} when the topmost sensors have come down to the air’s temperature.`
          : `Stop ${fans} when the topmost sensors of all its bins, ${names}, have come down to the air’s temperature.`,
      saving: cost,
      energy: energy.of === null ? energy.total : withheld('The energy of a fan is not known.'),
      from: 'by the logs',
      cautions: ['Sensors see the grain at the cables; confirm the top and the core by hand from outside the grain.'],
    },
  ];
}

/** Bins whose models are not trusted, or were left out: what that withholds. */
export function modelWords(review: SeasonReview): string {
  const { whatIf } = review;
  if (whatIf === undefined)
    return 'What another rule for the fans would have saved is not told, because the bins’ models were left out of this run.';
  const trusted = whatIf.filter(({ why }) => why === null);
  if (trusted.length === whatIf.length) return `The models of all ${counted(whatIf.length, 'bin')} are trusted.`;
  const lacking = whatIf.filter(({ why }) => why !== null);
  const names = lacking.map(({ binId }) => review.bins.find(({ bin }) => bin.id === binId)?.bin.name ?? binId);
  return `${names.length === 1 ? `The model of ${names[0]} is` : `The models of ${listed(names)} are`} not trusted, so that other rules are not told of ${names.length === 1 ? 'it' : 'them'}; ${trusted.length} of ${counted(whatIf.length, 'model')} ${trusted.length === 1 ? 'is' : 'are'}.`;
}
