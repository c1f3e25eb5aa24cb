import { availableParallelism } from 'node:os';
import { IN_HINDSIGHT, SWEPT } from '../../src/analysis/strategies/run-strategy.ts';
import { SEASON_WEATHER } from '../../src/analysis/strategies/sweep-plan.ts';
import { AS_IT_IS, VARIED, type Variant, type Varied } from '../../src/analysis/strategies/variant.ts';
import type { Problem } from '../../src/base/errors.ts';
import { UsageError } from '../command-line.ts';
import { unknownSaid, waysOf } from './ways-of.ts';

/** What the command line says, as text. */
export interface SweepText {
  years?: string;
  strategies?: string;
  /** false: no search */
  hindsight?: boolean;
  bins?: string;
  vary?: string;
  by?: string;
  workers?: string;
  shard?: string;
}

export interface SweepOptions {
  /** null: the season and all years on file */
  weathers: readonly string[] | null;
  strategies: readonly string[];
  /** null: all */
  bins: readonly string[] | null;
  variants: readonly Variant[];
  /** null: month ends of the season */
  by: readonly string[] | null;
  workers: number;
  shard: { index: number; of: number } | null;
}

const MOST_WORKERS = 256;
const VARIES = Object.keys(VARIED) as Varied[];
/** A leap year's days, so that 29 February may be named. */
const LEAP_YEAR = 2024;

/** @throws UsageError with all that is wrong */
export function sweepOptions(text: SweepText): SweepOptions {
  const problems: Problem[] = [];
  const wrong = (code: string, message: string) => problems.push({ code, message });
  const options = {
    weathers: text.years === undefined ? null : weathersOf(text.years, wrong),
    strategies: strategiesOf(text, wrong),
    bins: text.bins === undefined ? null : unique(listOf(text.bins)),
    variants: variantsOf(chosen('--vary', text.vary, [...VARIES, 'all'], wrong) ?? []),
    by: text.by === undefined ? null : daysOf(text.by, wrong),
    workers: workersOf(text.workers, wrong),
    shard: text.shard === undefined ? null : shardOf(text.shard, wrong),
  };
  if (problems.length > 0) throw new UsageError(problems);
  return options;
}

type Wrong = (code: string, message: string) => void;

function listOf(text: string): string[] {
  return text
    .split(',')
    .map((one) => one.trim())
    .filter((one) => one !== '');
}

function unique<T>(values: readonly T[]): T[] {
  return [...new Set(values)];
}

function chosen(option: string, text: string | undefined, known: readonly string[], wrong: Wrong): string[] | null {
  if (text === undefined) return null;
  const given = unique(listOf(text));
  if (given.length === 0) wrong('SWEEP_OPTION', `${option} names nothing; there are ${known.join(', ')}.`);
  for (const one of given.filter((name) => !known.includes(name)))
    wrong('SWEEP_OPTION', unknownSaid(option, one, known));
  return given;
}

/** Named ones by `wayName`; else all, the search in hindsight among them unless it is left out. */
function strategiesOf({ strategies, hindsight = true }: SweepText, wrong: Wrong): string[] {
  const named = strategies === undefined ? null : unique(waysOf(listOf(strategies), wrong));
  if (named?.includes(IN_HINDSIGHT) && !hindsight) {
    wrong(
      'SWEEP_OPTION',
      `--strategies names ${IN_HINDSIGHT}, and --no-hindsight leaves it out. Leave one of them away.`,
    );
  }
  return named ?? SWEPT.filter((id) => hindsight || id !== IN_HINDSIGHT);
}

/** `1998-2023,2025,season`: the season first, then years, rising. */
function weathersOf(text: string, wrong: Wrong): string[] {
  const years = new Set<number>();
  let season = false;
  for (const part of listOf(text)) {
    const found = /^(\d{4})(?:-(\d{4}))?$/.exec(part);
    const from = Number(found?.[1]);
    const to = Number(found?.[2] ?? from);
    if (part === SEASON_WEATHER) season = true;
    else if (found === null || !(to >= from)) {
      wrong('SWEEP_YEARS', `--years has "${part}"; a year, years from-to, or "season" is due, e.g. 1998-2023,2025.`);
    } else for (let year = from; year <= to; year++) years.add(year);
  }
  const rising = [...years].sort((a, b) => a - b).map(String);
  if (!season && rising.length === 0 && listOf(text).length === 0) {
    wrong('SWEEP_YEARS', '--years names none; e.g. 1998-2023,2025.');
  }
  return [...(season ? [SEASON_WEATHER] : []), ...rising];
}

function variantsOf(varied: readonly string[]): Variant[] {
  const all = varied.includes('all');
  return [AS_IT_IS, ...VARIES.filter((one) => all || varied.includes(one)).flatMap((one) => VARIED[one])];
}

function daysOf(text: string, wrong: Wrong): string[] {
  const days = unique(listOf(text));
  for (const day of days) {
    const at = new Date(`${LEAP_YEAR}-${day}T00:00:00Z`);
    if (!/^\d\d-\d\d$/.test(day) || Number.isNaN(at.getTime()) || at.toISOString().slice(5, 10) !== day) {
      wrong('SWEEP_BY', `--by has "${day}"; a day of the year is due as month and day, e.g. 11-15.`);
    }
  }
  return days;
}

function workersOf(text: string | undefined, wrong: Wrong): number {
  if (text === undefined) return availableParallelism();
  const workers = Number(text);
  if (!/^\d+$/.test(text) || !(workers >= 1 && workers <= MOST_WORKERS)) {
    wrong('SWEEP_WORKERS', `--workers is "${text}"; a whole number from 1 to ${MOST_WORKERS} is due.`);
  }
  return workers;
}

function shardOf(text: string, wrong: Wrong): { index: number; of: number } {
  const found = /^(\d{1,6})\/(\d{1,6})$/.exec(text);
  const [index, of] = [Number(found?.[1]), Number(found?.[2])];
  if (!(index >= 1 && index <= of)) {
    wrong('SWEEP_SHARD', `--shard is "${text}"; which of how many is due, from 1/n to n/n, e.g. 2/8.`);
  }
  return { index, of };
}
