import { describe, expect, it } from 'vitest';
import { grainAmount } from '../../../src/analysis/grain/grain-amount.ts';
import type { Ticket } from '../../../src/analysis/moisture/tickets.ts';
import { DAY, HOUR, makeBin, T0 } from '../moisture/make-bin.ts';

// A bin of 10 m by 6 m of 720 kg/m3 holds 471.24 m3, by volume 339,292 kg; packed by 2 % 346,078 kg: 14 loads of 24,720 kg.
const NET = 24_720;
const HOLDS = 14 * NET;
const load = (hour: number, rest: Partial<Ticket> = {}): Ticket => ({
  timeMs: T0 - 8 * HOUR + hour * HOUR,
  direction: 'in',
  netKg: NET,
  moistureWb: 0.18,
  ...rest,
});
const loads = Array.from({ length: 14 }, (_, i) => load(i / 2));
const START = { value: 0.17, interval: [0.165, 0.175] as [number, number] };
const told = (tickets: readonly Ticket[], bin = makeBin([])) => grainAmount(bin, START, tickets);
const why = (tickets: readonly Ticket[], bin = makeBin([])) => told(tickets, bin).notes!.join(' ');

describe('the weight as filled from scale tickets', () => {
  it('is their sum where they cover the filling, over the legal 56 lb, with the moisture of the tickets', () => {
    const amount = told(loads);
    expect(amount.from).toBe('tickets');
    expect(amount.weightKg).toBeCloseTo(HOLDS, 6);
    expect(amount.bushels).toBeCloseTo(HOLDS / (56 * 0.45359237), 6);
    expect(amount.dryMatterKg).toBeCloseTo(0.82 * HOLDS, 6);
    // By hand: 1.645 x 0.2 % = 0.329 %.
    expect(amount.bushelsInterval![1] / amount.bushels!).toBeCloseTo(1.00329, 5);
    // Meter 0.6/1.96 = 0.306 and sampling 0.3/sqrt 14 = 0.080 point: 0.3165 x 1.645 = 0.5206 point, over 82 0.635 %; with the scale 0.715 %.
    expect(amount.dryMatterKgInterval![0] / amount.dryMatterKg!).toBeCloseTo(1 - 0.00715, 5);
    expect(amount.notes).toEqual([]);
    // Volume and depth stay those of the bin.
    expect(amount.volumeM3).toBeCloseTo(471.239, 3);
  });

  it('moistures lacking: the weight counts, the dry matter takes the moisture at the start', () => {
    const amount = told(loads.map((one, i) => (i === 3 ? { ...one, moistureWb: Number.NaN } : one)));
    expect(amount.from).toBe('tickets');
    expect(amount.dryMatterKg).toBeCloseTo(0.83 * HOLDS, 6);
  });

  it('no tickets: the volume, and nothing to say of tickets', () => {
    expect(told([])).toMatchObject({ from: 'volume', notes: [] });
    expect(told([load(200 * 24, { direction: 'out' })])).toMatchObject({ from: 'volume', notes: [] });
  });

  it('loads in another unit than stated: said so, by how far they are off', () => {
    // By hand: pounds taken for kilograms weigh 1/0.4536 = 2.2 times, kilograms taken for pounds 0.45, each of HOLDS/339,292 = 1.02.
    const taken = (times: number) => why(loads.map((one) => ({ ...one, netKg: times * NET })));
    expect(taken(1 / 0.45359237)).toContain(
      'their 14 loads weigh 2.2 times what depth and test weight tell, so the unit of their weight is another than season.yaml says',
    );
    expect(taken(0.45359237)).toContain('their 14 loads weigh 46 % of what depth and test weight tell, so the unit');
    expect(taken(0.45359237 / 1000)).toContain('their 14 loads weigh 0.046 % of what');
    expect(taken(1.3)).toContain('33 % more than depth and test weight tell, so some were weighed twice');
  });

  it('only some loads: not used, and said why', () => {
    const amount = told(loads.slice(0, 11));
    expect(amount.from).toBe('volume');
    expect(amount.bushels).toBeCloseTo(((471.2389 * 720) / 56) * (1 / 0.45359237), 0);
    // 11 x 24,720 = 271,920 of 339,292: 19.9 % less.
    expect(why(loads.slice(0, 11))).toContain('11 loads weigh 20 % less');
    expect([told(loads.slice(0, 11)).contradicted, told(loads).contradicted, told([]).contradicted]).toEqual([
      true,
      false,
      false,
    ]);
  });

  it('grain of last year below: the tickets weigh less than the volume, not used', () => {
    const bin = makeBin([], { depthSteps: [{ fromMs: Number.NEGATIVE_INFINITY, depthM: 7.5 }] });
    expect(why(loads, bin)).toContain('older grain lay in the bin');
  });

  it('a load without a weight, or with a weight of none: not used', () => {
    expect(why([...loads, load(7.2, { netKg: Number.NaN })])).toContain('1 of 15 loads has no weight that can be used');
    expect(why([...loads, load(7.2, { netKg: -NET })])).toContain('no weight that can be used');
  });

  it('a ticket told twice counts once', () => {
    const amount = told([...loads, loads[2], { ...loads[5], moistureWb: Number.NaN }]);
    expect(amount.weightKg).toBeCloseTo(HOLDS, 6);
    expect(amount.dryMatterKg).toBeCloseTo(0.82 * HOLDS, 6);
    expect(amount.notes!.join()).toContain('2 scale tickets');
  });

  it('tickets with bare dates: like ones are loads of their own where the volume asks for them', () => {
    const day = (i: number) => ({ ...loads[i], timeMs: T0 - (i % 2) * DAY });
    const bare = loads.map((_, i) => day(i));
    expect(told(bare).weightKg).toBeCloseTo(HOLDS, 6);
    // With a time of day, loads alike at one moment are one load: two moments, two loads.
    const twice = loads.map((one, i) => ({ ...one, timeMs: T0 - (i > 6 ? 20 * 60_000 : 0) }));
    expect(why(twice)).toContain('2 loads weigh');
  });

  it('a slip of ten in one load: not used, and the load named', () => {
    expect(why(loads.map((one, i) => (i === 4 ? { ...one, netKg: 10 * NET } : one)))).toContain(
      'three times the usual',
    );
  });

  it('a ticket of another season is left out', () => {
    const amount = told([...loads, load(-300 * 24), load(120 * 24)]);
    expect(amount.weightKg).toBeCloseTo(HOLDS, 6);
    expect(amount.notes!.join()).toContain('2 scale tickets in, dated out of the filling');
    expect(why([load(-300 * 24)])).toContain('the one load in is dated out of the filling');
  });

  it('loads out while it was filled are taken off; much in and out is not to be told', () => {
    const cored = told([...loads, load(6.1), load(6.2, { direction: 'out', netKg: 20_000 })]);
    expect(cored.weightKg).toBeCloseTo(HOLDS + NET - 20_000, 6);
    expect(cored.notes!.join()).toContain('1 load out during the filling');
    const turned = [...loads, ...loads.map((one) => ({ ...one, timeMs: one.timeMs - 20 * HOUR }))];
    const out = loads.map((one) => ({ ...one, direction: 'out' as const, timeMs: one.timeMs - 10 * HOUR }));
    expect(why([...turned, ...out])).toContain('in and out again');
  });

  it('several fills: all loads from the first grain to the full depth', () => {
    const at = (day: number, depthM: number) => ({ fromMs: T0 + day * DAY, depthM });
    const bin = makeBin([], { depthSteps: [at(0, 2), at(12, 4), at(25, 6)], filledMs: T0 });
    const spread = loads.map((one, i) => ({
      ...one,
      timeMs: T0 + (i < 5 ? 0 : i < 10 ? 12 : 25) * DAY - (i % 5) * HOUR,
    }));
    expect(told(spread, bin)).toMatchObject({ from: 'tickets', notes: [] });
    // A `filled` that names the first day: loads that go on within ten days of each other belong to it.
    const slow = loads.map((one, i) => ({ ...one, timeMs: T0 + i * DAY + 9 * HOUR }));
    expect(told(slow).weightKg).toBeCloseTo(HOLDS, 6);
  });

  it('no depth stated: nothing to hold the tickets against', () => {
    const amount = told(loads, makeBin([], { depthSteps: [] }));
    expect(amount.bushels).toBeNull();
    expect(amount.notes!.join()).toContain('no depth');
  });
});
