import { describe, expect, it } from 'vitest';
import { UsageError } from '../../../scripts/command-line.ts';
import { type SweepText, sweepOptions } from '../../../scripts/sweep/sweep-options.ts';

const problemsOf = (text: SweepText): string[] => {
  try {
    sweepOptions(text);
  } catch (error) {
    if (error instanceof UsageError) return error.problems.map(({ message }) => message);
    throw error;
  }
  return [];
};

describe('sweepOptions', () => {
  it('reads years, ranges and the season', () => {
    expect(sweepOptions({ years: '2025,1998-2000,season,1999' }).weathers).toEqual([
      'season',
      '1998',
      '1999',
      '2000',
      '2025',
    ]);
    expect(sweepOptions({}).weathers).toBeNull();
  });

  it('moves one thing at a time, the bin as it is first', () => {
    expect(sweepOptions({}).variants).toHaveLength(1);
    const { variants } = sweepOptions({ vary: 'all' });
    expect(variants).toHaveLength(1 + 5 + 4 + 4);
    const moved = variants.map(
      (one) => Number(one.airflowFactor !== 1) + Number(one.fillDays !== 0) + Number(one.startPoints !== 0),
    );
    expect(moved).toEqual([0, ...new Array(13).fill(1)]);
  });

  it('searches in hindsight, which regret is told against, unless told not to', () => {
    expect(sweepOptions({}).strategies).toContain('best-in-hindsight');
    expect(sweepOptions({ hindsight: false }).strategies).not.toContain('best-in-hindsight');
    expect(sweepOptions({ strategies: 'always-on' }).strategies).toEqual(['always-on']);
    expect(problemsOf({ strategies: 'best-in-hindsight', hindsight: false })).toEqual([
      expect.stringMatching(/^--strategies names best-in-hindsight, and --no-hindsight leaves it out/),
    ]);
  });

  it('takes rules with parameters by one name each, and tells all that is wrong with them', () => {
    const strategies =
      'humidity-limit, humidity-limit with rh 60%,humidity-limit with  rh 60 %, night-hours with to 6 h';
    expect(sweepOptions({ strategies }).strategies).toEqual([
      'humidity-limit',
      'humidity-limit with rh 60 %',
      'night-hours with to 6 h',
    ]);
    const wrong = 'humidity-limt with rh 60 %,humidity-limit with rh 140 % and hr 60 %,as-logged with rh 60 %';
    expect(problemsOf({ strategies: wrong, workers: '0' })).toEqual([
      expect.stringMatching(/^--strategies names "humidity-limt"; .*Did you mean "humidity-limit"\?$/),
      '--strategies: humidity-limit: rh is "140 %"; 20 % to 100 % is allowed, 70 % is usual.',
      '--strategies: humidity-limit has no parameter "hr"; it has rh (20 % to 100 %, usually 70 %).',
      '--strategies has "as-logged with rh 60 %"; as-logged has no parameters. Leave out what follows it.',
      expect.stringMatching(/^--workers/),
    ]);
    expect(problemsOf({ strategies: ',' })).toEqual([expect.stringMatching(/^--strategies names nothing; there are /)]);
  });

  it('tells all that is wrong at once, with the nearest spelling', () => {
    const told = problemsOf({
      years: '20,2003-1999',
      strategies: 'alway-on,humidity',
      vary: 'air',
      by: '02-30,2-1',
      workers: '0',
      shard: '3/2',
    });
    expect(told).toHaveLength(9);
    expect(told[2]).toMatch(/^--strategies names "alway-on".*Did you mean "always-on"\?$/);
    expect(told[3]).toMatch(/Did you mean "humidity-limit"\?$/);
    expect(problemsOf({ by: '02-29', shard: '2/2', workers: '3' })).toEqual([]);
  });
});
