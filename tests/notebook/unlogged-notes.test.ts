import { expect, it } from 'vitest';
import { unloggedNotes } from '../../src/notebook/unlogged-notes.ts';
import { exampleInput } from '../report/example-review.ts';

const [bin] = exampleInput().review.bins;
const withFans = (fanIds: string[], doubt?: string) => ({
  ...bin,
  bin: { ...bin.bin, fanIds },
  fan: { ...bin.fan, ...(doubt === undefined ? null : { doubt }) },
});

it('says of a bin of which one fan has no log what goes by the other’s hours, and what that does to it', () => {
  expect(unloggedNotes([withFans(['F1', 'F2'])], 'fronts')).toEqual([
    `${bin.bin.name}: No log tells what fan F2 did. Campaigns, arrivals and fan hours here are by the runs of fan F1 alone: where fan F2 ran without it the hours are too few, and a front may be told late or not at all.`,
  ]);
  const [moisture] = unloggedNotes([withFans(['F1', 'F2', 'F3'])], 'moisture');
  expect(moisture).toContain('No log tells what fans F2 and F3 did. Still air here is that of fan F1 at rest');
});

it('and nothing where every fan has its log, or where the whole bin goes without one', () => {
  expect(unloggedNotes([withFans(['F1']), withFans(['F2']), withFans(['F1', 'F2'], 'Left out.')], 'fronts')).toEqual(
    [],
  );
});
