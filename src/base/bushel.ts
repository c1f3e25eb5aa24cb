/** A bushel by volume as the US trade reckons it, ft3 (2150.42 in3 over 12^3). */
export const BUSHEL_FT3 = 1.2445;

/** The same in m3. */
export const BUSHEL_M3 = BUSHEL_FT3 * 0.3048 ** 3;
