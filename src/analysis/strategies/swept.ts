import type { SweepSummary } from './sweep-summary.ts';

/** What a sweep that stands beside a season says, or a sentence why it can't be taken. */
export type Swept = { summary: SweepSummary; why: null } | { summary: null; why: string };
