import type { Table } from 'apache-arrow';
import { numbers, texts } from '../../tables/arrow.ts';
import type { Finding } from '../loaded.ts';

const J_PER_KWH = 3.6e6;

/**
 * Bills whose energy or demand is below zero, and bills of one tariff that overlap in time. A negative amount may be a
 * credit; a bill that ends before it begins was rejected on reading. Bills carry no flags: they are told alone.
 */
export function checkBills(table: Table): Finding[] {
  const [from, to, energy, demand] = ['from', 'to', 'energy_j', 'demand_w'].map((name) => numbers(table, name));
  const tariffs = texts(table, 'tariff');
  const at = (kind: Finding['kind'], row: number) => ({
    kind,
    where: `bills of ${tariffs[row]}`,
    binId: null,
    fromMs: from[row],
    toMs: to[row],
    cells: 0,
  });
  const out: Finding[] = [];
  for (const row of tariffs.keys()) {
    if (energy[row] < 0)
      out.push({
        ...at('spike', row),
        text: `A bill of ${tariffs[row]} has an energy of ${told(energy[row] / J_PER_KWH)} kWh, below zero; no share of it is told.`,
        advice: 'Correct the energy in the file; a credit belongs into the amount.',
      });
    if (demand[row] < 0)
      out.push({
        ...at('spike', row),
        text: `A bill of ${tariffs[row]} has a demand of ${told(demand[row] / 1000)} kW, below zero.`,
        advice: 'Correct the demand in the file.',
      });
  }
  for (const tariff of new Set(tariffs)) {
    const rows = [...tariffs.keys()].filter((row) => tariffs[row] === tariff).sort((a, b) => from[a] - from[b]);
    // One long bill may lie over several that follow it.
    let longest = rows[0];
    for (const row of rows.slice(1)) {
      if (from[row] < to[longest])
        out.push({
          ...at('duplicate', row),
          toMs: Math.min(to[row], to[longest]),
          text: `Two bills of ${tariff} lie over each other for ${days(Math.min(to[row], to[longest]) - from[row])}; both are shown, and the days count once.`,
          advice:
            'See whether a bill is entered twice or ends on another day, or whether each meter should have a tariff of its own.',
        });
      if (to[row] > to[longest]) longest = row;
    }
  }
  return out;
}

const told = (value: number) => String(Number(value.toFixed(1)));

function days(ms: number): string {
  const count = Math.max(1, Math.round(ms / 86_400_000));
  return count === 1 ? '1 day' : `${count} days`;
}
