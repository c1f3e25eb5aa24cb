import { median } from '../../base/stats/quantile.ts';
import { onAt } from '../fan/spans.ts';
import { FAN_ON, type FanSpans } from '../types.ts';
import type { AirLog } from './air-log.ts';
import { betweenReadings } from './between-readings.ts';
import type { FanPieces } from './fan-pieces.ts';
import { AIR_GAP_H, HOUR_MS } from './front-limits.ts';

/** So many plenum readings beside outdoor ones tell the fan's warming better than the stated figure. */
const ENOUGH_PAIRS = 24;

/** The air that enters the grain in each piece of fan-on time. */
export interface EnteringAir {
  /** [pieces]; NaN where neither plenum nor weather tells it */
  tempC: Float64Array;
  /** [pieces]; 1 where the plenum told it */
  fromPlenum: Uint8Array;
  /** what the weather's temperature was raised by, K, and whether the plenum's readings told it */
  warmingK: number;
  warmingFrom: 'plenum' | 'stated' | 'none';
}

/**
 * Plenum temperature where it was logged with the fan on, else outdoor temperature plus the fan's warming. Air that is
 * drawn down enters at the top, from outdoors and not yet warmed by the fan; the plenum then holds what has left the grain.
 *
 * @param statedK  warming where the plenum does not tell it, K
 */
export function enteringAir(
  pieces: Pick<FanPieces, 'midMs'>,
  spans: FanSpans,
  plenum: AirLog,
  weather: AirLog,
  direction: 'up' | 'down',
  statedK: number,
): EnteringAir {
  const outdoor = betweenReadings(weather.timeMs, weather.tempC, pieces.midMs, AIR_GAP_H * HOUR_MS);
  const fromPlenum = new Uint8Array(pieces.midMs.length);
  if (direction === 'down') return { tempC: outdoor, fromPlenum, warmingK: 0, warmingFrom: 'none' };

  const running = [...plenum.timeMs.keys()].filter((row) => onAt(spans, plenum.timeMs[row]) === FAN_ON);
  const logged = betweenReadings(
    Float64Array.from(running, (row) => plenum.timeMs[row]),
    Float64Array.from(running, (row) => plenum.tempC[row]),
    pieces.midMs,
    AIR_GAP_H * HOUR_MS,
  );
  const raised = logged.map((tempC, i) => tempC - outdoor[i]).filter((deltaK) => !Number.isNaN(deltaK));
  const measured = raised.length >= ENOUGH_PAIRS;
  const warmingK = measured ? median(raised) : statedK;
  const tempC = logged.map((value, i) => {
    if (Number.isNaN(value)) return outdoor[i] + warmingK;
    fromPlenum[i] = 1;
    return value;
  });
  return { tempC, fromPlenum, warmingK, warmingFrom: measured ? 'plenum' : 'stated' };
}
