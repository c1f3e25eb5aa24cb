/** A moment from which a target is reached, as the day that is told: what is reached at midnight was reached that day. @param ms  UTC */
export const reachedDay = (ms: number): number => ms - 1;
