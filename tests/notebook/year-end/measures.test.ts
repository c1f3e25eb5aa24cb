import { describe, expect, it } from 'vitest';
import type { BinModel } from '../../../src/analysis/model/model-types.ts';
import type { BinReview, SeasonReview } from '../../../src/analysis/types.ts';
import { withoutRuns } from '../../../src/analysis/what-if/bin-what-if.ts';
import { type Estimate, estimate, withheld } from '../../../src/base/estimate.ts';
import { adviceSection } from '../../../src/notebook/year-end/advice-section.ts';
import { energySections } from '../../../src/notebook/year-end/energy-sections.ts';
import { grouped } from '../../../src/notebook/year-end/grouped.ts';
import {
  bySaving,
  isClear,
  isPriced,
  type Measure,
  payback,
  worthTelling,
} from '../../../src/notebook/year-end/measure.ts';
import { measuresSection } from '../../../src/notebook/year-end/measure-sections.ts';
import { measuresOf } from '../../../src/notebook/year-end/measures-of.ts';
import type { LoadedSeason } from '../../../src/season/loaded.ts';
import { exampleInput } from '../../report/example-review.ts';
import { campaignOf, sensorOf } from '../campaign-of.ts';
import { run } from '../strategy-example.ts';

const bin = (id: string, cost = 1000) =>
  ({ bin: { id, name: `Bin ${id}` }, fan: { cost: estimate(cost, cost, cost) } }) as unknown as BinReview;
const measure = (kind: Measure['kind'], id: string, saving: Estimate): Measure => ({
  kind,
  title: `${kind} ${id}`,
  bins: [bin(id)],
  seen: '',
  todo: '',
  saving,
  energy: withheld('not told'),
  from: 'by the logs',
  cautions: [],
});

describe('payback', () => {
  it('is the price over the saving of a year, its ends the other way round', () => {
    // 900 over 300 (200 to 450): 3 years, from 2 to 4.5.
    const years = payback(900, estimate(300, 200, 450));
    expect(years.value).toBeCloseTo(3, 12);
    expect(years.interval?.[0]).toBeCloseTo(2, 12);
    expect(years.interval?.[1]).toBeCloseTo(4.5, 12);
  });
  it('is withheld where the saving may be none, or is not known', () => {
    expect(payback(900, estimate(300, 0, 450)).why).toMatch(/may never pay back/);
    expect(payback(900, withheld('No log.')).why).toBe('No log.');
  });
  it('takes the price that is stated for the bin, or for all', () => {
    const one = measure('other-rule', 'B1', estimate(1, 1, 1));
    expect(isPriced({ measure: 'other-rule', binIds: null, price: 1 }, one)).toBe(true);
    expect(isPriced({ measure: 'other-rule', binIds: ['B1'], price: 1 }, one)).toBe(true);
    expect(isPriced({ measure: 'other-rule', binIds: ['B2'], price: 1 }, one)).toBe(false);
    expect(isPriced({ measure: 'fans-in-turns', binIds: null, price: 1 }, one)).toBe(false);
  });
});

describe('measures', () => {
  const clear = measure('stop-at-target', 'B1', estimate(100, 50, 150));
  const small = measure('stop-at-target', 'B2', estimate(3, 2, 4));
  const maybe = measure('other-rule', 'B1', estimate(500, -20, 900));
  const unknown = measure('other-rule', 'B2', withheld('The model is not trusted.'));

  it('calls none the largest alone where another may save as much', () => {
    const { review, units } = exampleInput();
    const lead = (...of: Measure[]) => measuresSection(review, of, units).lead;
    const wide = measure('stop-at-target', 'B1', estimate(525, 87, 956));
    const sure = measure('fans-in-turns', 'B2', estimate(469, 452, 487));
    expect(lead(wide, sure, small)).toContain(
      'the largest, “stop-at-target B1”, 525 USD (87 to 956) a year, though “fans-in-turns B2” may save as much. ',
    );
    expect(lead(sure, small)).toContain('469 USD (452 to 487) a year. ');
  });

  it('are clear above nothing with the whole interval, and stand before those that may be nothing', () => {
    expect([clear, small, maybe, unknown].map(isClear)).toEqual([true, true, false, false]);
    expect(bySaving([unknown, maybe, small, clear])).toEqual([clear, small, maybe, unknown]);
  });
  it('are told one by one from half a percent of the fans’ cost on', () => {
    expect(worthTelling([clear, small, maybe], [bin('B1'), bin('B2')])).toEqual([clear]);
    expect(worthTelling([clear, small, maybe], [bin('B1', 100)])).toEqual([clear, small]);
  });
  it('of one kind are told once, their savings added', () => {
    const all = grouped([clear, { ...small, saving: estimate(30, 20, 40) }, maybe], (saving) => `${saving.value} USD`);
    expect(all.map(({ saving }) => saving.value)).toEqual([500, 130]);
    expect(all[1]).toMatchObject({ title: 'Stop at the target: Bin B1 and Bin B2', saving: { interval: [70, 190] } });
    expect(all[1].seen).toContain('130 USD');
  });
});

describe('the chapter of energy', () => {
  it('tells the payback of a stated price over the clear savings that it is for', () => {
    const input = exampleInput();
    const { loaded, review, units } = input;
    const ids = review.bins.map(({ bin: { id } }) => id);
    const clear = (id: string, saving: Estimate) => ({ ...measure('useful-hours-only', id, saving) });
    const stated = [
      { measure: 'useful-hours-only' as const, binIds: null, price: 1200 },
      { measure: 'other-rule' as const, binIds: [ids[0]], price: 500 },
    ];
    const sections = energySections(
      { ...loaded, season: { ...loaded.season, measures: stated } },
      review,
      [
        clear(ids[0], estimate(100, 80, 120)),
        clear(ids[1], estimate(200, 160, 240)),
        clear(ids[0], estimate(9, -1, 20)),
      ],
      units,
    );
    const payback = sections.find(({ id }) => id === 'payback');
    // 1,200 over 100 + 200 a year, what may be nothing left out: 4 years, from 1,200 / 360 to 1,200 / 240.
    expect(payback?.lead).toBe(
      'Soonest paid back: no hours against the goal, 1,200 USD, as stated, in 4.0 years (3.3 to 5.0).',
    );
    const [whole, none] = payback?.table?.rows ?? [];
    expect(whole).toMatchObject({ bins: 'all bins', price: 1200, saving: { value: 300 } });
    // a bin is called by its name, not by the id that season.yaml states
    expect(none.bins).toBe(review.bins[0].bin.name);
    expect(review.bins[0].bin.name).not.toBe(ids[0]);
    expect(none).toMatchObject({ price: 500, years: { value: null, why: 'No clear saving is told of this measure.' } });
  });
  it('says why where no price is stated', () => {
    const { loaded, review, units } = exampleInput();
    const payback = energySections(loaded, review, [], units).find(({ id }) => id === 'payback');
    expect(payback?.lead).toMatch(/^Can’t tell: season\.yaml states no price of a measure/);
  });
});

describe('the advice', () => {
  it('says a reason once, though what was seen ends with it', () => {
    const { loaded, review, units } = exampleInput();
    const why = 'No price of the energy is known.';
    const untold = { ...measure('other-rule', 'B1', withheld(why)), seen: `Which is cheapest can’t be told: ${why}` };
    const notes = adviceSection(loaded, review, [untold, { ...untold, seen: 'It was not run.' }], units).notes ?? [];
    expect(notes.filter((note) => note.startsWith('No saving'))).toEqual([
      `No saving is told of other-rule B1. Which is cheapest can’t be told: ${why}`,
      `No saving is told of other-rule B1. It was not run. ${why}`,
    ]);
  });
});

describe('the measures of a season', () => {
  const input = exampleInput();
  const of = (change: (one: BinReview) => BinReview) =>
    measuresOf(input.loaded, { ...input.review, bins: input.review.bins.map(change) }, input.units);
  const lost = (goal: 'dry' | 'cool', startWb: number) =>
    of((one) => ({
      ...one,
      bin: { ...one.bin, goal },
      moisture: {
        ...one.moisture,
        start: { ...one.moisture.start, value: startWb },
        overdryingLoss: estimate(400, 300, 500),
        overdryingLossBushels: estimate(100, 75, 125),
      },
    })).filter(({ kind }) => kind === 'stop-at-target');

  it('blame the fan for grain too dry only where it was run to dry and the grain came in wet', () => {
    expect(lost('dry', 0.18).length).toBeGreaterThan(0);
    expect(lost('dry', 0.18)[0].saving).toEqual(estimate(400, 300, 500));
    expect(lost('dry', 0.12)).toEqual([]);
    expect(lost('cool', 0.18)).toEqual([]);
  });

  it('of a fan that several bins share are for that fan: no bin’s alone saves anything that is known', () => {
    const shared = (goal: 'dry' | 'cool', fanIds: string[]) =>
      of((one) => ({
        ...one,
        bin: { ...one.bin, goal, fanIds },
        moisture: {
          ...one.moisture,
          start: { ...one.moisture.start, value: 0.18 },
          overdryingLoss: estimate(400, 300, 500),
          overdryingLossBushels: estimate(100, 75, 125),
        },
      })).filter(({ kind }) => kind === 'stop-at-target');
    const [first] = shared('dry', ['FS']);
    expect(first.saving.value).toBeNull();
    expect(first.saving.why).toMatch(/^Fan FS serves .* too: what is done for one bin is done to the other/);
  });

  it('of bins that hang together by several fans name the fan that they share, and no bin beyond it', () => {
    const [one] = input.review.bins;
    const link = (id: string, fanIds: string[]) => ({
      ...one,
      bin: { ...one.bin, id, name: `Bin ${id}`, goal: 'dry' as const, fanIds },
      moisture: {
        ...one.moisture,
        start: { ...one.moisture.start, value: 0.18 },
        overdryingLoss: estimate(400, 300, 500),
        overdryingLossBushels: estimate(100, 75, 125),
      },
    });
    const bins = [link('A', ['FA']), link('B', ['FA', 'FS']), link('C', ['FS'])];
    const told = measuresOf(input.loaded, { ...input.review, bins }, input.units).filter(
      ({ kind }) => kind === 'stop-at-target',
    );
    const why = (id: string) => told.find(({ bins }) => bins[0].bin.id === id)?.saving.why;
    expect(why('A')).toMatch(/^Fan FA serves Bin B too: /);
    expect(why('B')).toMatch(/^Fans FA and FS serve Bin A and Bin C too: /);
    expect(why('C')).toMatch(/^Fan FS serves Bin B too: /);
  });

  it('stop a shared fan when the last of its bins is through', () => {
    const bins = input.review.bins.map((one, i) => ({
      ...one,
      bin: { ...one.bin, goal: 'cool' as const, name: `Bin ${i}`, fanIds: [i < 2 ? 'FS' : `F${i}`] },
      // Through after 30 and 40 of 100 h; the others never saw a front.
      fronts: {
        why: null,
        campaigns: i < 2 ? [campaignOf([sensorOf('C1', 1, 1, 10), sensorOf('C1', 2, 3, 30 + 10 * i)])] : [],
      },
      fan: {
        ...one.fan,
        hours: estimate(400, 400, 400),
        energyCost: estimate(100, 100, 100),
        energyKwh: estimate(800, 800, 800),
      },
    }));
    const told = measuresOf(input.loaded, { ...input.review, bins }, input.units).filter(
      ({ kind }) => kind === 'stop-when-through',
    );
    expect(told).toHaveLength(1);
    expect(told[0].title).toBe(
      'Bin 0 and Bin 1, which share fan FS: stop when the front is through in the last of them',
    );
    expect(told[0].seen).toMatch(/^Fan FS, shared by Bin 0 and Bin 1, ran on for 60.0 h .* in Bin 1, the last of them/);
    // 60 h at twice 0.25, and twice 2 kWh an hour.
    expect(told[0].saving.value).toBeCloseTo(30, 9);
    expect(told[0].energy.value).toBeCloseTo(240, 9);
  });

  it('say of a bin whose mean was dry and its wettest layer not what that layer asks back', () => {
    const [first] = input.review.bins;
    const model = { wouldHelp: [] } as unknown as BinModel;
    const ran = (reaches: boolean) => {
      const logged = run('as-logged', 'As logged', [300, 300, 300], reaches);
      const whatIf = {
        ...withoutRuns(first.bin.id, model, ''),
        ...{ why: null, logged: { ...logged, outcome: { ...logged.outcome, wettestWb: 0.168 } } },
        strategies: [
          run('always-on', 'Always on', [700, 700, 700], true),
          run('night-hours', 'Night hours', [200, 200, 200], false),
        ],
        weights: {
          ...{ belowWb: 0.15, pick: 'always-on', clear: true },
          ways: ['as-logged', 'always-on', 'night-hours'].map((id) => ({
            ...{ id, givenAway: estimate(80, 70, 90), together: estimate(780, 770, 790) },
            beyondLogged: estimate(780, 770, 790),
          })),
        },
      };
      const bins = input.review.bins.map((one) => ({
        ...{ ...one, bin: { ...one.bin, goal: 'dry' as const } },
        moisture: {
          ...{ ...one.moisture, start: { ...one.moisture.start, value: 0.18 } },
          ...{ overdryingLoss: estimate(400, 300, 500), overdryingLossBushels: estimate(100, 75, 125) },
        },
      }));
      return measuresOf(input.loaded, { ...input.review, bins, whatIf: [whatIf] }, input.units)
        .filter(({ kind, bins: of }) => kind === 'stop-at-target' && of[0].bin.id === first.bin.id)
        .flatMap(({ cautions }) => cautions)
        .join(' ');
    };
    expect(ran(false)).toContain('its wettest layer was still at 16.8 % at the end');
    expect(ran(false)).toContain(
      '“Always on”, which dries it too and comes to the least with over-drying counted, loses',
    );
    expect(ran(true)).not.toContain('wettest layer');
  });

  it('save by stopping at a target below the base only what is lost below the target', () => {
    // 1,000 t of dry matter at 12 %, base 15.5 %, target 13 %: 1,000,000 / 0.87 - 1,000,000 / 0.88 = 13,062 kg, 514 bushels of
    // 25.4 kg; down from the base it would be 1,000,000 / 0.845 - 1,000,000 / 0.88.
    const prices = {
      corn: { pricePerBushel: 4, baseMoistureWb: 0.155, shrinkPerPoint: null, discountPerBushelPoint: null },
    };
    const loaded = { ...input.loaded, season: { ...input.loaded.season, prices } } as unknown as LoadedSeason;
    const wanted = (one: BinReview) => ({
      ...one,
      bin: { ...one.bin, goal: 'dry', grain: { ...one.bin.grain, crop: 'corn', targetMoistureWb: 0.13 } },
      grain: { ...one.grain, dryMatterKg: 1e6, dryMatterKgInterval: [0.99e6, 1.01e6] },
      moisture: {
        ...one.moisture,
        start: { ...one.moisture.start, value: 0.18 },
        end: { ...one.moisture.end, value: 0.12, interval: [0.118, 0.122] },
        overdryingLoss: estimate(1e6, 1e6, 1e6),
        overdryingLossBushels: estimate(1e5, 1e5, 1e5),
      },
    });
    const saved = measuresOf(
      loaded,
      { ...input.review, bins: input.review.bins.map(wanted) } as unknown as SeasonReview,
      input.units,
    ).filter(({ kind }) => kind === 'stop-at-target');
    expect(saved[0].saving.value! / 4).toBeCloseTo(13_062 / 25.4, -1);
    expect(saved[0].seen).toContain('drier than its own target');
  });

  // 1,000 t of dry matter at 12 %, base and target 15 %, corn of 25.4 kg a bushel at 4: the mean falls by 0.1 point a day from 18 %.
  const dried = (wetterWb: number, endWb = 0.12, days = 61) => {
    const prices = {
      corn: { pricePerBushel: 4, baseMoistureWb: 0.15, shrinkPerPoint: null, discountPerBushelPoint: null },
    };
    const loaded = { ...input.loaded, season: { ...input.loaded.season, prices } } as unknown as LoadedSeason;
    const lostKg = 1e6 / 0.85 - 1e6 / (1 - endWb);
    const daily = Array.from({ length: days }, (_, day) => {
      const mean = 0.18 - 0.001 * day;
      return { dayMs: day * 86_400_000, mean, low: mean, high: mean + wetterWb, stillAir: true, fanHours: 24 };
    });
    const [one] = input.review.bins;
    const bin = {
      ...one,
      bin: { ...one.bin, goal: 'dry', grain: { ...one.bin.grain, crop: 'corn', targetMoistureWb: 0.15 } },
      grain: { ...one.grain, dryMatterKg: 1e6, dryMatterKgInterval: [0.99e6, 1.01e6] },
      moisture: {
        ...one.moisture,
        start: { ...one.moisture.start, value: 0.18 },
        end: { ...one.moisture.end, value: endWb, interval: [endWb - 0.002, endWb + 0.002] },
        overdryingLoss: estimate((4 * lostKg) / 25.4, (3 * lostKg) / 25.4, (5 * lostKg) / 25.4),
        overdryingLossBushels: estimate(lostKg / 25.4, (0.8 * lostKg) / 25.4, (1.2 * lostKg) / 25.4),
        daily,
      },
    };
    const review = { ...input.review, bins: [bin] } as unknown as SeasonReview;
    return measuresOf(loaded, review, input.units).filter(({ kind }) => kind === 'stop-at-target');
  };

  it('save by stopping at the target only from the day on which its wettest layer was down to 1.5 points above it too', () => {
    // 0.5 point wetter at most: the mean decides, and all of the loss below 15 % is saved.
    const [even] = dried(0.005);
    expect(even.saving.value).toBeCloseTo((4 * (1e6 / 0.85 - 1e6 / 0.88)) / 25.4, 6);
    // 2.95 points wetter: under 16.5 % on the day of a mean of 13.5 %. 1,000,000 / 0.865 - 1,000,000 / 0.88 = 19,706 kg.
    const [wet] = dried(0.0295);
    expect(wet.saving.value! / 4).toBeCloseTo(19_706 / 25.4, -1);
    expect(wet.saving.interval![0]).toBeGreaterThan(0);
    // As sure as the mean at the end, of 12 % (11.8 to 12.2).
    expect(wet.seen).toContain('at a mean of 13.5 % (13.3 to 13.7)');
    expect(wet.todo).toContain('the wettest layer within 1.5 points');
  });

  it('save nothing that is known by stopping where the wettest layer never came down', () => {
    const [never] = dried(0.06);
    expect(never.saving).toMatchObject({ value: null, why: expect.stringContaining('still at 18.0 % at the end') });
  });

  it('go by the sensors’ days as far as they fall, where another source tells the end', () => {
    // The days end at 12 %, the bin at 13: the sensors read a point too dry, so 13.5 % came ten days later than they say.
    const [by] = dried(0.0295, 0.13);
    expect(by.seen).toContain('at a mean of 13.5 %');
  });
});
