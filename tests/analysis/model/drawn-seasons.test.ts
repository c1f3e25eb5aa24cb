import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { BADNESS } from '../../../scripts/bench/model/made-bad.ts';
import { modelCases } from '../../../scripts/bench/model/model-cases.ts';

// Seasons of a finer bed than the kit's, with its own equations, uneven air and sensors that err; `npm run bench -- model` has more.
const work = mkdtempSync(join(tmpdir(), 'fanbook-model-'));
afterAll(() => rmSync(work, { recursive: true, force: true }));

describe('a bed fitted to the log of a drawn season', { timeout: 240_000 }, () => {
  // 10403: wheat dried, of which no plenum tells the fan's warming; by its power alone the airflow was 20 % too low. 3005: corn and
  // soybeans dried, whose cables work by another isotherm than the grain follows, which nobody states: the sensors end 1.3 and 0.7 points
  // off, and the corn's end comes out 0.35 off, within its interval. 8110: wheat with five cables, whose loads were weighed in and out.
  // 9511: corn to hold, whose fan ran for 104 hours in all, into December: by twenty layers and air of one density its airflow was 14 % too
  // high. 3001, 9519: three bins whose airflow is not told.
  it.each([
    [3001, { bins: 2, flows: 0, ends: 0, off: '' }],
    [9519, { bins: 1, flows: 0, ends: 0, off: '' }],
    [10403, { bins: 1, flows: 1, ends: 0, off: '' }],
    [3005, { bins: 2, flows: 0, ends: 2, off: '3005 B1, corn to dry' }],
    [8110, { bins: 1, flows: 1, ends: 1, off: '' }],
    [9511, { bins: 1, flows: 1, ends: 1, off: '' }],
  ])('finds airflow, end moisture and unseen temperatures of season %i, where it tells them', async (seed, least) => {
    const cases = await modelCases(seed, work);
    expect(cases).toHaveLength(least.bins);
    for (const one of cases) {
      expect(one.trusted, one.why).toBe(true);
      expect(one.unseenK).toBeLessThan(1.5);
    }
    const flows = cases.filter((one) => !Number.isNaN(one.flowOff));
    expect(flows.length).toBeGreaterThanOrEqual(least.flows);
    for (const one of flows) {
      expect(Math.abs(one.flowOff), one.bin).toBeLessThan(0.1);
      expect(one.flowHeld).toBe(true);
    }
    const ends = cases.filter((one) => !Number.isNaN(one.endOff));
    expect(ends.length).toBeGreaterThanOrEqual(least.ends);
    for (const one of ends) {
      // That one is told to 0.41 point (90 %); its interval has to hold all the same.
      expect(Math.abs(one.endOff), one.bin).toBeLessThan(one.bin === least.off ? 0.41 : 0.3);
      expect(one.endHeld).toBe(true);
    }
  });

  it.each([
    ['sensors swapped', 3014],
    ['depth too small', 3014],
    ['depth too large', 3014],
    ['fan log shifted', 3014],
    ['floor leaks two thirds', 3014],
    ['floor leaks a half', 9519],
    ['floor leaks a third', 9519],
  ] as const)('is not trusted with %s', async (id, seed) => {
    const bad = BADNESS.find((one) => one.id === id);
    expect(bad).toBeDefined();
    for (const one of await modelCases(seed, work, bad)) expect(one.trusted, one.bin).toBe(false);
  });
});
