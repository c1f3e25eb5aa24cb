import { describe, expect, it } from 'vitest';
import { adviceOnce } from '../../../src/analysis/model/advice-once.ts';
import { LOOK_FOR_LEAKS } from '../../../src/analysis/model/flow-checks.ts';
import { LEAKS_OR_POWER } from '../../../src/analysis/model/leak-checks.ts';

describe('what would help a model that is not trusted', () => {
  it('tells each sentence once', () => {
    const told = adviceOnce([`Check the thermometers. ${LOOK_FOR_LEAKS}`, LEAKS_OR_POWER, LOOK_FOR_LEAKS], false);
    expect(told).toHaveLength(2);
    expect(told.join(' ').split('Look for leaks')).toHaveLength(2);
    expect(told[0]).toMatch(/and log the static pressure\.$/);
    expect(told[1]).toMatch(/^See whether the fans’ meter has other loads/);
  });

  it('asks for no static pressure where it is logged', () => {
    // Gerste 9 (held out) had an hourly gauge and was told twice to log it.
    expect(adviceOnce([LOOK_FOR_LEAKS], true)).toEqual(['Look for leaks of floor, transition and hatches.']);
  });
});
