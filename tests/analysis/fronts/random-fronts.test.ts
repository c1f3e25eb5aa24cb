import { describe, expect, it } from 'vitest';
import type { Campaign } from '../../../src/analysis/types.ts';
import { CONTINUOUS, choppy, NIGHT_ONLY, type Running, randomScenario } from './random-scenarios.ts';
import { type Played, play, type Scenario, speedOf } from './scenario.ts';

const SCENARIOS = 64;
const WITHIN_H = 6;

interface Count {
  known: number;
  good: number;
}

/**
 * Of the sensors whose true arrival is known, those told within six fan hours. The bed is the tests' own, finer than the
 * kit's, and the truth is the contract's definition on its noise-free temperatures.
 *
 * @param told  [sensors], fan hours
 */
function count(told: readonly (number | null)[], truth: readonly (number | null)[], into: Count): void {
  truth.forEach((hours, i) => {
    if (hours === null) return;
    into.known += 1;
    const got = told[i];
    if (got !== null && Math.abs(got - hours) <= WITHIN_H) into.good += 1;
  });
}

/** Fan hours since the fan's first start, of the first cooling campaign that tells an arrival at each sensor. */
function toldHours({ fronts, fanHoursBefore }: Played): (number | null)[] {
  const cooling = fronts.campaigns.filter(({ kind }) => kind === 'cooling');
  const sensors = fronts.campaigns[0]?.arrivals.length ?? 0;
  const hoursOf = (campaign: Campaign, i: number) => {
    const { fanHours } = campaign.arrivals[i];
    return fanHours === null ? null : fanHours + fanHoursBefore(campaign.span.fromMs);
  };
  return Array.from({ length: sensors }, (_, i) => {
    for (const campaign of cooling) {
      const hours = hoursOf(campaign, i);
      if (hours !== null) return hours;
    }
    return null;
  });
}

/** Of the first campaigns' speeds told, how many of their 90 % intervals hold the bed's own: the cables' mean hours a metre. */
function countSpeed({ fronts }: Played, scenario: Scenario, into: Count): void {
  const speed = fronts.campaigns[0]?.speed?.speedMH.interval ?? null;
  if (speed === null) return;
  const hoursM = scenario.cableSpeeds.map((factor) => 1 / (speedOf(scenario) * factor));
  const truth = hoursM.length / hoursM.reduce((sum, one) => sum + one, 0);
  into.known += 1;
  if (speed[0] <= truth && truth <= speed[1]) into.good += 1;
}

function sweep(runningOf: (seed: number) => Running): {
  withDay: number;
  withoutDay: number;
  known: number;
  speeds: Count;
} {
  const withDay = { known: 0, good: 0 };
  const withoutDay = { known: 0, good: 0 };
  const speeds = { known: 0, good: 0 };
  for (let seed = 0; seed < SCENARIOS; seed++) {
    const scenario = randomScenario(seed, runningOf(seed));
    const played = play(scenario);
    countSpeed(played, scenario, speeds);
    const told = toldHours(played);
    count(told, played.truth, withDay);
    count(told, played.truthWithoutDay, withoutDay);
  }
  return {
    withDay: withDay.good / withDay.known,
    withoutDay: withoutDay.good / withoutDay.known,
    known: withDay.known,
    speeds,
  };
}

describe(`${SCENARIOS} invented bins, 0.05 to 1.2 cfm/bu, daily waves of 2 to 8 K, noise up to 0.3 K, logs every 1 to 6 h`, () => {
  it.each([
    { name: 'continuous', runningOf: () => CONTINUOUS },
    { name: 'night-only', runningOf: () => NIGHT_ONLY },
    { name: 'choppy', runningOf: (seed: number) => choppy(seed + 1) },
  ])('$name: nine of ten arrivals within six fan hours', ({ name, runningOf }) => {
    const { withDay, withoutDay, known, speeds } = sweep(runningOf);
    console.info(
      `front arrivals within ${WITHIN_H} fan hours, ${name}: ${(100 * withDay).toFixed(1)} % of ${known}; against the truth without the daily wave ${(100 * withoutDay).toFixed(1)} %`,
    );
    console.info(`front speeds, ${name}: ${speeds.good} of ${speeds.known} intervals hold the bed’s`);
    expect(known).toBeGreaterThan(900);
    // The bed's speed is that of its cables; the intervals also stand for the grain between, so they hold it more often than nine times in ten.
    expect(speeds.known).toBeGreaterThan(50);
    expect(speeds.good / speeds.known).toBeGreaterThanOrEqual(0.9);
    expect(withDay).toBeGreaterThanOrEqual(0.9);
    expect(withoutDay).toBeGreaterThanOrEqual(0.9);
  });
});

describe('where the campaign begins', () => {
  it('is the moment the fan first starts into clearly warmer grain', () => {
    for (let seed = 0; seed < 24; seed++) {
      const { fronts, firstOnMs } = play(randomScenario(seed, CONTINUOUS));
      expect(fronts.campaigns[0].span.fromMs, `seed ${seed}`).toBe(firstOnMs);
      expect(fronts.campaigns[0].kind).toBe('cooling');
    }
  });
});
