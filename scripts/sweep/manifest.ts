import { z } from 'zod';
import type { SweepPlan } from '../../src/analysis/strategies/sweep-plan.ts';
import { type Shard, shardName } from './sweep-folder.ts';

/** What a shard says of itself. */
export interface Manifest {
  format: 1;
  shard: Shard;
  /** planned for it, and rows in its file: the same where it is whole */
  jobs: number;
  rows: number;
  /** beside the manifest */
  file: string;
  /** hex, of the file's bytes */
  sha256: string;
  /** of the whole sweep */
  plan: SweepPlan;
}

const whole = z.number().int().min(0);
const variant = z.strictObject({ airflowFactor: z.number(), fillDays: z.number(), startPoints: z.number() });

export const PLAN_SHAPE: z.ZodType<SweepPlan> = z.strictObject({
  format: z.literal(1),
  kit: z.strictObject({ version: z.string(), code: z.string() }),
  season: z.strictObject({ title: z.string(), sha256: z.string(), currency: z.string() }),
  strategies: z.array(z.string()),
  variants: z.array(variant),
  by: z.array(z.string()),
  bins: z.array(
    z.strictObject({
      id: z.string(),
      name: z.string(),
      bushels: z.number().nullable(),
      startOn: z.string().nullable(),
      weathers: z.array(z.string()),
    }),
  ),
});

export const MANIFEST_SHAPE: z.ZodType<Manifest> = z
  .strictObject({
    format: z.literal(1),
    shard: z.strictObject({ index: whole.min(1), of: whole.min(1) }),
    jobs: whole,
    rows: whole,
    file: z.string().regex(/^[\w-]+\.parquet$/),
    sha256: z.string().regex(/^[0-9a-f]{64}$/),
    plan: PLAN_SHAPE,
  })
  .refine(({ shard, file }) => shard.index <= shard.of && file === `${shardName(shard)}.parquet`);
