/** Hours times cfm per bushel that a cooling front takes through a bed, as a planning figure. */
export const RULE_OF_THUMB_HOURS = 15;

/**
 * Planning figure for the fan hours that a cooling front takes through a bed.
 *
 * A clean bed model puts the middle of the front at the top after about half to three quarters of it; slow in cold air,
 * uneven airflow or a peaked surface need more.
 *
 * @param cfmPerBushel  airflow, cfm per bushel of 1.2445 ft3, > 0
 * @returns             hours with the fan on
 * @throws              RangeError for an airflow that is not above zero
 * @source  Iowa State University Extension, Cool stored grain now, 28 Oct 2021: 15 divided by cfm per bushel
 */
export function ruleOfThumbHours(cfmPerBushel: number): number {
  if (!(cfmPerBushel > 0)) throw new RangeError(`cfmPerBushel is ${cfmPerBushel}; it must be above 0.`);
  return RULE_OF_THUMB_HOURS / cfmPerBushel;
}

/** The handbook's hours at 1 cfm per bushel by season; they fall as the airflow rises. */
export const HANDBOOK_HOURS = { fall: 15, winter: 20, spring: 12 } as const;

/**
 * The handbook's fan hours of a front through a bed: cooling in fall and winter, warming in spring.
 *
 * @param cfmPerBushel  > 0
 * @throws              RangeError for an airflow that is not above zero
 * @source  MWPS-13, Grain Drying, Handling and Storage Handbook, table of cooling times (from memory, not checked)
 */
export function handbookHours(season: keyof typeof HANDBOOK_HOURS, cfmPerBushel: number): number {
  return (HANDBOOK_HOURS[season] / RULE_OF_THUMB_HOURS) * ruleOfThumbHours(cfmPerBushel);
}
