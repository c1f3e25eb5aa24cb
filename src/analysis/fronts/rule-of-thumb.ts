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
