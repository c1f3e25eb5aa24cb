import * as Plot from '@observablehq/plot';
import type { Figure, Size } from '../page.ts';
import type { ReadGrid } from '../read-grid.ts';
import { boxPath, draw, hatch, ownMark, readBox } from './draw.ts';
import { inParts, PANELS_A_PAGE } from './in-parts.ts';
import { type LocalSpan, timeAxis, timeScale } from './time-axis.ts';

/** What a group of sensors logged on each local day: shares of the readings that were due. */
export interface Coverage {
  id: string;
  title: string;
  span: LocalSpan;
  groups: readonly {
    name: string;
    /** the days on which readings were due, local ms */
    due: LocalSpan;
    days: readonly { dayMs: number; kept: number; flagged: number; due: number }[];
  }[];
}

const DAY_MS = 86_400_000;
/** A day counts as flagged or lacking when this share of what was due is. */
const MUCH = 0.1;

type State = 'kept' | 'flagged' | 'lacking';

function stateOf(day: { kept: number; flagged: number; due: number }): State {
  const due = Math.max(day.due, day.kept + day.flagged);
  if (day.kept + day.flagged === 0 || (due - day.kept - day.flagged) / due > 0.5) return 'lacking';
  return day.flagged / due > MUCH ? 'flagged' : 'kept';
}

/** A strip a group: days with good readings, days with flagged ones, days without. */
export function coverage(whole: Coverage): Figure {
  return inParts(whole.groups, 3 * PANELS_A_PAGE, (groups) => figureOf({ ...whole, groups }));
}

function figureOf(data: Coverage): Figure {
  const states = data.groups.map((group) => new Map(group.days.map((day) => [day.dayMs, stateOf(day)])));
  const count = (state: State) =>
    states.reduce((sum, days) => sum + [...days.values()].filter((one) => one === state).length, 0);
  const all = states.reduce((sum, days) => sum + days.size, 0);
  return {
    id: data.id,
    title: data.title,
    subtitle: 'A strip for each log, by day',
    alt: `${data.title}. ${data.groups.length} logs by day: ${count('kept')} of ${all} days good, ${count('flagged')} with readings that are not believed, ${count('lacking')} without most readings.`,
    legend: [
      { label: 'good', swatch: 'var(--c1)' },
      { label: 'more than a tenth not believed', swatch: 'var(--c2)' },
      { label: 'more than half lacking', swatch: 'hatch' },
    ],
    notShown: null,
    grids: data.groups.map((group, g) => gridOf(group, states[g], data.span)),
    draw: (size) => drawStrips(data, states, size),
  };
}

const SAID: Readonly<Record<State, string>> = {
  kept: 'good',
  flagged: 'more than a tenth not believed',
  lacking: 'more than half lacking',
};

function gridOf(group: Coverage['groups'][number], states: ReadonlyMap<number, State>, span: LocalSpan): ReadGrid {
  const fromMs = Math.floor(span.fromMs / DAY_MS) * DAY_MS;
  const count = Math.ceil((span.toMs - fromMs) / DAY_MS);
  const words = Object.keys(SAID) as State[];
  const values = Array.from({ length: count }, (_, d) => {
    const day = fromMs + d * DAY_MS;
    if (day < Math.floor(group.due.fromMs / DAY_MS) * DAY_MS || day >= group.due.toMs) return Number.NaN;
    return words.indexOf(states.get(day) ?? 'lacking');
  });
  return {
    name: group.name,
    columns: { fromMs, stepMs: DAY_MS, count },
    rows: [{ label: '', low: 0, high: 1 }],
    say: '$0',
    none: 'no reading was due',
    layers: [{ values, decimals: 0, words: words.map((state) => SAID[state]) }],
  };
}

function drawStrips(data: Coverage, states: readonly Map<number, State>[], size: Size): string {
  const step = size.narrow ? 34 : 24;
  const longest = Math.max(0, ...data.groups.map((group) => group.name.length));
  return draw(size, {
    height: data.groups.length * step + 44,
    marginLeft: size.narrow ? 4 : Math.min(260, 12 + longest * 8),
    marginRight: 8,
    marginTop: 8,
    marginBottom: 28,
    x: timeScale(data.span),
    y: { domain: [data.groups.length, 0], axis: null },
    marks: [
      ownMark((frame) => {
        const id = `${size.idPrefix}-lacking`;
        const fills: Record<State, string> = { kept: 'var(--c1)', flagged: 'var(--c2)', lacking: `url(#${id})` };
        const paths: Record<State, string> = { kept: '', flagged: '', lacking: '' };
        const labels = data.groups.map((group, g) => {
          const bottom = frame.y(g + 1) - 4;
          // A flagged day is half as high too: not told by colour alone.
          const top = (state: State) => (state === 'flagged' ? bottom - 7 : bottom - 14);
          const first = Math.max(data.span.fromMs, group.due.fromMs);
          const end = Math.min(data.span.toMs, group.due.toMs);
          const at = (day: number): State => states[g].get(day) ?? 'lacking';
          for (let day = first; day < end; ) {
            const from = day;
            const state = at(day);
            while (day < end && at(day) === state) day += DAY_MS;
            paths[state] += boxPath(frame.x(new Date(from)), top(state), frame.x(new Date(Math.min(day, end))), bottom);
          }
          return size.narrow
            ? frame.element('text', { x: frame.left, y: bottom - 18, 'text-anchor': 'start' }, group.name)
            : frame.element('text', { x: frame.left - 8, y: bottom - 3, 'text-anchor': 'end' }, group.name);
        });
        return [
          hatch(frame, id),
          ...(Object.keys(paths) as State[]).map((state) =>
            frame.element('path', { d: paths[state], fill: fills[state] }),
          ),
          ...labels,
          ...data.groups.map((_, g) => readBox(frame, g, { top: frame.y(g + 1) - 18, bottom: frame.y(g + 1) - 4 })),
        ];
      }),
      timeAxis(data.span, size),
      Plot.ruleY([data.groups.length]),
    ],
  });
}
