import type { Zone } from '../../base/zone.ts';
import { HOUR_MS, type LocalMoment, localMoment } from '../../money/local-time.ts';
import type { Tariff } from '../../money/tariff.ts';
import { whenHolds } from '../../money/when-holds.ts';
import type { Hours } from '../../simulation/run/hours.ts';

const DAY_MS = 24 * HOUR_MS;
/** Quarters of an hour after its first. */
const LATER = [0.25, 0.5, 0.75];

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
    const whole = !cuts && first.minute % 60 === 0;
    const quarters = whole ? [first] : [first, ...LATER.map((q) => localMoment(zone, startMs + (hour + q) * HOUR_MS))];
    pricePerKwh[hour] = quarters.reduce((sum, at) => sum + priceAt(tariff, at), 0) / quarters.length;
    rules.forEach((rule, r) => {
      if (quarters.some((at) => whenHolds(rule.when, at))) demand[r].holds[hour] = 1;
    });
  }
  return { localHour, localMonth, localDay, pricePerKwh, demand };
}

/** Whether some rule begins or ends within a full hour of the clock. */
function cutsHours({ energy, demand }: Tariff): boolean {
  return [...energy, ...demand].some(({ when }) => when?.hours?.some((bounds) => bounds.some((one) => one % 60 !== 0)));
}

function priceAt(tariff: Tariff, at: LocalMoment): number {
  return tariff.energy.find(({ when }) => whenHolds(when, at))?.pricePerKwh ?? Number.NaN;
}

function dayNumber({ year, month, day }: LocalMoment): number {
  return Math.round(Date.UTC(year, month - 1, day) / DAY_MS);
}
