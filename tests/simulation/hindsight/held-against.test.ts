import { describe, expect, it } from 'vitest';
import { bestInHindsight } from '../../../src/simulation/hindsight/best-in-hindsight.ts';
import { heldAgainst } from '../../../src/simulation/hindsight/held-against.ts';
import { hindsightSchedule, writtenSchedule } from '../../../src/simulation/hindsight/hindsight-schedule.ts';
import { runSeason } from '../../../src/simulation/run/run-season.ts';
import { scheduled } from '../../../src/simulation/strategies/scheduled.ts';
import { STRATEGIES } from '../../../src/simulation/strategies/strategies.ts';
import { untilReached } from '../../../src/simulation/strategies/until-reached.ts';
import { invented, smallBin } from './small-bin.ts';

const DAYS = 40;
/** A fall that ends in a winter: left alone the bin is cold in the end. */
const FALL = invented(DAYS, 0.7, 4);
const COLDER = { ...FALL, tempC: FALL.tempC.map((tempC, hour) => tempC + 8 - hour / 30) };
const SPEC = smallBin(COLDER, 0.16, null, { goal: 'cool', targetC: 3, blower: { airM3M2S: 0.025 } });
const RULES = STRATEGIES.filter(({ heater }) => heater === undefined);
const asRun = RULES.map((one) => untilReached(one, SPEC.goal));
const outcomes = asRun.map((one) => runSeason(SPEC, one).outcome);
/** The fan runs in the last two days alone, or always. */
const LATE = Float64Array.from({ length: SPEC.endHour }, (_, hour) => (hour >= SPEC.endHour - 48 ? 1 : 0));
const EARLY = LATE.map(() => 1);
const late = scheduled('late', 'Late', LATE);
const early = scheduled('early', 'Early', EARLY);
const outcomeOf = (log: typeof late) => runSeason(SPEC, log).outcome;
const named = RULES.findIndex(({ id }) => id === 'temperature-difference');

describe('what a schedule in hindsight is held against', () => {
  it('is the day of the rule named where the log was later, and the harder wear of the two', () => {
    const log = outcomeOf(late);
    expect([log.reachedTarget, outcomes[named].reachedTarget]).toEqual([true, true]);
    expect(log.reachedHour).toBeGreaterThan(outcomes[named].reachedHour + 48);
    expect(log.lifeUsed).toBeGreaterThan(outcomes[named].lifeUsed);
    expect(heldAgainst(SPEC, asRun, { named: asRun[named], logged: late })).toEqual({
      byHour: outcomes[named].reachedHour,
      lifeUsed: log.lifeUsed,
      lossMean: log.lossMean,
    });
  });

  it('is the day of the log where that was earlier', () => {
    const log = outcomeOf(early);
    expect(log.reachedHour).toBeLessThan(outcomeOf(late).reachedHour);
    expect(heldAgainst(SPEC, asRun, { named: late, logged: early })?.byHour).toBe(log.reachedHour);
  });

  it('is the cheapest rule that reaches where none is named, and no log counts', () => {
    const reaching = outcomes.filter(({ reachedTarget }) => reachedTarget);
    const cheapest = Math.min(...reaching.map(({ cost }) => cost));
    const dearest = Math.max(...reaching.map(({ cost }) => cost));
    expect(dearest).toBeGreaterThan(cheapest);
    const held = heldAgainst(SPEC, asRun, { logged: null });
    expect(held?.byHour).toBe(reaching.find(({ cost }) => cost === cheapest)?.reachedHour);
  });

  it('is nothing where no way was cold, or a bin is to be dried', () => {
    const warm = { ...SPEC, targetC: -30 };
    expect(heldAgainst(warm, asRun, { logged: late })).toBeNull();
    expect(heldAgainst({ ...SPEC, goal: 'dry', targetWb: 0.16 }, asRun, { logged: late })).toBeNull();
  });
});

describe('the schedule in hindsight of a bin to be cooled', () => {
  it('is no later, no dearer and no harder on the grain than the rule, though waiting for winter is cheaper', () => {
    const rule = outcomes[named];
    const free = bestInHindsight(SPEC);
    const waiting = runSeason(SPEC, writtenSchedule(free!.ways)).outcome;
    expect(waiting.reachedHour).toBeGreaterThan(rule.reachedHour + 48);
    expect(waiting.lifeUsed).toBeGreaterThan(rule.lifeUsed);
    const schedule = hindsightSchedule(SPEC, RULES, { named: RULES[named] });
    const { outcome } = runSeason(SPEC, schedule!);
    expect(outcome.reachedTarget).toBe(true);
    expect(outcome.reachedHour).toBeLessThanOrEqual(rule.reachedHour);
    expect(outcome.lifeUsed).toBeLessThanOrEqual(rule.lifeUsed);
    expect(outcome.lossMean).toBeLessThanOrEqual(rule.lossMean);
    expect(outcome.cost).toBeLessThanOrEqual(rule.cost);
    expect(outcome.cost).toBeGreaterThan(waiting.cost);
  });
});
