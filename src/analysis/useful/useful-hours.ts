import { type Estimate, estimate, withheld } from '../../base/estimate.ts';
import { zoneOf } from '../../base/zone.ts';
import { againstCost } from './against-cost.ts';
import { countedHours, type FanTime, type Is } from './counted-hours.ts';
import { entryLayer } from './entry-layer.ts';
import { type Aim, firstEffect } from './hour-effects.ts';
import { hourGroups } from './hour-groups.ts';
import type { HourPieces } from './hour-pieces.ts';
import { stretchesOf } from './hour-stretches.ts';
import { sumOf, sumWhere } from './hour-sums.ts';
import { judgeCases } from './judge-cases.ts';
import type { JudgedCases } from './judged-hours.ts';
import { knownHours, type SeasonHours } from './known-hours.ts';
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
 * Every number's interval spans the isotherms in use, limits of half and double, the error of the grain's moisture, the fan
 * log's own error, and, where no plenum reading tells it, the fan's warming; the upper end holds the hours that nobody can
 * class, and those of a silent log that could have been of the kind.
 */
export function usefulHours(input: UsefulInput): UsefulHours {
  const { bin, season } = input;
  const { targetMoistureWb, targetTempC } = bin.grain;
  const aim: Aim = { goal: bin.goal, moistureWb: targetMoistureWb, tempC: targetTempC };
  const hours = knownHours(input);
  const { on, off, silent, known, offKnown, silentKnown, choices, grain, silentGrain, air } = hours;
  const cases = judgeCases(known, choices, aim, grain);
  const silentCases = judgeCases(silentKnown, choices, aim, silentGrain);
  const offCases = judgeCases(
    offKnown,
    // Plateaus take time to find, and with the fan off only the goal's own effect is asked for.
    { ...choices, withPlateaus: bin.goal === 'cool' },
    aim,
    new Uint8Array(off.midMs.length).fill(1),
  );
  const sdH = Math.hypot(...input.fan.fans.map((fan) => fan.onHoursSd ?? 0));
  const time: FanTime = { on, cases, silent, silentCases, sdH };
  const why = nothingClassed(cases, sumOf(on.hours), hours);
  const verdict = (code: number) =>
    why === null
      ? countedHours(
          time,
          ({ verdicts }, i) => verdicts[i] === code,
          ({ verdicts }, i) => verdicts[i] === UNKNOWN_VERDICT,
        )
      : withheld(why);
  const against = verdict(AGAINST);
  const costs = (pieces: HourPieces) => pieceCosts(season, input.fans, input.fan, pieces);
  const lacking = nameless(hours, cases.known);
  const byClass = HOUR_CLASSES.map((name) => [name, classHours(time, name, lacking, why)] as const);
  return {
    limits: usefulLimits(season),
    first: firstEffect(bin.goal),
    hours: Object.fromEntries(byClass) as Record<HourClass, Estimate>,
    forGoal: verdict(FOR),
    against,
    againstShare: againstShare(time, against),
    againstCost: why === null ? againstCost(costs(on), costs(silent), time) : withheld(why),
    offWouldHavePaid: offHours(
      aim,
      { pieces: off, known: offKnown, cases: offCases },
      { pieces: silent, known: silentKnown, cases: silentCases },
    ),
    entryLayer: entryLayer(input, hours, aim, sdH),
    stretches: stretchesOf(on, (i) => cases.main.classes[i]).map(({ fromMs, toMs, code }) => ({
      fromMs,
      toMs,
      of: HOUR_CLASSES[code],
    })),
    offStretches: stretchesOf(off, (i) => offCases.main.pays[i])
      .filter(({ code }) => code === 1)
      .map(({ fromMs, toMs }) => ({ fromMs, toMs })),
    ...hourGroups(
      time,
      { on: hours.outdoor, silent: hours.silentOutdoor },
      zoneOf(season.site.timeZone),
      hours.untimed,
    ),
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

/** Why hours cannot be named by moisture, and by temperature; null where they can. */
interface Nameless {
  moisture: string | null;
  temperature: string | null;
}

function nameless({ known: { grainWb, grainC } }: SeasonHours, told: JudgedCases['known']): Nameless {
  const of = (name: string, values: Float64Array) =>
    values.every(Number.isNaN)
      ? `The grain’s ${name} is not known, so no hour is named by it.`
      : `What the air could do to the grain’s ${name} is not known, so no hour is named by it.`;
  return {
    moisture: told.moisture ? null : of('moisture', grainWb),
    temperature: told.temperature ? null : of('temperature', grainC),
  };
}

/** Hours of a class; those that lack what would name them are missing. @param nothing  why no hour is classed */
function classHours(time: FanTime, name: HourClass, lacking: Nameless, nothing: string | null): Estimate {
  const code = HOUR_CLASSES.indexOf(name);
  const is: Is = ({ classes }, i) => classes[i] === code;
  if (name === 'empty' || name === 'unknown') return countedHours(time, is);
  const none = nothing ?? lackingOf(name, lacking);
  return none === null ? countedHours(time, is, ({ classes }, i) => classes[i] === UNKNOWN) : withheld(none);
}

function lackingOf(name: HourClass, { moisture, temperature }: Nameless): string | null {
  if (name === 'dry' || name === 'rewet') return moisture;
  if (name === 'cool' || name === 'warm') return temperature;
  return moisture ?? temperature;
}

/** The hours against the goal over all fan hours: a log's silence adds to both, or to the fan hours alone. */
function againstShare({ on, silent }: FanTime, { value, interval, why }: Estimate): Estimate {
  if (value === null || interval === null) return withheld(why ?? 'Not known.');
  const all = sumOf(on.hours);
  const [low, high] = interval;
  return estimate(value / all, low / (all + sumOf(silent.hours)), high / Math.max(all, high));
}

function nothingClassed(
  { main: { classes }, known }: JudgedCases,
  all: number,
  { air: { warmingKnown }, untimedHours }: SeasonHours,
): string | null {
  if (all === 0) return 'The fan did not run.';
  if (known.moisture || known.temperature) return null;
  if (!classes.includes(UNKNOWN)) return 'The fan ran only while the bin held no grain.';
  if (untimedHours > all / 2)
    return 'The fan’s meter was read once a day or more seldom: it tells how many hours the fan ran, not which, so nobody can say what any of them could do.';
  if (!warmingKnown)
    return 'The heater warms the air by an amount that no plenum reading tells, so nobody can say what any fan hour could do.';
  return 'No reading tells the air that the fan pushed in, temperature and humidity, beside the grain that it met, so nobody can say what any fan hour could do.';
}
