import type { Finding } from '../loaded.ts';
import { LIMITS } from './limits.ts';

/** What a check does, for the data-quality page; made from the constants that the check itself uses. */
export interface CheckRule {
  flag: Finding['kind'];
  title: string;
  /** a sentence or two */
  rule: string;
  /** by the name they have in the code; SI, fractions */
  constants: Record<string, number | string>;
}

const percent = (fraction: number) => `${Math.round(fraction * 100)} %`;

export const CHECK_RULES: readonly CheckRule[] = [
  {
    flag: 'spike',
    title: 'Impossible values',
    rule: `A value that neither grain nor air can have: temperature outside ${LIMITS.tempC[0]} to ${LIMITS.tempC[1]} °C, moisture outside ${percent(LIMITS.moistureWb[0])} to ${percent(LIMITS.moistureWb[1])}, humidity outside ${percent(LIMITS.rh[0])} to ${percent(LIMITS.rh[1])}, static pressure beyond ${LIMITS.staticPressurePa[1]} Pa.`,
    constants: { tempLowC: LIMITS.tempC[0], tempHighC: LIMITS.tempC[1] },
  },
];
