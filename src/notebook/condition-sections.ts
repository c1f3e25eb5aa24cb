import type { BinReview } from '../analysis/types.ts';
import type { SectionBody } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import { conditionFigures } from './condition-figures.ts';
import { agesTable, placesTable, warmingTables, weatherTable } from './condition-tables.ts';
import { binsNamed, conditionLead, conditionOf, selfWarmingLead } from './condition-words.ts';
import { capital, counted, known } from './words.ts';

/** How far the grain has aged, bin by bin, and by which rules. */
export function agesSection(bins: readonly BinReview[], units: Units): SectionBody {
  const told = bins.filter((one) => conditionOf(one).age.lifeUsed.value !== null);
  const rules = new Map(
    bins.flatMap((one) => {
      const { rule } = conditionOf(one).age;
      return rule === null ? [] : [[one.bin.grain.crop, rule] as const];
    }),
  );
  return {
    lead: `Storage time is what a crop’s rule allows at one temperature and moisture; what each day used of it adds up. It could be told of ${told.length === bins.length && bins.length > 0 ? 'every bin' : `${told.length} of ${counted(bins.length, 'bin')}`}.`,
    table: agesTable(bins, units),
    notes: [
      ...[...rules].map(
        ([crop, { name, criterion, honesty }]) => `${capital(crop)}, by the rule “${name}” (${criterion}). ${honesty}`,
      ),
      'What the grain used before it came into the bin is not in it. The interval holds what thermometers, moistures, holes of the log and the rule itself leave open; grain between the sensors may have used more.',
    ],
  };
}

export function warmingSection(bins: readonly BinReview[], units: Units): SectionBody {
  return {
    lead: selfWarmingLead(bins, units),
    tables: warmingTables(bins, units),
    notes: [
      'Heat that is only conducted never makes a place warmer than the warmest of what lay near it before, but for what comes in from outside. A place counts as warmed by itself where it rose by 2 °C (4 °F) and more within 5 to 60 days of rest (5 °C, 9 °F, within 2 to 4) and ended above all sensors within 2 m (6.6 ft) of its height, the next ones above and below and, after three weeks, every sensor of the bin, and above what the warmest days outdoors with the sun on the steel may have brought in through wall, floor and surface. A level reached at a jump is a sensor’s. A hot spot between the cables stays unseen.',
    ],
  };
}

/** Bins whose mean grain was so warm on a day for sure, and those that may have been, by the interval of the days. */
function warmThere(bins: readonly BinReview[]): { sure: string[]; perhaps: string[] } {
  const told = bins.flatMap((one) => {
    const days = known(conditionOf(one).outdoors.days);
    return days === null ? [] : [{ name: one.bin.name, ends: days.interval ?? [days.value, days.value] }];
  });
  const named = (some: typeof told) => some.map(({ name }) => name);
  return {
    sure: named(told.filter(({ ends: [low] }) => low >= 1)),
    perhaps: named(told.filter(({ ends: [low, high] }) => low < 1 && high >= 1)),
  };
}

function besideWeatherLead(bins: readonly BinReview[]): string {
  if (bins.every((one) => known(conditionOf(one).outdoors.days) === null)) {
    return 'Can’t hold the grain of any bin against the outdoor air; the table says why.';
  }
  const { sure, perhaps } = warmThere(bins);
  const so = '11 °C (20 °F) and more warmer than the mean outdoor air of the month before';
  const may = `in ${binsNamed(perhaps)} it may have been`;
  if (sure.length > 0) {
    return `In ${binsNamed(sure)} the mean grain was ${so} for some days: moisture then begins to move.${perhaps.length === 0 ? '' : ` ${capital(may)}.`}`;
  }
  return perhaps.length === 0
    ? `No bin’s mean grain was ${so}, from where moisture begins to move.`
    : `No bin’s mean grain was for sure ${so}, from where moisture begins to move; ${may} for some days.`;
}

export function besideWeatherSection(bins: readonly BinReview[]): SectionBody {
  return {
    lead: besideWeatherLead(bins),
    table: weatherTable(bins),
    notes: [
      'Insects develop at 13 to 35 °C (55 to 95 °F), best at 25 to 33 °C (77 to 91 °F); below that they rest and in the end die. Days of grain: each day counts by the share of the grain that was so warm.',
      'The air that leaves the grain could wet the roof where it holds more water than it can at the temperature of the steel. The middle takes the steel to be as warm as the outdoor air; the upper end as cold as under a clear night sky.',
    ],
  };
}

/** How one bin kept. */
export function keptSection(one: BinReview, units: Units): SectionBody {
  return {
    lead: conditionLead(one, units),
    figures: conditionFigures(one, units),
    tables: [placesTable(one)],
    notes: conditionOf(one).age.notes,
  };
}

/** The bibliography of the rules that are in use. */
export const conditionSources = (bins: readonly BinReview[]): string[] =>
  bins.flatMap((one) => conditionOf(one).age.rule?.sourceKeys ?? []);
