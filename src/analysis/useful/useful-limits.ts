import type { Season } from '../../season/season.ts';

/** From where on an hour counts as doing something, where season.yaml does not say. Half a point is what cables tell apart and what a market pays for; 2 degF is what they tell apart in temperature (the kit's choice). */
export const USUAL_LIMITS = { moistureWb: 0.005, temperatureK: 2 / 1.8 } as const;

export interface Limits {
  moistureWb: number;
  temperatureK: number;
}

export function usefulLimits({ usefulHours }: Pick<Season, 'usefulHours'>): Limits & { stated: boolean } {
  const { moistureWb = null, temperatureK = null } = usefulHours ?? {};
  return {
    moistureWb: moistureWb ?? USUAL_LIMITS.moistureWb,
    temperatureK: temperatureK ?? USUAL_LIMITS.temperatureK,
    stated: moistureWb !== null || temperatureK !== null,
  };
}
