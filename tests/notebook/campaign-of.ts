import type { Campaign, FrontArrival } from '../../src/analysis/types.ts';

const HOUR = 3_600_000;

/** A sensor by hand: `[cable, sensor, height, what it did]`; a number is the fan hours of its arrival. */
export function sensorOf(
  cable: string,
  sensor: number,
  heightM: number,
  did: number | Partial<FrontArrival>,
  startMs = 0,
): FrontArrival {
  const came = typeof did === 'number';
  return {
    cable,
    sensor,
    heightM,
    arrivedMs: came ? startMs + did * HOUR : null,
    fanHours: came ? did : null,
    aheadC: came ? 18 : null,
    behindC: came ? 8 : null,
    why: came ? null : 'given by hand',
    ...(came ? {} : did),
  };
}

/** A campaign by hand: air of 8 C into grain of 18 C unless told otherwise. */
export function campaignOf(arrivals: readonly FrontArrival[], more: Partial<Campaign> = {}): Campaign {
  return {
    number: 1,
    kind: 'cooling',
    span: { fromMs: 0, toMs: 100 * HOUR },
    fanHours: 100,
    airC: 8,
    grainC: 18,
    airFrom: 'plenum',
    arrivals,
    ...more,
  };
}
