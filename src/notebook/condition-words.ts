import { missingCondition } from '../analysis/condition/bin-condition.ts';
import { othersToo } from '../analysis/condition/condition-alerts.ts';
import type { BinCondition, ConditionAlert, SensorPlace } from '../analysis/condition/condition-types.ts';
import type { BinReview } from '../analysis/types.ts';
import { listed } from '../base/listed.ts';
import { cropOf } from '../grain/crops.ts';
import type { Units } from '../report/units.ts';
import { hasKept, keptSaid } from './kept-words.ts';
import { capital, counted, known } from './words.ts';

const HALF_DAY_MS = 43_200_000;

/** A bin's condition, all of it missing with why where it was not worked out. */
export function conditionOf({ condition, failure }: BinReview): BinCondition {
  return (
    condition ??
    missingCondition(failure === null ? 'It was not worked out.' : `This bin could not be worked out: ${failure}`)
  );
}

/** `cable C1, sensor 4 at 10.0 ft`. */
export function placeSaid({ cable, sensor, heightM }: SensorPlace, units: Units): string {
  return `cable ${cable}, sensor ${sensor} at ${units.say('length', heightM)}`;
}

/** A local midnight kept as if UTC, as a date: by its noon, which no change of the clock carries over a day's end. */
export function localDay(units: Units, localMs: number): string {
  const noon = localMs + HALF_DAY_MS;
  return units.date(noon - units.zone.offsetMs(noon));
}

/** The page's first sentence. */
export function conditionAnswer(bins: readonly BinReview[], units: Units): string {
  const told = bins
    .flatMap((one) => {
      const used = known(conditionOf(one).age.worstLifeUsed);
      return used === null ? [] : [{ name: one.bin.name, used, kept: hasKept(conditionOf(one).age) }];
    })
    .sort((a, b) => b.used.value - a.used.value);
  const warmed = bins.filter((one) => conditionOf(one).warming.found.length > 0).map((one) => one.bin.name);
  const watched = bins.filter((one) => conditionOf(one).warming.why === null).length;
  const warming =
    watched === 0
      ? 'whether grain warmed by itself can’t be told'
      : warmed.length === 0
        ? `no grain was seen to warm by itself${watched < bins.length ? ` in the ${counted(watched, 'bin')} that can be judged` : ''}`
        : `in ${binsNamed(warmed)} grain warmed by itself`;
  const [most] = told;
  if (most === undefined) return `Can’t tell how much of its storage time the grain has used; ${warming}.`;
  const within =
    bins.length === 1
      ? 'The'
      : `${keptSaid(
          told.map(({ kept }) => kept),
          bins.length,
        )}; the`;
  return `${within} grain that aged most, in ${most.name}, used ${units.say('storage time used', most.used)} of its storage time by the rule for its crop; ${warming}.`;
}

/** Bins in a sentence, by their names while it stays short. */
export function binsNamed(names: readonly string[]): string {
  return names.length > 4 ? counted(names.length, 'bin') : listed(names);
}

/** What the page's warnings say of a bin. */
export function alertSaid({ bin }: BinReview, alert: ConditionAlert, units: Units): string {
  switch (alert.kind) {
    case 'time used up':
      return `${bin.name}: the grain at ${placeSaid(alert.place, units)} used ${units.say('storage time used', alert.lifeUsed)} of its storage time. Have it sampled for grade and mould before you store it longer.`;
    case 'time may be used up':
      return `${bin.name}: the grain at ${placeSaid(alert.place, units)} used ${units.say('storage time used', alert.lifeUsed)} of its storage time; all of it may be gone.`;
    case 'warmed by itself': {
      const { span, riseK, aboveK } = alert.found;
      return `${bin.name}: the grain at ${placeSaid(alert.place, units)} warmed by ${units.say('temperature difference', riseK)} from ${localDay(units, span.fromMs)} to ${localDay(units, span.toMs - 2 * HALF_DAY_MS)} with the fan at rest, to ${units.say('temperature difference', aboveK)} above all that lay near it${othersToo(alert.others)}. Look for wet or spoiling grain there, and run the fan.`;
    }
    case 'warmer than outdoors':
      return `${bin.name}: on ${units.amount('count', alert.days)} days the grain was 11 °C (20 °F) and more warmer than the month’s outdoor air: moisture moves up into the centre of the surface.`;
    case 'ended wet':
      return `${bin.name}: the grain at ${placeSaid(alert.place, units)} ended at ${units.say('moisture', alert.place.endWb)}, moister than the ${units.say('moisture', alert.limitWb)} published for storing ${cropOf(bin.grain.crop).name.toLowerCase()}${alert.meanWb === null || alert.meanWb > alert.limitWb ? '' : `, whatever the mean of ${units.say('moisture', alert.meanWb)} says`}. Probe there, and dry, cool or move that grain before warm weather.`;
  }
}

/** How a bin kept, in a sentence or two. */
export function conditionLead(one: BinReview, units: Units): string {
  const { age, coldest, coldestMs, warmedSinceK } = conditionOf(one);
  const { name } = one.bin;
  const mean = known(age.lifeUsed);
  const used =
    mean === null || age.worst === null
      ? `Can’t tell the storage time that ${name} used: ${age.lifeUsed.why ?? 'not known.'}`
      : `${name} used ${units.say('storage time used', mean)} of its storage time, the most at ${placeSaid(age.worst, units)}: ${units.say('storage time used', age.worstLifeUsed)}.`;
  const cold = known(coldest);
  if (cold === null || coldestMs === null) return used;
  const since = known(warmedSinceK);
  const warmed =
    since === null || since.value < 0.5 ? '' : `; it has warmed by ${units.say('temperature difference', since)} since`;
  return `${used} It was coldest in the week from ${localDay(units, coldestMs)}, ${units.say('temperature', cold)} in the mean${warmed}.`;
}

/** What the kit found of warming, over all bins. */
export function selfWarmingLead(bins: readonly BinReview[], units: Units): string {
  const found = bins.flatMap((one) => conditionOf(one).warming.found.map((place) => ({ one, place })));
  const judged = bins.filter((one) => conditionOf(one).warming.why === null);
  if (judged.length === 0) return 'Can’t tell in any bin whether grain warmed by itself; the table says why.';
  if (found.length === 0) {
    return `No place warmed by itself in the ${counted(judged.length, 'bin')} that can be judged: with the fan at rest for five days and more every rise was within what the air and the grain near it explain.`;
  }
  const [first] = found;
  return `${capital(counted(found.length, 'place'))} warmed by ${found.length === 1 ? 'itself' : 'themselves'}, first at ${placeSaid(first.place, units)} in ${first.one.bin.name} from ${localDay(units, first.place.span.fromMs)} on.`;
}

/** Names of the bins of which some grain ended too moist to be stored, whatever the mean says. */
export function binsEndedWet(bins: readonly BinReview[]): string[] {
  return bins
    .filter((one) => conditionOf(one).alerts.some(({ kind }) => kind === 'ended wet'))
    .map(({ bin }) => bin.name);
}

/** Names of the bins whose grain should be sampled: it warmed by itself, or has used its storage time up. */
export function binsToSample(bins: readonly BinReview[]): string[] {
  return bins
    .filter((one) => conditionOf(one).alerts.some(({ kind }) => kind === 'warmed by itself' || kind === 'time used up'))
    .map(({ bin }) => bin.name);
}
