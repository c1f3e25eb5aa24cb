import { describe, expect, it } from 'vitest';
import methods from '../../../notebooks/methods.ts';
import { RESISTANCE_CURVES } from '../../../src/bin/resistance-curves.ts';
import { isothermOf } from '../../../src/grain/isotherm.ts';
import { ISOTHERM_CONSTANTS } from '../../../src/grain/isotherm-constants.ts';
import { airflowChecks } from '../../../src/notebook/methods/airflow-checks.ts';
import { emcChecks } from '../../../src/notebook/methods/emc-checks.ts';
import { equationText, greekText } from '../../../src/notebook/methods/equation-text.ts';
import { formulaEntry } from '../../../src/notebook/methods/formula-entries.ts';
import { FORMULAS } from '../../../src/notebook/methods/formulas.ts';
import { isothermFigure, pointsOf } from '../../../src/notebook/methods/isotherm-figure.ts';
import { agreementOf, misfitOf } from '../../../src/notebook/methods/published-check.ts';
import { publishedChecks } from '../../../src/notebook/methods/published-checks.ts';
import { readReference } from '../../../src/notebook/methods/read-reference.ts';
import { recordSection } from '../../../src/notebook/methods/record-section.ts';
import { resistanceFigure } from '../../../src/notebook/methods/resistance-figure.ts';
import { isothermCrops, resistanceCrops } from '../../../src/notebook/methods/season-crops.ts';
import { renderPages } from '../../../src/report/html/pages.ts';
import type { Cell, Figure, OwnNumber } from '../../../src/report/page.ts';
import { Units } from '../../../src/report/units.ts';
import { NOTEBOOKS } from '../../report/example-pages.ts';
import { exampleInput } from '../../report/example-review.ts';

const input = exampleInput();
const page = methods.page(input);
const checks = publishedChecks();
const units = new Units('us', 'USD', 'America/Chicago');
const si = new Units('si', 'EUR', 'Europe/Berlin');
const SIZE = { width: 900, narrow: false, idPrefix: 't' };
const count = (svg: string, what: RegExp) => (svg.match(what) ?? []).length;
/** Marks in the colour of published points: each a path, a stem and a sign for a moisture, a sign for a pressure. */
const marksIn = (figure: Figure, size = SIZE) => {
  const dots =
    figure
      .draw(size)
      .match(/<g[^>]*stroke="var\(--c2\)"[^>]*>(?:<path[^>]*><\/path>|<g[^>]*>|<\/g>|<path[^>]*\/>)*/g) ?? [];
  return count(dots.join(''), /<path/g);
};

describe('the methods page', () => {
  it('stands, weighs less than 1 MB, and nothing on it failed', () => {
    const [rendered] = renderPages([page]);
    expect(rendered.failures).toEqual([]);
    expect(rendered.html.length).toBeLessThan(1_000_000);
  });

  it('stands without a bin, and in SI units', () => {
    const bare = { ...input.loaded, season: { ...input.loaded.season, bins: [] } };
    const pages = [methods.page({ ...input, loaded: bare }), methods.page({ ...input, units: si })];
    for (const one of pages) expect(renderPages([one])[0].failures).toEqual([]);
    expect(pages[0].sections.find((one) => one.id === 'crops')?.lead).toMatch(/^No bin is listed/);
    expect(pages[1].sections.find((one) => one.id === 'crops')?.figures?.[0].subtitle).toContain('2, 21 and 38 °C');
  });

  it('has every formula once, with its equations, sources and record', () => {
    const entries = page.sections
      .flatMap((section) => section.entries ?? [])
      .filter((entry) => entry.id?.startsWith('formula-'));
    expect(entries.map((entry) => entry.id).sort()).toEqual(FORMULAS.map((formula) => `formula-${formula.id}`).sort());
    for (const formula of FORMULAS) {
      const entry = entries.find((one) => one.id === `formula-${formula.id}`);
      expect(entry?.code).toEqual(formula.equations.map(equationText));
      expect(entry?.details?.[0]).toBe(greekText(formula.rule));
      expect(entry?.details?.some((line) => line.startsWith('Record: '))).toBe(true);
      for (const { key } of formula.sources) expect(page.sources).toContain(key);
    }
  });

  it('names the pages that a definition is used on by their titles', () => {
    const titles = new Set(NOTEBOOKS.map((notebook) => notebook.title));
    const entries = page.sections.find((one) => one.id === 'methods')?.entries ?? [];
    expect(entries.length).toBeGreaterThan(15);
    for (const entry of entries) {
      const used = entry.details?.find((line) => line.startsWith('Used on: '))?.slice(9, -1) ?? '';
      for (const title of used.split('; ')) expect(titles, `${entry.id}: ${title}`).toContain(title);
    }
  });

  it('fails at a formula whose source is not in the bibliography', () => {
    const formula = { ...FORMULAS[0], sources: [{ key: 'nobody-1900' }] };
    expect(() => formulaEntry(formula, { checks, failure: null }, units)).toThrow(/nobody-1900/);
  });

  it('has every set of constants, digit by digit', () => {
    const rows = page.sections.find((one) => one.id === 'constants')?.tables ?? [];
    const isotherms = rows.find((one) => one.id === 'isotherms')?.rows ?? [];
    expect(isotherms).toHaveLength(ISOTHERM_CONSTANTS.length);
    const said = (cell: Cell | undefined) =>
      units.number('constant', (cell as OwnNumber).amount as number).replaceAll(',', '');
    const digits = (cell: Cell | undefined) => Number(said(cell).replace('−', '-'));
    for (const { a, b, c } of ISOTHERM_CONSTANTS) {
      expect(isotherms.some((row) => digits(row.a) === a && digits(row.b) === b && digits(row.c) === c)).toBe(true);
    }
    expect(said(isotherms.find((row) => digits(row.b) === -0.10164)?.b)).toBe('−0.10164');
    // Crops of the season first.
    const crops = input.loaded.season.bins.map((bin) => bin.grain.crop);
    const first = ISOTHERM_CONSTANTS.find((row) => crops.includes(row.crop));
    expect(String(isotherms[0].grain).toLowerCase()).toBe(first?.grain);
    expect(rows.find((one) => one.id === 'resistance')?.rows).toHaveLength(RESISTANCE_CURVES.length);
  });

  it('prints what the season used with its constants, and keeps the other crops and the record’s tables on the page', () => {
    const folded = page.sections.filter((one) => one.printed === false);
    expect(folded.map((one) => one.id)).toEqual(['other-crops', 'offered']);
    for (const { lead } of folded) expect(lead).toMatch(/not printed/);
    const long = page.sections.flatMap((one) => one.tables ?? []);
    for (const { id, folded } of long) expect(folded, id).toBe('on screen');
    const [{ html }] = renderPages([page]);
    expect(count(html, /<details class="on-screen">/g)).toBe(
      long.filter((one) => one.rows.length > 0).length + folded.length,
    );
    const constants = page.sections.find((one) => one.id === 'crops')?.table;
    expect(constants?.folded).toBeUndefined();
    const crops = new Set(input.loaded.season.bins.map((bin) => bin.grain.crop));
    // One isotherm a crop, and each set of its resistance.
    const resistances = RESISTANCE_CURVES.filter((row) => crops.has(row.crop));
    expect(constants?.rows).toHaveLength(crops.size + resistances.length);
    const corn = ISOTHERM_CONSTANTS.find((row) => row.crop === 'corn');
    expect(constants?.rows[0]).toMatchObject({
      crop: 'Corn',
      a: { of: 'constant', amount: corn?.a },
      known: 'From memory',
    });
  });

  it('counts in the answer and the tables what the reference tests assert', () => {
    const seen = checks.filter((one) => one.provenance === 'seen');
    const unmarked = seen.filter((one) => one.misfit === '').length;
    expect(page.answer).toContain(
      `of ${seen.length} comparisons with published values the kit reproduces ${unmarked} within`,
    );
    const record = page.sections.find((one) => one.id === 'record');
    expect(record?.table?.total).toMatchObject({ rows: seen.length, agree: unmarked, marked: seen.length - unmarked });
    const emc = record?.tables?.find((one) => one.id === 'record-emc')?.rows ?? [];
    // 39 cells of one table, all within their digit: held one by one in tests/reference/emc.test.ts
    const corn = seen.filter((one) => one.group === 'Yellow corn, modified Henderson D245.5');
    expect(emc.find((row) => row.name === corn[0].group)).toMatchObject({
      rows: corn.length,
      agree: corn.filter((one) => one.misfit === '').length,
      worst: Math.max(...corn.map((one) => misfitOf(one) ?? 0)),
    });
    const marked = record?.tables?.find((one) => one.id === 'marked')?.rows ?? [];
    const all = checks.filter((one) => one.misfit !== '');
    expect(marked.reduce((sum, row) => sum + Number(row.rows), 0)).toBe(all.length);
    expect(marked.flatMap((row) => String(row.cases).split('; ')).length).toBe(all.length);
    for (const row of marked) expect(String(row.why).length).toBeGreaterThan(10);
  });

  it('tells what was recalled apart from what was read', () => {
    const record = recordSection({ checks, failure: null }, units);
    const unseen = record.tables?.find((one) => one.id === 'record-unseen');
    const rows = (unseen?.rows ?? []).reduce((sum, row) => sum + Number(row.rows), 0);
    expect(rows).toBe(checks.filter((one) => one.provenance !== 'seen').length);
    expect(rows).toBeGreaterThan(0);
  });

  it('keeps its heading and says why when the record cannot be read', () => {
    const record = recordSection({ checks: [], failure: 'no such file' }, units);
    expect(record).toMatchObject({ title: 'How well the equations agree with the record', failure: 'no such file' });
    const entry = formulaEntry(FORMULAS[0], { checks: [], failure: 'no such file' }, units);
    expect(entry.details?.at(-1)).toBe('Record: it could not be read.');
  });
});

describe('the charts', () => {
  it('show every published moisture of a crop in the reference file', () => {
    for (const crop of new Set(emcChecks().map((check) => check.crop))) {
      const rows = readReference('emc').filter((row) => row.crop === crop);
      const distinct = new Set(
        rows.map((row) => `${row.temp_F} ${row.rh_pct} ${row.published_emc_pct_wb} ${row.source}`),
      );
      const made = isothermFigure('f', [{ crop, isotherm: null }], emcChecks(), units);
      expect(made?.table.rows, crop).toHaveLength(distinct.size);
      // one link and one mark a point
      for (const size of [SIZE, { width: 360, narrow: true, idPrefix: 'n' }]) {
        expect(marksIn(made?.figure as Figure, size), crop).toBe(2 * distinct.size);
      }
    }
  });

  it('say of corn how many lie on its isotherm, worked out by the rows of that isotherm alone', () => {
    const points = pointsOf(isothermOf('corn'), emcChecks());
    const own = agreementOf(
      emcChecks().filter((check) => check.crop === 'corn' && check.isotherm === 'modified Henderson D245.5'),
    );
    // rows of other editions are read against this one, too, and need not lie on it
    expect(points.filter((point) => point.agrees).length).toBeGreaterThanOrEqual(own.agree);
    const made = isothermFigure('f', [{ crop: 'corn', isotherm: null }], emcChecks(), units);
    expect(made?.figure.title).toBe(
      `${points.filter((point) => point.agrees).length} of ${points.length} published moistures lie on these isotherms, within what is printed`,
    );
  });

  it('show every published pressure and fan power, in either system of units', () => {
    const corn = readReference('airflow').filter((row) => row.crop === 'corn');
    for (const system of [units, si]) {
      const made = resistanceFigure('r', ['corn'], airflowChecks(), system);
      expect(made?.table.rows).toHaveLength(corn.length);
      expect(marksIn(made?.figure as Figure)).toBe(corn.length);
      expect(made?.figure.alt).toContain(`${corn.length} of ${corn.length} published points`);
    }
  });

  it('convert by hand: 20 ft of corn at 1 cfm/bu and 4.0 in. is 0.2 in. a foot at 20 / 1.2445 cfm a square foot', () => {
    const made = resistanceFigure('r', ['corn'], airflowChecks(), units);
    const row = made?.table.rows.find((one) => one.at === '20 ft, 1 cfm/bu');
    expect(row?.published).toBeCloseTo(0.2, 6);
    expect(row?.airflow).toBeCloseTo(16.07, 2);
    const metric = resistanceFigure('r', ['corn'], airflowChecks(), si)?.table.rows.find(
      (one) => one.at === '20 ft, 1 cfm/bu',
    );
    // 0.2 in. of water, 249.089 Pa each (NIST SP 811), over 0.3048 m
    expect(metric?.published).toBeCloseTo(163.4, 1);
  });

  it('put the season’s crops first and leave none out', () => {
    const season = input.loaded.season;
    const isotherms = isothermCrops(season);
    const crops = new Set(season.bins.map((bin) => bin.grain.crop));
    expect(new Set(isotherms.used.map((one) => one.crop))).toEqual(crops);
    expect(isotherms.others.some((one) => crops.has(one.crop))).toBe(false);
    const resistance = resistanceCrops(season);
    expect(new Set([...resistance.used, ...resistance.others])).toEqual(
      new Set(RESISTANCE_CURVES.map((curve) => curve.crop)),
    );
  });

  it('follow the isotherm that a bin names', () => {
    const [bin] = input.loaded.season.bins;
    const named = { ...bin, grain: { ...bin.grain, crop: 'corn', isotherm: 'modified Oswin D245.5' } };
    expect(isothermCrops({ bins: [named] }).used).toEqual([{ crop: 'corn', isotherm: 'modified Oswin D245.5' }]);
  });
});

describe('equations for people', () => {
  it('raise whole powers, dot products, true minus signs and Greek letters', () => {
    expect(equationText('p = 4.1764768e-5 * K^2 - 1.5')).toBe('p = 4.1764768×10⁻⁵ · K² − 1.5');
    expect(equationText('k = exp(455 / m^1.53) + rho_k * theta')).toBe('k = exp(455 / m^1.53) + ρ_k · θ');
  });
});
