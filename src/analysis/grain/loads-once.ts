import type { Ticket } from '../moisture/tickets.ts';

const DAY_MS = 86_400_000;

/** Loads of one way, each once, and the rows taken to tell one a second time. */
export interface LoadsOnce {
  kept: Ticket[];
  doubles: Ticket[];
}

/** A scale weighs one truck at a time: the same moment and weight, and no other moisture, is the same load. */
export function loadsOnce(loads: readonly Ticket[]): LoadsOnce {
  const kept: Ticket[] = [];
  const doubles: Ticket[] = [];
  for (const one of loads) {
    const twin = kept.findIndex(
      (other) => other.timeMs === one.timeMs && other.netKg === one.netKg && sameMoisture(other, one),
    );
    if (twin < 0) kept.push(one);
    else {
      doubles.push(one);
      if (Number.isNaN(kept[twin].moistureWb)) kept[twin] = one;
    }
  }
  return { kept, doubles };
}

function sameMoisture(a: Ticket, b: Ticket): boolean {
  return a.moistureWb === b.moistureWb || Number.isNaN(a.moistureWb) || Number.isNaN(b.moistureWb);
}

/** All tickets bear one time of day (one hour apart where the clock changed between them): dates alone. */
export function bareDates(tickets: readonly Ticket[]): boolean {
  const times = new Set(tickets.map((one) => ((one.timeMs % DAY_MS) + DAY_MS) % DAY_MS));
  const days = new Set(tickets.map((one) => Math.floor(one.timeMs / DAY_MS)));
  return times.size === 1 ? days.size > 1 || tickets.length > 2 : times.size === 2 && isHourApart([...times]);
}

function isHourApart([a, b]: number[]): boolean {
  const apart = Math.abs(a - b);
  return apart === DAY_MS / 24 || apart === (23 * DAY_MS) / 24;
}

/** Words for rows left out, with the way they went; empty where none is. */
export function countedOnce(doubles: number, way: 'in' | 'out'): string {
  if (doubles === 0) return '';
  return `${doubles} scale ticket${doubles > 1 ? 's' : ''} ${way} with the moment, weight and moisture of another counted once.`;
}
