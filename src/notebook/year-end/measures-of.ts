import { onTheirFans, sharedFans } from '../../analysis/energy/fan-groups.ts';
import { frontGroups, ranOnTogether } from '../../analysis/fronts/ran-on-together.ts';
import { type SeasonFront, seasonFront } from '../../analysis/fronts/season-front.ts';
import type { BinReview, SeasonReview } from '../../analysis/types.ts';
import { type Estimate, scaled, withheld } from '../../base/estimate.ts';
import { listed } from '../../base/listed.ts';
import type { Units } from '../../report/units.ts';
import type { LoadedSeason } from '../../season/loaded.ts';
import { sensorSeries } from '../../tables/sensors.ts';
import { missingRule, noRule } from '../no-rule.ts';
import { adviceFor, type Played, playedBins, targetSaid } from '../strategy-words.ts';
import { lessTogether, moreDriedAway, savingCounted } from '../weight-sums.ts';
import { capital, counted, knownTotal, sentence } from '../words.ts';
import { bySaving, type Measure, surely } from './measure.ts';
import { ELECTRICIAN, fanWord, PROBE_FIRST, WEATHER } from './measure-words.ts';
import { stopAtTarget } from './stop-at-target.ts';

/** kWh of some of a bin's fan hours, at its mean power. */
function ofHours(hours: Estimate, { fan }: BinReview): Estimate {
  if (fan.energyKwh.value === null || fan.hours.value === null || fan.hours.value <= 0)
    return withheld(fan.energyKwh.why ?? 'The energy of the fan is not known.');
  return scaled(hours, fan.energyKwh.value / fan.hours.value);
}

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
          : `Set the controller of ${review.bin.name} to “${pick.title.toLowerCase()}”${orOther} and let it rest at ${targetSaid(one, units)}.`,
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
  const { name } = one.review.bin;
  switch (noRule(one)?.kind) {
    case 'held':
      return `Keep the rule of ${name} as it is: a bin to be held has no target to reach.`;
    case 'unpriced':
      return 'Have a price for every hour of the season, then ask again which rule is cheapest.';
    case 'none reaches':
      return 'Look at airflow, start moisture and fill date: no rule alone brings this bin to its target.';
    default:
      return `Keep the rule of ${name} as it is until a model can be trusted.`;
  }
}

/** Fans of one meter in turns, tariff by tariff. */
function inTurns({ demandWays = [], bins }: SeasonReview, units: Units): Measure[] {
  return [...new Set(demandWays.map((way) => way.tariffId))].flatMap((tariff) => {
    const ways = demandWays.filter((way) => way.tariffId === tariff);
    const saving = knownTotal(ways.map((way) => way.saving)).total;
    if (!surely(saving)) return [];
    const told = ways.filter((way) => way.saving.value !== null);
    const of = knownTotal(told.map((way) => way.asRun.cost)).total;
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
          ? `The ${fanWord(bins[0])} of ${name} ran on for ${units.say('hours', hours)} after the cooling front had come through everywhere, for ${units.say('money', cost)} of energy.`
          : `${capital(fans)}, shared by ${names}, ran on for ${units.say('hours', hours)} after the cooling front had come through in ${last?.review.bin.name ?? ''}, the last of them, for ${units.say('money', cost)} of energy.`,
      todo:
        shared.length === 0
          ? `Stop the ${fanWord(bins[0])} of ${name} when the topmost sensors have come down to the air’s temperature.`
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
