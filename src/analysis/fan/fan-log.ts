import type { Table } from 'apache-arrow';
import { integers, numbers, textColumn } from '../../tables/arrow.ts';

/** One logged quantity through time: rising times, no missing values. Arrays are [samples]. */
export interface Series {
  /** ms UTC */
  timeMs: Float64Array;
  value: Float64Array;
}

/** What one fan's log holds; a column without a value is an empty series. */
export interface FanLog {
  /** A */
  current: Series;
  /** W */
  power: Series;
  /** J, a running meter */
  energy: Series;
  /** 1 on, 0 off */
  state: Series;
  /** s, a running meter */
  runTime: Series;
  /** rows left out because they are flagged */
  flaggedRows: number;
}

const COLUMNS = { current: 'current_a', power: 'power_w', energy: 'energy_j', state: 'on', runTime: 'run_s' } as const;
type Quantity = keyof typeof COLUMNS;

const EMPTY: Series = { timeMs: new Float64Array(0), value: new Float64Array(0) };

// The table is cut up once, whichever fan asks first: a farm's log has rows by the hundred thousand.
const cut = new WeakMap<Table, Map<string, FanLog>>();

/** The log of one fan out of the fan table; flagged rows (flags != 0) and missing values are left out. */
export function fanLog(fanTable: Table, fanId: string): FanLog {
  let logs = cut.get(fanTable);
  if (logs === undefined) {
    logs = cutByFan(fanTable);
    cut.set(fanTable, logs);
  }
  return (
    logs.get(fanId) ?? { current: EMPTY, power: EMPTY, energy: EMPTY, state: EMPTY, runTime: EMPTY, flaggedRows: 0 }
  );
}

function cutByFan(table: Table): Map<string, FanLog> {
  const time = numbers(table, 'time');
  const fan = textColumn(table, 'fan');
  const flags = integers(table, 'flags');
  const quantities = Object.keys(COLUMNS) as Quantity[];
  const columns = quantities.map((quantity) => numbers(table, COLUMNS[quantity]));
  const rowsOf: number[][] = fan.values.map(() => []);
  for (let row = 0; row < time.length; row++) rowsOf[fan.codes[row]].push(row);
  const logs = new Map<string, FanLog>();
  fan.values.forEach((id, code) => {
    const good = rowsOf[code].filter((row) => flags[row] === 0);
    good.sort((a, b) => time[a] - time[b] || a - b);
    const series = quantities.map((quantity, q) => [quantity, seriesOf(time, columns[q], good)] as const);
    logs.set(id, {
      ...(Object.fromEntries(series) as Record<Quantity, Series>),
      flaggedRows: rowsOf[code].length - good.length,
    });
  });
  return logs;
}

/** Of two values at one time the first in the file stands, as the duplicate check has it. */
function seriesOf(time: Float64Array, values: Float64Array, rows: readonly number[]): Series {
  const timeMs: number[] = [];
  const value: number[] = [];
  for (const row of rows) {
    if (Number.isNaN(values[row]) || Number.isNaN(time[row])) continue;
    if (timeMs.length > 0 && time[row] === timeMs[timeMs.length - 1]) continue;
    timeMs.push(time[row]);
    value.push(values[row]);
  }
  return { timeMs: Float64Array.from(timeMs), value: Float64Array.from(value) };
}
