/** A moment of the day on which a target was reached: what is reached at midnight was reached on the day that ended. @param ms  from when on it is, UTC */
export const reachedDay = (ms: number): number => ms - 1;
