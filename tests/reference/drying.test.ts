import { describe, expect, it } from 'vitest';
import { relativeHumidityOfRatio } from '../../src/air/humidity-ratio.ts';
import { equilibriumHumidity } from '../../src/grain/equilibrium.ts';
import { isothermOf, isothermsOf } from '../../src/grain/isotherm.ts';
import { bedOf, bedWb, blowUntil, type DryingCase, topWb } from '../../src/notebook/methods/drying-bed.ts';
import {
  BALANCE,
  balanceDays,
  caseOf,
  dryingChecks,
  frontDays,
  warmHoursDays,
} from '../../src/notebook/methods/drying-checks.ts';
import { groupsOf } from '../../src/notebook/methods/published-check.ts';
import type { Bed } from '../../src/simulation/bed/bed.ts';
import { grainHumidity } from '../simulation/bed/filled-bed.ts';
import { agrees, halfDigit, provenanceNote, type ReferenceRow, readReference } from './read-reference.ts';

const rows = readReference('drying');
const checks = dryingChecks();
const byId = (id: string) => rows.find((row) => row.id === id) as ReferenceRow;
const MOST = 24 * 300;
const waterOf = (wbPct: number) => wbPct / (100 - wbPct);

describe('published drying times (tests/reference/drying.csv: a Nebraska table and example, estimates of NDSU and Iowa State)', () => {
  it('are all here, each with what was assumed where its source is silent', () => {
    expect(rows).toHaveLength(93);
    for (const row of rows.filter((one) => one.misfit === '')) expect(row.assumed, row.id).not.toBe('');
  });
  for (const [i, row] of rows.entries()) {
    const said = `${row.id}: ${row.published} ${row.unit}, ${row.meaning}${provenanceNote(row)}`;
    if (row.misfit === '') {
      it(`${said}, within ${row.tolerance}: ${row.tolerance_reason}`, () => {
        expect(agrees(checks[i]), `the kit gives ${checks[i].ours}`).toBe(true);
      });
    } else {
      it(`${said} has no answer: ${row.misfit}`, () => void expect(checks[i].ours).toBeNull());
    }
  }
});

describe('the Nebraska table', () => {
  const table = rows.filter((row) => row.id.startsWith('unl-soy'));
  it('is a balance of water: within one air its days go with the water to be carried off, to 1.5 % and the printed digit', () => {
    const airs = groupsOf(table, (row) => `${row.air_F} ${row.rh_pct}`);
    expect(airs.size).toBe(12);
    for (const [air, of] of airs) {
      const perWater = of.map((row) => Number(row.published) / (waterOf(Number(row.from_wb_pct)) - waterOf(13)));
      const slack = Math.max(...of.map((row) => halfDigit(row.published) / Number(row.published)));
      expect(Math.max(...perWater) / Math.min(...perWater) - 1, air).toBeLessThan(0.015 + 2 * slack);
    }
  });

  it('lets air leave at 85 %, which beans of 14 to 19 % do not give: the bed’s air leaves at the beans’ own 69 to 81 %', () => {
    const leaving = table.map((row) => {
      const drying = caseOf(row);
      const bed = bedOf(drying, {});
      blowUntil(bed, drying, 48, () => false);
      return relativeHumidityOfRatio(bed.leaving[0], bed.leaving[1], bed.pressurePa);
    });
    expect(Math.min(...leaving)).toBeGreaterThan(0.68);
    expect(Math.max(...leaving)).toBeLessThan(0.82);
  });

  it('is what the bed gives once its air leaves at the beans’ humidity: half of the water is gone in the balance’s time', () => {
    for (const row of table) {
      const drying = caseOf(row);
      const bed = bedOf(drying, {});
      const startDb = waterOf(Number(row.from_wb_pct));
      const halfDb = (startDb + waterOf(13)) / 2;
      const half = blowUntil(bed, drying, 24 * 100, () => bedWb(bed) <= halfDb / (1 + halfDb));
      const humidity = grainHumidity(bed.medium, bed.leaving[0], startDb);
      const balance = balanceDays(drying, 0.13, humidity) / 2;
      // The beans' own warmth dries, too, as they cool to what drying air makes them: up to half a day's work.
      expect((half ?? Number.NaN) / 24, row.id).toBeGreaterThan(balance - 0.5);
      expect((half ?? Number.NaN) / 24, row.id).toBeLessThan(1.02 * balance + 1 / 24);
    }
  });
});

describe('the two meanings of days to dry', () => {
  it('lie apart by twice and more: soybeans from 16 to 13 % at 50 degF and 50 %', () => {
    const row = byId('isu-soy');
    const drying = caseOf(row);
    const balance = balanceDays(drying, 0.13, 0.85);
    const bed = bedOf(drying, {});
    const front = blowUntil(bed, drying, 24 * 200, () => topWb(bed) <= 0.13);
    expect(balance).toBeLessThan(16);
    expect((front ?? Number.NaN) / 24 / balance).toBeGreaterThan(2);
    // What waiting for the top costs: the bottom is as dry as the air makes it, 9 % (worked out by another layer model: 9.2 %).
    expect(bed.moistureDb[0] / (1 + bed.moistureDb[0])).toBeCloseTo(0.092, 2);
  });

  it('a warmer inlet shortens it: corn from 21 %, 47 degF and 70 %, top at 17 %, by a fifth to a third for a fan’s 3 degF', () => {
    // Another layer model: 53.6 days without, 43.4 with fan heat of 3 to 5 degF.
    const drying = caseOf(byId('nd-corn-oct'));
    const [cold, warmed] = [0, 3].map((riseF) => frontDays({ ...drying, riseF }, 0.16, 'modified Henderson D245.4'));
    const share = (warmed ?? Number.NaN) / (cold ?? Number.NaN);
    expect(share).toBeLessThan(0.8);
    expect(share).toBeGreaterThan(0.67);
  });
});

describe('what was chosen for the bed', () => {
  it('isotherm and thin-layer rate: how far they move the days of corn at 40 degF and 70 %, a fan of 4 degF', () => {
    const drying = caseOf(byId('nd-corn-40F'));
    const days = (isotherm: string, thinLayer?: string) => {
      const bed = bedOf(drying, { isotherm, thinLayer });
      const hours = blowUntil(bed, drying, 24 * 300, () => topWb(bed) <= 0.16);
      return (hours ?? Number.NaN) / 24;
    };
    const names = isothermsOf('corn').map((one) => one.name);
    const own = names.map((name) => days(name));
    const near = names.map((name) => days(name, 'near-equilibrium'));
    console.info(
      `front of corn 20 % out of the top (16 %), days by isotherm, corn's own rate / near-equilibrium: ${names
        .map((name, i) => `${name} ${own[i].toFixed(1)} / ${near[i].toFixed(1)}`)
        .join('; ')}`,
    );
    const spread = Math.max(...own) / Math.min(...own);
    const rates = Math.max(...own.map((one, i) => one / near[i]));
    // The choice of isotherm moves the answer more than that of the rate does.
    expect(spread).toBeGreaterThan(1.2);
    expect(spread).toBeGreaterThan(rates);
    for (const [i, one] of own.entries()) expect(one).toBeGreaterThan(near[i]);
    expect(rates).toBeLessThan(1.25);
  });
});

describe('a fan that runs in the warmest 12 hours (NDSU 2009, wheat: 62 days and 744 hours against 35 days and 840 hours)', () => {
  const drying: DryingCase = caseOf(byId('nd-wheat-cont'));
  const isotherm = byId('nd-wheat-cont').isotherm;
  it('takes more days and fewer hours than one that always runs', () => {
    const always = frontDays(drying, 0.13, isotherm) ?? Number.NaN;
    const { days, fanHours } = warmHoursDays(drying, 0.13, isotherm);
    expect(days / always).toBeGreaterThan(1.4);
    // Published 1.77 and 0.89; ours 1.46 and 0.73: the day's range is not stated, the warmer its noon the drier the air.
    expect(days / always).toBeLessThan(1.8);
    expect(fanHours / (24 * always)).toBeLessThan(1);
    expect(fanHours / (24 * always)).toBeGreaterThan(0.6);
  });

  it('leaves the bottom drier, as the source says', () => {
    const bottomWb = (run: (bed: Bed) => void) => {
      const bed = bedOf(drying, { isotherm });
      run(bed);
      return bed.moistureDb[0] / (1 + bed.moistureDb[0]);
    };
    const always = bottomWb((bed) => void blowUntil(bed, drying, MOST, () => topWb(bed) <= 0.14));
    const warm = bottomWb((bed) => void warmHoursDays(drying, 0.13, isotherm, bed));
    expect(always - warm).toBeGreaterThan(0.01);
  });
});

describe('rows of one airflow', () => {
  it(`of the ${rows.filter((row) => row.meaning === BALANCE).length} balances, days are inverse to it by definition; of fronts, nearly`, () => {
    const drying = caseOf(byId('nd-corn-oct'));
    const [slow, fast] = [0.75, 1.25].map((cfmPerBu) => frontDays({ ...drying, cfmPerBu }, 0.16) ?? Number.NaN);
    expect((slow / fast) * (0.75 / 1.25)).toBeGreaterThan(0.9);
    expect((slow / fast) * (0.75 / 1.25)).toBeLessThan(1);
    expect(balanceDays({ ...drying, cfmPerBu: 0.5 }, 0.16, 0.9)).toBeCloseTo(2 * balanceDays(drying, 0.16, 0.9), 9);
  });
});

// Minnesota (Engineering Notes, fall 2000, read): air of 65 to 70 % brings soybeans to 13 %. Nebraska (CropWatch 2015, read): 70 to 75 %, which may
// be outdoor air that a fan's 3 to 5 degF make drier; at 0.75 cfm/bu the wetting zone takes at least a month through the bin.
describe('soybeans that damp air is to bring to 13 %', () => {
  const TEMPS_F = [30, 45, 60];
  const celsius = (tempF: number) => (tempF - 32) / 1.8;

  it.each(isothermsOf('soybean').map((one) => one.name))(
    'by %s are in balance with 65 to 70 % (to the printed five)',
    (name) => {
      for (const tempF of TEMPS_F) {
        const rh = equilibriumHumidity(isothermOf('soybean', name), celsius(tempF), 0.13);
        expect(rh, `${tempF}`).toBeGreaterThanOrEqual(0.65);
        expect(rh, `${tempF}`).toBeLessThanOrEqual(0.725);
      }
    },
  );

  it('take more than a month at 0.75 cfm/bu until the top begins to follow', () => {
    for (const airF of [35, 50]) {
      const drying: DryingCase = { crop: 'soybean', cfmPerBu: 0.75, moistureWb: 0.1, airF, rh: 0.7, riseF: 0 };
      const hours = blowUntil(bedOf(drying, {}), drying, MOST, (bed) => topWb(bed) >= 0.11);
      expect((hours ?? Number.NaN) / 24, `${airF}`).toBeGreaterThan(30);
      // Not twice as long as the source leads to expect, either.
      expect((hours ?? Number.NaN) / 24, `${airF}`).toBeLessThan(60);
    }
  });
});
