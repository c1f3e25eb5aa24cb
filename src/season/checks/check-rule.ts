import type { Finding } from '../loaded.ts';
import { HOUR_MS } from './track.ts';

/** What a check does, for the data-quality page; made from the constants that the check itself uses. */
export interface CheckRule {
  flag: Finding['kind'];
  title: string;
  /** a sentence or two */
  rule: string;
  /** by the name they have in the code; SI, fractions */
  constants: Record<string, number | string>;
}

export const percent = (fraction: number) => `${Math.round(fraction * 100)} %`;
export const points = (fraction: number) =>
  `${Number((fraction * 100).toFixed(2))} point${fraction === 0.01 ? '' : 's'}`;
/** a difference, as both kinds of reader say it */
export const kelvin = (deltaK: number) => `${deltaK} °C (${Number((deltaK * 1.8).toFixed(1))} °F)`;
export const celsius = (tempC: number) => `${tempC} °C (${Math.round(tempC * 1.8 + 32)} °F)`;
export const hours = (ms: number) => `${ms / HOUR_MS} hours`;
