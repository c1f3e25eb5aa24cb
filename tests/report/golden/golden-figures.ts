import { DOUBTS } from '../../../src/analysis/what-if/doubts.ts';
import { estimate } from '../../../src/base/estimate.ts';
import { arrivalMap } from '../../../src/report/figures/arrival-map.ts';
import { billsByTime } from '../../../src/report/figures/bills-by-time.ts';
import { binSection } from '../../../src/report/figures/bin-section.ts';
import { costByBin } from '../../../src/report/figures/cost-by-bin.ts';
import { coverage } from '../../../src/report/figures/coverage.ts';
import { daysByYear } from '../../../src/report/figures/days-by-year.ts';
import { fanClock } from '../../../src/report/figures/fan-clock.ts';
import { hourClasses } from '../../../src/report/figures/hour-classes.ts';
import { linesOverTime } from '../../../src/report/figures/lines-over-time.ts';
import { moistureOverTime } from '../../../src/report/figures/moisture-over-time.ts';
import { moistureProfile } from '../../../src/report/figures/moisture-profile.ts';
import { monthsByBin } from '../../../src/report/figures/months-by-bin.ts';
import { pointsByFanHours } from '../../../src/report/figures/points-by-fan-hours.ts';
import { rankedCosts } from '../../../src/report/figures/ranked-costs.ts';
import { waterfall } from '../../../src/report/figures/waterfall.ts';
import { waysAcrossBins } from '../../../src/report/figures/ways-across-bins.ts';
import { waysByBin } from '../../../src/report/figures/ways-by-bin.ts';
import { waysToRun } from '../../../src/report/figures/ways-to-run.ts';
import type { Figure } from '../../../src/report/page.ts';
import { Units } from '../../../src/report/units.ts';

export const units = new Units('us', 'USD', 'America/Chicago');

const DAY = 86_400_000;
const HOUR = DAY / 24;
/** Figures take local time as if it were UTC: 1 October 2024, midnight. */
const START = Date.UTC(2024, 9, 1);
const days = (count: number) => Array.from({ length: count }, (_, i) => START + i * DAY);
/** The fan on for ten days from the fifth on, half of each; one day not known. */
const fanDays = days(10).map((dayMs, i) => ({
  dayMs: dayMs + 4 * DAY,
  hours: i === 6 ? 0 : 12,
  unknownHours: i === 6 ? 24 : 0,
}));
const span = { fromMs: START, toMs: START + 40 * DAY };
const nights = (first: number, count: number) =>
  Array.from({ length: count }, (_, i) => {
    const fromMs = START + (first + i) * DAY + 22 * HOUR;
    return { fromMs, toMs: fromMs + 8 * HOUR };
  });
/** 18 % until day 5, falling to 15 % on day 20. */
const fall = (i: number) => 0.18 - 0.002 * Math.min(15, Math.max(0, i - 5));

/** Every kind of figure, drawn from a few numbers written down here, so that only a change of its look changes it. */
export const GOLDEN_FIGURES: readonly Figure[] = [
  binSection(
    {
      id: 'bin-section',
      title: 'Top third ended at 18 %',
      quantity: 'moisture',
      columnMs: days(40),
      columnWidthMs: DAY,
      rows: [
        { lowM: 0, highM: 2 },
        { lowM: 2, highM: 4 },
      ],
      values: Float64Array.from({ length: 80 }, (_, i) =>
        i % 40 === 30 ? Number.NaN : i < 40 ? fall(i) : fall(i - 50),
      ),
      surface: [
        { fromMs: START, depthM: 3 },
        { fromMs: START + 3 * DAY, depthM: 4 },
      ],
      fanDays,
      readings: { shown: 78, of: 80, empty: 0 },
    },
    units,
  ),
  linesOverTime(
    {
      id: 'lines-over-time',
      title: 'A third of the time was used',
      subtitle: 'Storage time used so far, %, by day',
      alt: 'It rose to 34 %.',
      quantity: 'storage time used',
      dayMs: days(40),
      lines: [
        { label: 'mean', style: 'line', values: days(40).map((_, i) => (i + 1) / 118), end: { low: 0.25, high: 0.5 } },
        { label: 'worst', style: 'dash', values: days(40).map((_, i) => (i === 30 ? null : (i + 1) / 50)) },
      ],
      band: {
        label: 'from place to place',
        low: days(40).map((_, i) => (i + 1) / 160),
        high: days(40).map((_, i) => (i + 1) / 50),
      },
      level: { label: 'all of it', value: 1 },
      fromZero: true,
      fanDays,
    },
    units,
  ),
  moistureOverTime(
    {
      id: 'moisture-over-time',
      title: 'The mean went from 18 to 15 %',
      days: days(40).map((dayMs, i) => ({
        dayMs,
        mean: i === 30 ? null : fall(i),
        low: i === 30 ? null : fall(i) - 0.01,
        high: i === 30 ? null : fall(i) + 0.01,
        stillAir: i < 4 || i > 14,
      })),
      fanDays,
      start: { fromMs: START, toMs: START + 2 * DAY },
      end: { fromMs: START + 37 * DAY, toMs: START + 39 * DAY },
      target: 0.155,
    },
    units,
  ),
  hourClasses({
    id: 'hour-classes',
    title: 'A third of the hours worked against the goal',
    alt: 'Hours of two bins.',
    span,
    panels: [
      {
        name: 'North 36',
        on: {
          dry: nights(4, 6),
          rewet: nights(10, 4),
          cool: nights(20, 2),
          warm: nights(24, 1),
          little: nights(26, 1),
        },
        missed: nights(30, 3),
      },
      { name: 'East 42', on: { dry: nights(2, 3), hatch: nights(8, 2), open: nights(0, 2) }, missed: [] },
    ],
    notShown: null,
  }),
  fanClock({
    id: 'fan-clock',
    title: 'It ran by night',
    alt: 'Ten nights.',
    span,
    on: nights(4, 10),
    unknown: nights(20, 2),
    notShown: null,
  }),
  pointsByFanHours(
    {
      id: 'points-by-fan-hours',
      title: 'East 42 changed fastest',
      panels: ['North 36', 'East 42'].map((name, p) => ({
        name,
        days: [0, 1, 2, 3, 4].map((i) => ({
          fanHours: 100 * i,
          points: (0.5 + 0.25 * p) * i,
          low: (0.5 + 0.25 * p) * i - 0.4,
          high: (0.5 + 0.25 * p) * i + 0.4,
          stillAir: i % 2 === 0,
        })),
      })),
      lacking: ['Shop 30'],
    },
    units,
  ),
  arrivalMap(
    {
      id: 'arrival-map',
      title: 'Through everywhere but in North 36',
      alt: 'North 36: 2 of 4 sensors.',
      kind: 'cooling',
      panels: [
        {
          name: 'North 36',
          said: '3 Dec 2024: 2 of 4 passed',
          depthM: 5,
          cables: [
            { id: 'C1', fromCentreM: 0 },
            { id: 'C2', fromCentreM: 3 },
          ],
          sensors: [
            { cable: 'C1', heightM: 1, outcome: 'passed', fanHours: 4.2, slowest: false },
            { cable: 'C1', heightM: 3, outcome: 'held', fanHours: null, slowest: false },
            { cable: 'C2', heightM: 1, outcome: 'passed', fanHours: 12, slowest: true },
            { cable: 'C2', heightM: 3, outcome: 'followed', fanHours: null, slowest: false },
            { cable: 'C2', heightM: 4.5, outcome: 'untold', fanHours: null, slowest: false },
          ],
        },
      ],
      notShown: null,
    },
    units,
  ),
  costByBin(
    {
      id: 'cost-by-bin',
      title: 'North 36 bought its points cheapest',
      quantity: 'money per grain point',
      bins: [
        { name: 'East 42', cost: estimate(0.041, 0.036, 0.052) },
        { name: 'North 36', cost: estimate(0.027, 0.019, 0.029) },
      ],
    },
    units,
  ),
  rankedCosts(
    {
      id: 'ranked-costs',
      title: 'North 36 was cheapest',
      quantity: 'money per grain point',
      groups: [
        {
          name: 'Corn',
          bins: [
            { name: 'North 36', cost: estimate(0.027, 0.019, 0.029), place: '1' },
            { name: 'East 42', cost: estimate(0.041, 0.036, 0.052), place: '2' },
          ],
        },
        { name: 'Wheat', bins: [{ name: 'Road 24', cost: estimate(0.03, 0.026, 0.053), place: null }] },
      ],
      notShown: null,
    },
    units,
  ),
  waysToRun(
    {
      id: 'ways-to-run',
      title: '2 of 3 ways reach the target',
      ways: [
        { name: 'As logged', cost: estimate(430, 430, 430), reaches: true, apart: true },
        { name: 'Humidity limit', cost: estimate(380, 350, 455), reaches: true, apart: false },
        { name: 'Night hours', cost: estimate(120, 100, 160), reaches: false, apart: false },
      ],
      whisker: DOUBTS,
      notShown: null,
    },
    units,
  ),
  waysAcrossBins(
    {
      id: 'ways-across-bins',
      title: 'Another bin’s way costs less in 1 of 2 bins',
      quantity: 'money per grain',
      bins: [
        {
          name: 'North 36',
          ways: [
            { name: 'Always on', of: estimate(0.05, 0.045, 0.06), misses: null, own: true },
            { name: 'Night hours', of: estimate(0.031, 0.028, 0.037), misses: 'target not reached', own: false },
          ],
        },
        { name: 'East 42', ways: [{ name: 'Always on', of: estimate(0.02, 0.018, 0.024), misses: null, own: false }] },
      ],
      words: {
        subtitle: 'by the model; a bin’s own way in bold',
        own: 'its own',
        dot: 'reaches the target',
        ring: 'does not',
        whisker: 'lowest to highest of the runs in bins that go with the log',
      },
      notShown: null,
    },
    units,
  ),
  waterfall(
    {
      id: 'waterfall',
      title: 'After the fans’ cost a gain of 400 USD',
      subtitle: 'USD',
      alt: 'Steps.',
      quantity: 'money',
      steps: [
        { name: 'Shrink spared', value: 1700 },
        { name: 'Weight of water', value: -900 },
        { name: 'Energy of the fans', value: -400 },
      ],
      left: { name: 'Left', of: estimate(400, -100, 900) },
      notShown: null,
    },
    units,
  ),
  monthsByBin(
    {
      id: 'months-by-bin',
      title: 'North 36 cost most in Oct 2024',
      quantity: 'money',
      parts: ['energy', 'demand'],
      bins: [
        {
          name: 'North 36',
          months: [
            { month: '2024-10', values: [300, 120] },
            { month: '2024-12', values: [40, null] },
          ],
        },
        { name: 'East 42', months: [{ month: '2024-11', values: [90, 30] }] },
      ],
    },
    units,
  ),
  billsByTime(
    {
      id: 'bills-by-time',
      title: 'The fans explain half of the energy billed',
      alt: 'Two bills.',
      tariffs: [
        {
          name: 'farm',
          bills: [
            { month: '2024-10', billedKwh: 9000, fansKwh: 6000, fansInterval: [5500, 6800] },
            { month: '2024-11', billedKwh: null, fansKwh: 1200, fansInterval: [1200, 1200] },
          ],
        },
      ],
    },
    units,
  ),
  coverage({
    id: 'coverage',
    title: 'Whole days without a reading: Fan F1',
    span,
    groups: [
      {
        name: 'North 36, cables',
        due: span,
        days: days(40).map((dayMs, i) => ({
          dayMs,
          kept: i > 9 && i < 14 ? 10 : 48,
          flagged: i > 9 && i < 14 ? 38 : 0,
          due: 48,
        })),
      },
      {
        name: 'Fan F1',
        due: { fromMs: START + 3 * DAY, toMs: span.toMs },
        days: days(20).map((dayMs) => ({ dayMs, kept: 96, flagged: 0, due: 96 })),
      },
    ],
  }),
  daysByYear(
    {
      id: 'days-by-year',
      title: 'Done earliest in 2022',
      what: 'target was reached',
      groups: [
        {
          name: 'North 36',
          rows: [
            {
              name: 'always on',
              years: [
                { year: 2021, doneMs: Date.UTC(2021, 9, 20, 12) },
                { year: 2022, doneMs: Date.UTC(2022, 9, 9, 12) },
                { year: 2023, doneMs: null },
              ],
            },
          ],
        },
      ],
      notShown: null,
    },
    units,
  ),
  waysByBin(
    {
      id: 'ways-by-bin',
      title: 'Air and sensors agree',
      quantity: 'airflow per grain',
      bins: [
        {
          name: 'North 36',
          ways: [
            { name: 'fronts', of: estimate(0.013, 0.011, 0.015) },
            { name: 'pressure', of: estimate(0.014, 0.01, 0.018) },
          ],
        },
      ],
      notShown: null,
    },
    units,
  ),
  moistureProfile(
    {
      id: 'moisture-profile',
      title: 'Wettest at the end: cable C2',
      sensors: [
        { cable: 'C1', heightM: 1, start: 0.18, end: 0.14 },
        { cable: 'C1', heightM: 3, start: 0.18, end: 0.17 },
        { cable: 'C2', heightM: 1, start: 0.185, end: 0.15 },
        { cable: 'C2', heightM: 3, start: null, end: 0.178 },
      ],
      depthM: 4,
    },
    units,
  ),
];
