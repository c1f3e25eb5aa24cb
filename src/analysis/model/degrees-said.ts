/** A difference of temperature in both systems: a page shows the one of its reader. */
export const degreesSaid = (deltaK: number): string => `${deltaK.toFixed(1)} °C (${(1.8 * deltaK).toFixed(1)} °F)`;
