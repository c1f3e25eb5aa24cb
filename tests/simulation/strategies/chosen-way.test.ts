import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runSeason } from '../../../src/simulation/run/run-season.ts';
import { type ChosenWay, chooseWay, idOfWay, readWay, wayOf } from '../../../src/simulation/strategies/chosen-way.ts';
import { STRATEGIES, strategyOf } from '../../../src/simulation/strategies/strategies.ts';
import { inventedBin, inventedHours } from '../run/invented-bin.ts';

const nameOf = (text: string) => wayOf(text).id;
const problemsOf = (text: string) => {
  const read = readWay(text);
  return read.ok ? [] : read.problems;
};

describe('a rule with chosen parameters', () => {
  it('is named by what is not as usual, in the rule’s order, whatever the units and blanks', () => {
    expect(nameOf('  humidity-limit  with rh 65%')).toBe('humidity-limit with rh 65 %');
    expect(nameOf('night-hours with to 6 h and from 1320 min')).toBe('night-hours with from 22 h and to 6 h');
    // 10.8 degF apart are 6 K; 14 degF are -10 degC, which is usual.
    expect(nameOf('temperature-difference with cooler 10.8 degF and coldest 14 degF')).toBe(
      'temperature-difference with cooler 6 K',
    );
    expect(nameOf('humidity-limit with rh 70 %')).toBe('humidity-limit');
    expect(wayOf('humidity-limit with rh 70 %')).toBe(strategyOf('humidity-limit'));
    expect(idOfWay('humidity-limit with rh 65 %')).toBe('humidity-limit');
  });

  it('is the same way by its name, by text and by number, for any value in range', () => {
    const any = fc.constantFrom(...STRATEGIES.filter(({ parameters }) => parameters.length > 0)).chain((strategy) =>
      fc.record({
        id: fc.constant(strategy.id),
        parameters: fc.record(
          Object.fromEntries(
            strategy.parameters.map(({ name, range: [min, max] }) => [name, fc.double({ min, max, noNaN: true })]),
          ),
          { requiredKeys: [] },
        ),
      }),
    );
    fc.assert(
      fc.property(any, (given) => {
        const way = wayOf(given as ChosenWay);
        const again = wayOf(way.id);
        expect(again.id).toBe(way.id);
        for (const [i, { name, usual }] of way.parameters.entries()) {
          // A name holds ten digits; what is run is what the name says.
          expect(again.parameters[i].usual).toBe(usual);
          const asked = given.parameters[name] ?? strategyOf(given.id).parameters[i].usual;
          expect(Math.abs(usual - asked)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(asked)));
        }
      }),
      { seed: 5, numRuns: 300 },
    );
  });

  it('runs as the rule does with those parameters', () => {
    const hours = inventedHours({ count: 240, rh: (hour) => 0.6 + 0.2 * Math.sin((2 * Math.PI * hour) / 24) });
    const run = (...of: [Parameters<typeof runSeason>[1], Parameters<typeof runSeason>[2]?]) =>
      runSeason(inventedBin(hours), ...of).outcome;
    const chosen = run(wayOf('humidity-limit with rh 55 %'));
    expect(chosen).toEqual(run(strategyOf('humidity-limit'), { rh: 0.55 }));
    expect(chosen.fanHours).toBeLessThan(run(strategyOf('humidity-limit')).fanHours);
    expect(run(wayOf({ id: 'humidity-limit', parameters: { rh: 0.55 } }))).toEqual(chosen);
    expect(run(wayOf({ id: 'humidity-limit', parameters: { rh: '55 %' } }))).toEqual(chosen);
  });

  it('is refused with all that is wrong: what, where, given, allowed, what to write', () => {
    expect(problemsOf('night-hours with form 22 h and to 30 h')).toEqual([
      'night-hours has no parameter "form"; it has from (0 h to 24 h, usually 21 h), to (0 h to 24 h, usually 9 h).',
      'night-hours: to is "30 h"; 0 h to 24 h is allowed, 9 h is usual.',
    ]);
    expect(problemsOf('humidity-limit with rh 65')).toEqual([
      'humidity-limit: rh is "65"; a number with its unit is due (%, fraction), e.g. "70 %".',
    ]);
    expect(problemsOf('humidity-limit with rh 65 % and rh 60 %')[0]).toMatch(/gives rh twice; leave one/);
    expect(problemsOf('humidity-limit with rh')[0]).toMatch(/has "rh"; a parameter and its value are due, e\.g\./);
    expect(problemsOf('humidity-limit with ')).toEqual(problemsOf('humidity-limit with'));
    expect(problemsOf('humidity-limit with')[0]).toMatch(/^"humidity-limit with" names no parameter; write e\.g\./);
    expect(problemsOf('always-on with rh 65 %')).toEqual(['always-on has no parameter "rh"; it has none.']);
    expect(problemsOf('humidity with rh 65 %')[0]).toMatch(/^There is no strategy "humidity"; there are always-on, /);
    expect(() => wayOf({ id: 'humidity-limit', parameters: { rh: 65 } })).toThrow(
      'humidity-limit: rh is 65; 20 % to 100 % is allowed, 70 % is usual.',
    );
    for (const odd of [null, undefined, Number.NaN, true, {}]) {
      expect(chooseWay({ id: 'humidity-limit', parameters: { rh: odd as never } }).ok).toBe(false);
    }
  });
});
