import type { Zone } from '../../base/zone.ts';
import { HOUR_MS, type LocalMoment, localMoment } from '../../money/local-time.ts';
import type { Tariff } from '../../money/tariff.ts';
import { whenHolds } from '../../money/when-holds.ts';
import type { Hours } from '../../simulation/run/hours.ts';

const DAY_MS = 24 * HOUR_MS;
/** Of an hour within which a price may change. */
const QUARTERS = 4;

/** The part of `Hours` that clock and tariff make. */
export type ClockAndPrices = Pick<Hours, 'localHour' | 'localMonth' | 'localDay' | 'pricePerKwh' | 'demand'>;

/**
 * Local clock and prices hour by hour. An hour within which a price changes has the mean of its quarters; a demand rule
 * holds where it holds for any of them.
 *
 * @param tariff   null: no price is known, NaN
 * @param startMs  UTC, start of the first hour
 * @param count    hours
 */
export function hoursOfTariff(tariff: Tariff | null, zone: Zone, startMs: number, count: number): ClockAndPrices {
  const localHour = new Uint8Array(count);
  const localMonth = new Uint8Array(count);
  const localDay = new Uint16Array(count);
  const pricePerKwh = new Float64Array(count).fill(Number.NaN);
  const rules = tariff?.demand ?? [];
  const demand = rules.map((rule) => ({
    pricePerKw: rule.pricePerKw,
    ratchet: rule.ratchet ?? 0,
    holds: new Uint8Array(count),
  }));
  const cuts = tariff !== null && cutsHours(tariff);
  const firstDay = dayNumber(localMoment(zone, startMs));
  for (let hour = 0; hour < count; hour++) {
    const first = localMoment(zone, startMs + hour * HOUR_MS);
    localHour[hour] = Math.floor(first.minute / 60);
    localMonth[hour] = first.month;
    localDay[hour] = dayNumber(first) - firstDay;
    if (tariff === null) continue;
    const parts = cuts || first.minute % 60 !== 0 ? QUARTERS : 1;
    let sum = 0;
    for (let part = 0; part < parts; part++) {
      const at = part === 0 ? first : localMoment(zone, startMs + (hour + part / QUARTERS) * HOUR_MS);
      sum += priceAt(tariff, at);
      for (let r = 0; r < rules.length; r++) if (whenHolds(rules[r].when, at)) demand[r].holds[hour] = 1;
    }
    pricePerKwh[hour] = sum / parts;
  }
  return { localHour, localMonth, localDay, pricePerKwh, demand };
}

/** Whether some rule begins or ends within a full hour of the clock. */
function cutsHours({ energy, demand }: Tariff): boolean {
  return [...energy, ...demand].some(({ when }) => when?.hours?.some((bounds) => bounds.some((one) => one % 60 !== 0)));
}

function priceAt(tariff: Tariff, at: LocalMoment): number {
  for (const { when, pricePerKwh } of tariff.energy) if (whenHolds(when, at)) return pricePerKwh;
  return Number.NaN;
}

function dayNumber({ year, month, day }: LocalMoment): number {
  return Math.round(Date.UTC(year, month - 1, day) / DAY_MS);
}
