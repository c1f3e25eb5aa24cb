import { DRAWN } from '../model/may-be.ts';

/** How many runs the ranges of costs by the model span. */
export const RUNS = 1 + DRAWN;
/** Which those are, in words. */
export const DOUBTS = `lowest and highest in the bin as fitted and in ${DRAWN} that go with the log as well`;
