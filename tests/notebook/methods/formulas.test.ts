import { readdirSync } from 'node:fs';
import { all, create } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { sourceOf } from '../../../src/base/sources/sources.ts';
import { FORMULAS } from '../../../src/notebook/methods/formulas.ts';
import { SAMPLES } from './formula-samples.ts';

const { evaluate } = create(all);

// Look-ups, checks and calendars: they find or refuse, and work out nothing that has an equation.
const NO_FORMULAS: Readonly<Record<string, string>> = {
  cropOf: 'look-up',
  isothermOf: 'look-up',
  isothermsOf: 'look-up',
  porosityRangeOf: 'look-up',
  resistanceCurveOf: 'look-up',
  specificHeatLineOf: 'look-up',
  specificHeatLinesOf: 'look-up',
  storageGuidanceOf: 'look-up',
  storageRuleOf: 'look-up',
  assertFanCurve: 'check',
  pressureRangePa: 'ends of a list of points',
  localMoment: 'calendar',
  localMonths: 'calendar',
  elevenMonthsBefore: 'calendar',
  cubicAt: 'interpolation',
  cubicTable: 'interpolation',
  tableTimes: 'interpolation',
  keepState: 'copy',
  mediumOf: 'look-up',
  monthKey: 'calendar',
  newBed: 'check',
  newState: 'copy',
  nextLocalDay: 'calendar',
  placeIn: 'interpolation',
  restoreState: 'copy',
  slopeAt: 'interpolation',
  valueAt: 'interpolation',
};

async function exportedFunctions(): Promise<{ room: string; name: string }[]> {
  const found: { room: string; name: string }[] = [];
  for (const room of ['air', 'grain', 'bin', 'money', 'simulation/bed']) {
    const folder = new URL(`../../../src/${room}/`, import.meta.url);
    for (const file of readdirSync(folder).filter((name) => name.endsWith('.ts'))) {
      const module: Record<string, unknown> = await import(new URL(file, folder).href);
      for (const [name, value] of Object.entries(module)) if (typeof value === 'function') found.push({ room, name });
    }
  }
  return found;
}

describe('the list of formulas', () => {
  it('has every function that air, grain, bin, money and the bed export, and no other', async () => {
    const exported = await exportedFunctions();
    expect(exported.length).toBeGreaterThan(90);
    const listed = new Set(FORMULAS.flatMap((formula) => formula.functions));
    const lacking = exported.filter(({ name }) => !listed.has(name) && !(name in NO_FORMULAS));
    expect(
      lacking.map(({ room, name }) => `${name}: give it an entry in src/${room.split('/')[0]}/formulas.ts`),
    ).toEqual([]);
    const names = new Set(exported.map(({ name }) => name));
    expect([...listed, ...Object.keys(NO_FORMULAS)].filter((name) => !names.has(name))).toEqual([]);
  });

  it('names each once, says what its symbols are, and cites works of the bibliography', () => {
    const ids = FORMULAS.map((formula) => formula.id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const formula of FORMULAS) {
      expect(formula.rule, formula.id).toMatch(/\.$/);
      for (const { key } of formula.sources) expect(sourceOf(key).key).toBe(key);
      // What cites no work says what it rests on.
      if (formula.sources.length === 0) {
        expect(formula.rule, formula.id).toMatch(/By definition|Geometry|own definition|dry matter\.|state it\.$/);
      }
    }
  });

  it('has samples of every formula with equations, and of no other', () => {
    const withEquations = FORMULAS.filter((formula) => formula.equations.length > 0).map((formula) => formula.id);
    expect(Object.keys(SAMPLES).sort()).toEqual(withEquations.sort());
  });

  // Solvers halve to about 1e-9 of the value; constants are the code's own, so nothing else is left.
  for (const formula of FORMULAS.filter((one) => one.id in SAMPLES)) {
    it(`prints of ${formula.id} what the code works out, by an independent parser`, () => {
      for (const sample of SAMPLES[formula.id]()) {
        for (const equation of formula.equations) {
          const [left, right] = equation
            .split(/ = /)
            .map((side) => Number(evaluate(side, { ln: Math.log, ...sample })));
          expect(Number.isFinite(left), `${equation} has a left side`).toBe(true);
          expect(Math.abs(left - right), equation).toBeLessThanOrEqual(
            1e-8 * Math.max(Math.abs(left), Math.abs(right)),
          );
        }
      }
    });
  }
});
