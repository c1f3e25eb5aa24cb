import { describe, expect, it } from 'vitest';
import type { HangsOn } from '../../src/analysis/what-if/hangs-on.ts';
import { hangsNotes, hangsTable } from '../../src/notebook/strategy-hangs.ts';
import type { Played } from '../../src/notebook/strategy-words.ts';
import { Units } from '../../src/report/units.ts';
import type { Outcome } from '../../src/simulation/run/outcome.ts';

const UNITS = new Units('us', 'USD', 'America/Chicago');

const run = (endMoistureWb: number, fanHours: number, cost: number, reachedTarget = true) =>
  ({ endMoistureWb, fanHours, cost, reachedTarget, endTempC: 8, imbalance: { water: 1e-13, heat: -2e-12 } }) as Outcome;

const played = (hangsOn: HangsOn[], title: string | null = 'Humidity limit'): Played =>
  ({
    review: { bin: { id: 'B1', name: 'Lane 36' } },
    pick: title === null ? null : { title },
    whatIf: { logged: null, strategies: [], hindsight: null, hangsOn },
  }) as unknown as Played;

const logged = (wb: number) => run(wb, 500, 600);
const changed: HangsOn[] = [
  { part: 'as fitted', title: 'as fitted', logged: logged(0.15), pick: run(0.15, 300, 400) },
  // 18 of 300 hours, 32 of 400.
  { part: 'layers', title: '40 layers', logged: logged(0.1504), pick: run(0.15, 318, 432) },
  { part: 'steps', title: 'steps of half an hour', logged: logged(0.15002), pick: run(0.15, 300.1, 399) },
  { part: 'isotherm', title: 'one', logged: logged(0.153), pick: run(0.15, 330, 440) },
  { part: 'isotherm', title: 'another', logged: logged(0.148), pick: run(0.16, 240, 300, false) },
];

describe('what a bin’s numbers hang on, in words', () => {
  const [ends, rule, cut, books] = hangsNotes(played(changed), UNITS);

  it('tells how far each part moves the end as logged', () => {
    expect(ends).toBe(
      'With nothing fitted anew the moisture at the end of the season as logged moves by 0.04 points with half as deep layers; by less than 0.01 points with half as long steps; by 0.30 points with another published isotherm of the crop at the most.',
    );
  });

  it('tells how far each moves hours and cost of the rule, and where it then misses', () => {
    expect(rule).toBe(
      'Of the rule “humidity limit” fan hours and cost move by 6.0 % and 8.0 % with half as deep layers; by less than 0.1 % and 0.3 % with half as long steps; by 20.0 % and 25.0 % with another published isotherm of the crop at the most. It misses its target with another.',
    );
  });

  it('says what the bed’s own cut means for a reader of costs', () => {
    expect(cut).toMatch(/moves the cost of that rule by 32 USD \(8\.0 %\): no cost by this model is surer than that/);
    expect(books).toMatch(/balance/);
  });

  it('holds to the end as logged where no rule reaches, and to hours where there is no price', () => {
    expect(hangsNotes(played(changed, null), UNITS)).toHaveLength(2);
    const free = changed.map((one) => ({ ...one, pick: { ...one.pick!, cost: Number.NaN } }));
    const notes = hangsNotes(played(free), UNITS);
    expect(notes).toHaveLength(3);
    expect(notes[1]).toContain('fan hours move by 6.0 % with half as deep layers');
    expect(hangsNotes(played([]), UNITS)).toEqual([]);
  });

  it('has a row for each change', () => {
    expect(hangsTable(played(changed)).rows.map(({ part }) => part)).toEqual([
      'as fitted',
      'layers',
      'steps',
      'isotherm',
      'isotherm',
    ]);
  });
});
