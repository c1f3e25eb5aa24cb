export const HOUR_MS = 3_600_000;

/** The air's day: a running mean over it is free of the daily wave. */
export const DAY_H = 24;

/** Air this much cooler or warmer than the grain, K, is clearly so: the least change that counts as a front. */
export const CLEARLY_K = 3;

/**
 * Where a fan is switched on after a long rest, less will do, K: parts of the grain lie above its mean, evaporation adds
 * to cooling, and what the sensors then show decides whether a front went through.
 */
export const CLEARLY_AT_START_K = 2;

/** A change under this, K, is no front. @source definition of `front arrival` in the kit's season format */
export const LEAST_CHANGE_K = 3;

/**
 * A rest this long, h, ends a campaign. Night-only running rests 12 to 16 h and a rainy spell keeps a fan off for two to
 * three days while the front stands where it stood; after three days conduction and the weather have begun to blur it.
 */
export const LONG_REST_H = 72;

/** Fewer fan hours than this are no campaign: a test of the fan, a switch thrown by mistake. */
export const SHORTEST_CAMPAIGN_H = 6;

/** "Ahead": mean over this long, clock h, before the campaign. @source definition of `front arrival` */
export const AHEAD_H = 12;

/** "Behind": mean over these fan hours after the steepest change. @source definition of `front arrival` */
export const BEHIND_FROM_H = 6;
export const BEHIND_TO_H = 30;

/** A front has passed half-way when the temperature stays on the far side this long, fan hours. */
export const HELD_H = 3;

/** Readings farther apart than this around the arrival, fan hours, cannot tell it within six. */
export const WIDEST_GAP_H = 12;

/** Fan log unknown for longer than this between start and arrival, h: the fan hours until then are not known. */
export const UNKNOWN_H = 6;

/** Air readings farther than this from a fan hour, h, say nothing of it. */
export const AIR_GAP_H = 6;

/** Grain readings farther than this from a fan hour, h, say nothing of it. */
export const GRAIN_GAP_H = 36;

/** Other air than before: at this distance, K, a sensor warmed (or cooled) between campaign start and front starts anew. */
export const DRIFT_K = 1.5;

/** Least airflow that is still aeration, cfm per bushel: sets how long a front may take to the first sensor. */
export const LEAST_CFM_PER_BUSHEL = 0.05;

/**
 * Nine of ten arrivals lie within these fan hours of the truth: 90 % interval of one.
 * Proven on seasons of known truth by tests/analysis/fronts and tests/sample.
 */
export const ARRIVAL_WITHIN_H = 6;
