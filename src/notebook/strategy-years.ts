import { FACTORS, type HeldBack } from '../analysis/strategies/held-back.ts';
import type { YearAir } from '../analysis/strategies/held-back-run.ts';
import type { BinHeldBack } from '../analysis/strategies/held-back-season.ts';
import type { StrategyHeldBack } from '../analysis/strategies/held-back-years.ts';
import { reachedDay } from '../analysis/strategies/reached-day.ts';
import { listed } from '../base/listed.ts';
import { daysByYear } from '../report/figures/days-by-year.ts';
import type { Cell, Entry, Figure, SectionBody, Table } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import { some } from './front-words.ts';
import { bestSaid, yearSaid } from './strategy-years-words.ts';

/** A bin's rules in the years that weather is on file for; `why`: there are none. */
export type BinYears = { name: string } & BinHeldBack;

/** So many of the slowest years are told in words. */
const TOLD = 3;
const MODEL = 'by the model';

/** In which years a rule was done first, and what held the others back. */
export function strategyYearsSection(bins: readonly BinYears[], units: Units): SectionBody {
  const told = bins.filter(({ why, rules }) => why === null && rules.some(({ years }) => years.best !== null));
  if (told.length === 0) {
    return { lead: `Can’t tell of other years. ${untoldSaid(bins)}` };
  }
  return {
    lead: leadOf(told[0], units),
    figures: [figureOf(told, units)],
    entries: told.flatMap((bin) => bin.rules.map((rule) => entryOf(bin, rule, units))),
    tables: [yearsTable(told), factorsTable(told)],
    notes: [
      'Each year is the same bin with the same grain, filled on the same date, in that year’s weather. What is told of a year covers its days from filling until the target was reached; of a year that did not get there, or took more than twice the best year’s days, as many days as the best year took.',
      'The days for as much water are a product: hours a day × warmth × dryness × use. Warmth is what the fan’s air could take at each hour’s temperature and the best year’s humidity (a fan moves a volume, and colder air is denser); dryness what its own humidity makes of that; use how much of it the air did take. Could take means: until the air is in balance with the grain as it came in, cooling as it dries.',
      ...bins.flatMap(({ name, why }) => (why === null ? [] : [`${name}: ${why}`])),
      ...new Set(told.flatMap(untoldOf)),
    ],
  };
}

/** Why nothing is told, and of which bins where they differ. */
function untoldSaid(bins: readonly BinYears[]): string {
  const why = [...new Set(bins.flatMap((one) => (one.why === null ? [] : [one.why])))];
  if (why.length === 0) return 'No bin was run.';
  if (why.length === 1) return why[0];
  const namesOf = (reason: string) => bins.filter((one) => one.why === reason).map(({ name }) => name);
  return why.map((reason) => `${some(namesOf(reason), 'bin')}: ${reason}`).join(' ');
}

/** Years that lack weather lack it for every rule: said once. */
function untoldOf({ name, rules }: BinYears): string[] {
  return rules.flatMap(({ title, years }) =>
    years.untold.map(({ weather, why }) => {
      const all = rules.every((rule) => rule.years.untold.some((one) => one.weather === weather && one.why === why));
      return `${name}, ${all ? '' : `${title.toLowerCase()}, `}${weather}: ${why}`;
    }),
  );
}

function leadOf({ name, rules }: BinYears, units: Units): string {
  const [{ title, years }] = rules.filter((rule) => rule.years.best !== null);
  const { best } = years;
  const slowest = slowestOf(years.others)[0];
  if (best === null || slowest === undefined) return `${name}: ${bestSaid(title, years, units)}.`;
  return `${name}: ${bestSaid(title, years, units)}. ${yearSaid(slowest, best, units)}`;
}

/** Years that did not get there before the others, these by their days. */
function slowestOf(others: readonly HeldBack[]): HeldBack[] {
  const days = (one: HeldBack) => one.days ?? Number.MAX_VALUE;
  return [...others].sort((a, b) => days(b) - days(a) || a.water - b.water);
}

function entryOf({ name }: BinYears, { title, years }: StrategyHeldBack, units: Units): Entry {
  const { best, others } = years;
  const slowest = slowestOf(others);
  const left = slowest.slice(TOLD).map(({ air }) => air.weather);
  const more = left.length === 0 ? [] : [`The table tells of ${listed(left)}.`];
  return {
    term: `${name}, ${title.toLowerCase()}`,
    text: `${bestSaid(title, years, units)}.`,
    details: best === null ? [] : [...slowest.slice(0, TOLD).map((one) => yearSaid(one, best, units)), ...more],
  };
}

function figureOf(bins: readonly BinYears[], units: Units): Figure {
  const groups = bins.map(({ name, rules }) => ({
    name,
    rows: rules
      .filter(({ years }) => years.best !== null)
      .map(({ title, years }) => ({
        name: title,
        years: yearsOf(years).map(({ air }) => ({ year: Number(air.weather), doneMs: air.reachedMs })),
      })),
  }));
  const [first] = bins[0].rules.filter(({ years }) => years.best !== null);
  return daysByYear(
    {
      id: 'years',
      title: `${bins[0].name}: ${bestSaid(first.title, first.years, units)
        .replace(/, on .*/, '')
        .toLowerCase()}`,
      what: 'target was reached for good',
      groups,
      notShown: null,
    },
    units,
  );
}

/** Best and others in the order of their years. */
function yearsOf({ best, others }: StrategyHeldBack['years']): { air: YearAir; days: number | null }[] {
  const first = best === null ? [] : [{ air: best, days: best.reached ? best.days : null }];
  return [...first, ...others].sort((a, b) => Number(a.air.weather) - Number(b.air.weather));
}

function yearsTable(bins: readonly BinYears[]): Table {
  return {
    id: 'years',
    caption: 'Each year’s days until the target, and its air while the fan ran',
    folded: true,
    columns: [
      { key: 'bin', label: 'Bin', quantity: null },
      { key: 'rule', label: 'Rule', quantity: null },
      { key: 'year', label: 'Year', quantity: null },
      { key: 'done', label: 'Target reached', quantity: 'day' },
      { key: 'days', label: 'Days', quantity: 'days', known: MODEL },
      { key: 'hours', label: 'Fan hours a day', quantity: 'hours', known: MODEL },
      { key: 'temp', label: 'Entering air', quantity: 'temperature', known: MODEL },
      { key: 'balance', label: 'Grain in balance with it', quantity: 'moisture', known: MODEL },
      { key: 'take', label: 'Water it could take, of 1,000 parts of air', quantity: 'number', known: MODEL },
    ],
    rows: bins.flatMap(({ name, rules }) =>
      rules.flatMap(({ title, years }) =>
        yearsOf(years).map(({ air, days }) => ({
          bin: name,
          rule: title,
          year: air.weather,
          // What is reached at midnight was reached that day.
          done: air.reachedMs === null ? missing('The target is not reached.') : reachedDay(air.reachedMs),
          days: days ?? missing('The target is not reached.'),
          hours: air.hoursPerDay,
          temp: air.plenumC,
          balance: air.plenumEmcWb,
          take: 1000 * air.canTake,
        })),
      ),
    ),
  };
}

function factorsTable(bins: readonly BinYears[]): Table {
  const factor = { hours: 'Hours a day', warmth: 'Warmth', dryness: 'Dryness', use: 'Use' };
  return {
    id: 'held-back',
    caption:
      'Days for as much water, so many times the best year’s: hours a day × warmth × dryness × use; above 1 held the year back',
    folded: true,
    columns: [
      { key: 'bin', label: 'Bin', quantity: null },
      { key: 'rule', label: 'Rule', quantity: null },
      { key: 'year', label: 'Year', quantity: null },
      { key: 'slower', label: 'Days for as much water', quantity: 'times', known: MODEL },
      ...FACTORS.map((key) => ({ key, label: factor[key], quantity: 'times' as const, known: MODEL as typeof MODEL })),
      { key: 'water', label: 'Water that came out', quantity: 'times', known: MODEL },
    ],
    rows: bins.flatMap(({ name, rules }) =>
      rules.flatMap(({ title, years }) =>
        years.others.map(({ air, slower, times, water }) => ({
          bin: name,
          rule: title,
          year: air.weather,
          slower,
          ...times,
          water,
        })),
      ),
    ),
  };
}

function missing(why: string): Cell {
  return { value: null, why };
}
