import { z } from 'zod';
import { interval, number, why } from '../summary-cells.ts';
import { DOUBTS } from './doubts.ts';

const byModel = 'by the fitted model';

/** The block `crossed` of `summary.json`. */
export const CROSSED_SHAPE = z.strictObject({
  ways: z
    .array(
      z.strictObject({
        id: z.string().describe('of a strategy, or "hours of" and a bin’s id: its logged hours'),
        bins: z.array(z.string()).describe('that were run so'),
        why: why.describe('why it can’t be run elsewhere; null where it can'),
      }),
    )
    .describe('the ways in which bins were run'),
  runs: z
    .array(
      z.strictObject({
        bin: z.string().describe('whose grain, fan, air and prices'),
        way: z.string(),
        own: z.boolean().describe('whether the bin was itself run so'),
        costPerBushel: number.describe(`money, ${byModel}`),
        costPerBushelInterval: interval.describe(DOUBTS),
        costPerBushelPoint: number.describe(`money, ${byModel}; bins to be dried alone`),
        costPerBushelPointInterval: interval.describe(DOUBTS),
        overOwn: number.describe(`times, cost over that of the bin’s own way, ${byModel}`),
        overOwnInterval: interval.describe('the same, each run over the same run of the own way'),
        reachedTarget: z.boolean().nullable(),
        runsReaching: z.int().nonnegative().describe('counted: of the runs those that reach the target'),
        runs: z.int().nonnegative().describe('counted: the bin as fitted and those that go with the log as well'),
        why,
      }),
    )
    .describe('each way on each bin whose model is trusted'),
  parts: z
    .array(
      z.strictObject({
        goal: z.enum(['dry', 'cool', 'condition', 'hold']),
        bins: z.array(z.string()).describe('of this goal with a trusted model'),
        ways: z.array(z.string()).describe('that bring each of them to its target'),
        binShare: number.describe(`fraction of the differences in the logarithm of cost per bushel, ${byModel}`),
        wayShare: number.describe(`fraction, the same of the way, ${byModel}`),
        restShare: number.describe(`fraction, what is neither’s alone, ${byModel}`),
        why,
      }),
    )
    .describe('cost parted into bin and way'),
  leftOut: z.array(z.strictObject({ bin: z.string(), why: z.string() })).describe('bins that no way could be run on'),
  why,
});

export type CrossedSummary = z.infer<typeof CROSSED_SHAPE>;
