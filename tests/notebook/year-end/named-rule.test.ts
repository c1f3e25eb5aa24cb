import { describe, expect, it } from 'vitest';
import { playedBins } from '../../../src/notebook/strategy-words.ts';
import { seenByName } from '../../../src/notebook/year-end/grouped.ts';
import { otherRule } from '../../../src/notebook/year-end/measures-of.ts';
import { exampleInput } from '../../report/example-review.ts';
import { seasonOf } from '../strategy-example.ts';

const { units } = exampleInput();

describe('another rule on the first page of a year-end report', () => {
  // “Set the controller to …” and “… would have brought it to 14.0 %” stood there for a farm of four bins, without a bin.
  it('names the bin whose controller is to be set, and of which it tells', () => {
    const [measure] = otherRule(playedBins(seasonOf({}))[0], units);
    expect(measure.todo).toBe('Set the controller of North 36 to “humidity limit” and let it rest at 15.0 %.');
    expect(seenByName(measure)).toMatch(/^North 36: “Humidity limit” would have brought it to 15\.0 %/);
  });

  it('says a name once', () => {
    const [measure] = otherRule(playedBins(seasonOf({}))[0], units);
    expect(seenByName({ ...measure, seen: 'North 36 went out drier than the base.' })).toBe(
      'North 36 went out drier than the base.',
    );
    expect(seenByName({ ...measure, kind: 'stop-when-through', seen: 'Both ran on.' })).toBe('Both ran on.');
  });

  it('names a bin that is called 1, whatever numbers are told', () => {
    const [measure] = otherRule(playedBins(seasonOf({}))[0], units);
    const [review] = measure.bins;
    const one = { ...review, bin: { ...review.bin, name: '1' } };
    expect(seenByName({ ...measure, bins: [one], seen: 'It would have cost 1,500 USD, 13.1 % moist.' })).toMatch(
      /^1: It/,
    );
  });

  it('names the bin whose rule is to be kept', () => {
    const [held] = otherRule(playedBins(seasonOf({ why: 'No log.', pick: null, logged: null }))[0], units);
    expect(held.todo).toMatch(/^Keep the rule of North 36 as it is/);
  });
});
