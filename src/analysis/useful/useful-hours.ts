import { type Estimate, scaled, withheld } from '../../base/estimate.ts';
import { zoneOf } from '../../base/zone.ts';
import { againstCost } from './against-cost.ts';
import { entryLayer } from './entry-layer.ts';
import { type Aim, firstEffect } from './hour-effects.ts';
import { hourGroups } from './hour-groups.ts';
import { stretchesOf } from './hour-stretches.ts';
import { hoursWhere, sumOf, sumWhere } from './hour-sums.ts';
import { judgeCases } from './judge-cases.ts';
import { type Judged, spanned } from './judged-hours.ts';
import { knownHours } from './known-hours.ts';
import { offHours } from './off-hours.ts';
import { pieceCosts } from './piece-costs.ts';
import { HOUR_CLASSES, type HourClass, type UsefulHours, VERDICTS } from './useful-hours-types.ts';
import type { UsefulInput } from './useful-input.ts';
import { usefulLimits } from './useful-limits.ts';
import { usefulNotes } from './useful-notes.ts';

const AGAINST = VERDICTS.indexOf('against');
const FOR = VERDICTS.indexOf('for');
const UNKNOWN_VERDICT = VERDICTS.indexOf('unknown');
const UNKNOWN = HOUR_CLASSES.indexOf('unknown');

/**
 * Class each fan hour by what its air could do to the grain it met, and say what worked for and against the bin's goal.
 *
 * Every number's interval spans the isotherms in use, limits of half and double, the error of the grain's moisture, and,
 * where no plenum reading tells it, the fan's warming.
 */
export function usefulHours(input: UsefulInput): UsefulHours {
  const { bin, season } = input;
  const { targetMoistureWb, targetTempC } = bin.grain;
  const aim: Aim = { goal: bin.goal, moistureWb: targetMoistureWb, tempC: targetTempC };
  const hours = knownHours(input);
  const { on, off, known, offKnown, choices, grain, air } = hours;
  const cases = judgeCases(known, choices, aim, grain);
  const offCases = judgeCases(
    offKnown,
    // Plateaus take time to find, and with the fan off only the goal's own effect is asked for.
    { ...choices, withPlateaus: bin.goal === 'cool' },
    aim,
    new Uint8Array(off.midMs.length).fill(1),
  );
  const all = sumOf(on.hours);
  const why = nothingClassed(cases.main, all);
  const classHours = (code: number) => hoursWhere(on, ({ classes }) => classes, code);
  const verdictHours = (code: number) => hoursWhere(on, ({ verdicts }) => verdicts, code);
  const untold = verdictHours(UNKNOWN_VERDICT)(cases.main);
  const forGoal = why === null ? spanned(cases, verdictHours(FOR), all, untold) : withheld(why);
  const against = why === null ? spanned(cases, verdictHours(AGAINST), all, untold) : withheld(why);
  const byClass = HOUR_CLASSES.map((name, code) => [name, spanned(cases, classHours(code), all)] as const);
  return {
    limits: usefulLimits(season),
    first: firstEffect(bin.goal),
    hours: Object.fromEntries(byClass) as Record<HourClass, Estimate>,
    forGoal,
    against,
    againstShare: scaled(against, 1 / all),
    againstCost: why === null ? againstCost(pieceCosts(season, input.fans, input.fan, on), cases) : withheld(why),
    offWouldHavePaid: offHours(aim, off, offCases, offKnown),
    entryLayer: entryLayer(input, hours, aim),
    stretches: stretchesOf(on, (i) => cases.main.classes[i]).map(({ fromMs, toMs, code }) => ({
      fromMs,
      toMs,
      of: HOUR_CLASSES[code],
    })),
    offStretches: stretchesOf(off, (i) => offCases.main.pays[i])
      .filter(({ code }) => code === 1)
      .map(({ fromMs, toMs }) => ({ fromMs, toMs })),
    ...hourGroups(on, cases, hours.outdoor, zoneOf(season.site.timeZone)),
    air: {
      plenumHours: sumWhere(on, (i) => air.main.fromPlenum[i] === 1),
      weatherHours: sumWhere(on, (i) => air.main.fromPlenum[i] === 0 && !Number.isNaN(air.main.tempC[i])),
      warmingK: air.main.warmingK,
      warmingFrom: air.main.warmingFrom,
    },
    notes: usefulNotes(bin, hours, cases.main, aim),
    why,
  };
}

function nothingClassed({ classes }: Judged, all: number): string | null {
  if (all === 0) return 'The fan did not run.';
  if (classes.some((code) => code < UNKNOWN)) return null;
  if (!classes.includes(UNKNOWN)) return 'The fan ran only while the bin held no grain.';
  return 'No reading tells the air that the fan pushed in, temperature and humidity, beside the grain that it met, so nobody can say what any fan hour could do.';
}
