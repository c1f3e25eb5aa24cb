import type { Table } from 'apache-arrow';
import { toLocalMs, zoneOf } from '../../base/zone.ts';
import { numbers, textColumn } from '../../tables/arrow.ts';
import { FLAGS, type FlagName } from '../../tables/flags.ts';
import type { Finding } from '../loaded.ts';
import type { Season } from '../season.ts';
import { DAY_MS } from './track.ts';
import { countText } from './wording.ts';

/** More than the longest road trains carry, near 115 t (from memory). */
export const TICKET_MOST_KG = 120_000;
/** Below the first no grain comes off a field or out of a dryer, above the second none goes through an auger; common practice. */
export const TICKET_MOISTURE_WB = [0.04, 0.5] as const;

/** NaN is missing, and not impossible. */
export function impossibleNet(netKg: number): boolean {
  return netKg <= 0 || netKg > TICKET_MOST_KG;
}

function impossibleMoisture(moistureWb: number): boolean {
  return moistureWb < TICKET_MOISTURE_WB[0] || moistureWb > TICKET_MOISTURE_WB[1];
}

/**
 * Scale tickets that cannot be, and those that tell one load a second time. Of tickets alike that bear a date alone
 * nobody can tell whether they are two loads of that day: they are told and not flagged.
 *
 * @param flags  by row of the table, added to
 */
export function checkTickets(season: Season, table: Table, flags: Uint8Array): Finding[] {
  const [bins, directions] = ['bin', 'direction'].map((name) => textColumn(table, name));
  const [time, net, moisture] = ['time', 'net_kg', 'moisture_wb'].map((name) => numbers(table, name));
  // A date alone is held as midnight, by the clock of its file: the site's, its standard time or UTC.
  const { timeZone } = season.site;
  const zones = [zoneOf(timeZone), zoneOf(timeZone, true), zoneOf('UTC')];
  const dateAlone = (row: number) => zones.some((zone) => toLocalMs(zone, time[row]) % DAY_MS === 0);
  return season.bins.flatMap((bin) => {
    const rows = [...time.keys()].filter((row) => bins.values[bins.codes[row]] === bin.id);
    const heavy = rows.filter((row) => impossibleNet(net[row]));
    const moist = rows.filter((row) => !impossibleNet(net[row]) && impossibleMoisture(moisture[row]));
    const out = new Set([...heavy, ...moist]);
    const usable = rows.filter((row) => !out.has(row) && !Number.isNaN(net[row]));
    const again = toldAgain(
      usable,
      (row) => [directions.codes[row], time[row], net[row]].join(' '),
      (row) => moisture[row],
    );
    const cells = (at: readonly number[]) =>
      at.reduce((sum, row) => sum + [net, moisture].filter((one) => !Number.isNaN(one[row])).length, 0);
    const tell = (
      at: readonly number[],
      kind: FlagName & Finding['kind'],
      flag: boolean,
      what: string,
      todo: string,
    ) => {
      if (at.length === 0) return [];
      if (flag) for (const row of at) flags[row] |= FLAGS[kind];
      const times = at.map((row) => time[row]);
      const finding: Finding = {
        kind,
        where: `${bin.id} scale tickets`,
        binId: bin.id,
        fromMs: Math.min(...times),
        toMs: Math.max(...times),
        cells: flag ? cells(at) : 0,
        text: `${countText(at.length, 'scale ticket')} of ${bin.id} ${what}.`,
        advice: todo,
      };
      return [finding];
    };
    const given = (values: Float64Array, at: readonly number[], text: (value: number) => string) => {
      const told = [...new Set(at.map((row) => text(values[row])))];
      return told.length > 3 ? `${told.slice(0, 3).join(', ')} and others` : told.join(', ');
    };
    const kg = (value: number) => `${Math.round(value)} kg`;
    const percent = (value: number) => `${Number((value * 100).toFixed(1))} %`;
    return [
      ...tell(
        heavy,
        'spike',
        true,
        `cannot be: a net weight of ${given(net, heavy, kg)}, where a load weighs above 0 and at most ${kg(TICKET_MOST_KG)}; not used, the load counts as one not weighed`,
        'Correct the weight in the file, or the unit of its column.',
      ),
      ...tell(
        moist,
        'spike',
        true,
        `cannot be: a moisture of ${given(moisture, moist, percent)}, where grain has ${TICKET_MOISTURE_WB.map(percent).join(' to ')}; the moisture is not used, the weight is`,
        'Correct the moisture in the file, or the unit of its column.',
      ),
      ...tell(
        again.filter((row) => !dateAlone(row)),
        'duplicate',
        true,
        'repeat another in time, direction, weight and moisture; a scale weighs one truck at a time, so the first is used',
        'Take the second out of the file, or correct its time.',
      ),
      ...tell(
        again.filter(dateAlone),
        'duplicate',
        false,
        'repeat another in date, direction, weight and moisture; a date alone does not tell whether they are loads of their own',
        'See whether each is a load of its own, and give the tickets their time of day.',
      ),
    ];
  });
}

/** Rows that tell another again: of one key, and no other moisture. Of two of which one lacks its moisture, that one. */
function toldAgain(
  rows: readonly number[],
  keyOf: (row: number) => string,
  moistureOf: (row: number) => number,
): number[] {
  const kept = new Map<string, number[]>();
  const again: number[] = [];
  for (const row of rows) {
    const key = keyOf(row);
    const others = kept.get(key) ?? [];
    kept.set(key, others);
    const own = moistureOf(row);
    const twin = others.findIndex((other) => {
      const its = moistureOf(other);
      return its === own || Number.isNaN(its) || Number.isNaN(own);
    });
    if (twin < 0) others.push(row);
    else if (Number.isNaN(moistureOf(others[twin]))) {
      again.push(others[twin]);
      others[twin] = row;
    } else again.push(row);
  }
  return again.sort((a, b) => a - b);
}
