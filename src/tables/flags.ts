/** Why a reading that can be read is not believed. Bits of the `*_flags` columns; 0 is a reading in good standing. */
export const FLAGS = { stuck: 1, spike: 2, headspace: 4, duplicate: 8, clock: 16, unit: 32 } as const;

export type FlagName = keyof typeof FLAGS;
