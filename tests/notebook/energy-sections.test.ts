import { describe, expect, it } from 'vitest';
import type { BillShare } from '../../src/analysis/energy/bill-types.ts';
import type { DemandWays } from '../../src/analysis/energy/demand-ways-types.ts';
import type { BinReview, SeasonReview } from '../../src/analysis/types.ts';
import { estimate, withheld } from '../../src/base/estimate.ts';
import type { Tariff } from '../../src/money/tariff.ts';
import { billSection } from '../../src/notebook/energy-bills.ts';
import { demandSection } from '../../src/notebook/energy-demand.ts';
import { dryingSection } from '../../src/notebook/energy-drying.ts';
import { sourceSection } from '../../src/notebook/energy-source.ts';
import { perWater } from '../../src/notebook/per-grain.ts';
import { tariffTable } from '../../src/notebook/tariff-section.ts';
import { Units } from '../../src/report/units.ts';
import { exampleInput } from '../report/example-review.ts';

const US = new Units('us', 'USD', 'America/Chicago');
const SI = new Units('si', 'EUR', 'Europe/Berlin');
const about = (value: number, half: number) => estimate(value, value - half, value + half);
const review = (part: Partial<SeasonReview>) => part as SeasonReview;
const day = (month: number, date: number) => Date.UTC(2024, month - 1, date, 5);

describe('had the fans taken turns', () => {
  const way = (cost: number) => ({
    peakKw: cost / 10,
    peak: about(cost / 10, 1),
    billedKw: cost / 10,
    cost: about(cost, 10),
  });
  const ways = (asRun: number, apart: number, turns: number): DemandWays => ({
    tariffId: 'T',
    rule: 0,
    month: '2024-10',
    asRun: way(asRun),
    startsApart: way(apart),
    inTurns: way(turns),
    leastCost: about(turns - 20, 9),
    saving: about(asRun - turns, 5),
  });
  it('says what turns would have saved, what they need, and that starting apart changes nothing', () => {
    const told = demandSection(review({ demandWays: [ways(300, 300, 200)] }), US);
    expect(told.lead).toContain('would have cost 200 USD (190 to 210): 100 USD (95 to 105) less');
    expect(told.notes?.join(' ')).toContain('a quarter hour apart alone would have changed nothing');
    expect(told.notes?.join(' ')).toContain('need a controller that sees all fans');
    expect(told.notes?.join(' ')).toContain('below 180 USD (171 to 189)');
  });
  it('says so where turns change nothing, where nothing hangs on them, and where they broke', () => {
    expect(demandSection(review({ demandWays: [ways(300, 300, 300)] }), US).lead).toContain('nothing worth telling');
    const why = 'A meter that was read once a day tells how many hours, not when.';
    const none = { ...way(0), cost: withheld(why) };
    const untold = {
      ...ways(300, 300, 300),
      startsApart: none,
      inTurns: none,
      leastCost: withheld(why),
      saving: withheld(why),
    };
    const lacking = demandSection(review({ demandWays: [untold] }), US);
    expect(lacking.lead).toMatch(
      /of demand as the fans ran\. Can’t tell what other orders of running would have cost\.$/,
    );
    expect(lacking.notes).toContain(why);
    const part = demandSection(review({ demandWays: [untold, ways(300, 300, 200)] }), US);
    expect(part.lead).toMatch(/Had they taken turns in 1 of 2 months of a rule, .*100 USD/);
    expect(part.notes).toContain(why);
    // 600 as run, of which 300 are of the month that is told.
    expect(part.lead).toMatch(
      /^600 USD .* would have cost 200 USD \(190 to 210\) in place of 300 USD \(290 to 310\): 100/,
    );
    expect(part.tables?.[0].total).toMatchObject({
      asRun: { value: 600 },
      turns: { value: null, why },
      saving: { value: null, why },
    });
    // December, in which no fan ran, tells nothing of the month before it.
    const idle = { ...ways(0, 0, 0), asRun: { ...way(0), peakKw: 0 } };
    expect(demandSection(review({ demandWays: [untold, idle] }), US).lead).toContain('Can’t tell what other orders');
    expect(demandSection(review({ demandWays: [] }), US).lead).toMatch(/^No demand charge hangs/);
    const broken = review({ demandWays: undefined, failures: ['demand charges: no clock'] });
    expect(demandSection(broken, US).lead).toContain('no clock');
  });
});

describe('beside the bills', () => {
  const bill = (part: Partial<BillShare>): BillShare => ({
    tariffId: 'T',
    fromMs: day(10, 1),
    toMs: day(11, 1),
    billedKwh: 1000,
    billedKw: null,
    amount: 200,
    fansKwh: about(600, 60),
    heaterKwh: null,
    untoldHours: 0,
    share: about(0.6, 0.06),
    restKwh: about(400, 60),
    fansMoney: about(100, 10),
    fixed: 20,
    restMoney: about(80, 10),
    cause: null,
    leftOut: null,
    ...part,
  });
  it('adds the bills up with the ends of their intervals: 1,200 of 2,000 kWh, 60 % give or take 6', () => {
    const told = billSection(review({ bills: [bill({}), bill({ fromMs: day(11, 1), toMs: day(12, 1) })] }), US);
    expect(told.lead).toContain('explain 60.0 % (54.0 to 66.0) of the 2,000 kWh billed');
    expect(told.lead).toContain('Of 400 USD paid, 160 USD (140 to 180) are neither');
    expect(told.figures).toHaveLength(1);
  });
  it('says what the fans come to where that is more than was paid, with both prices where it is many times that', () => {
    const cents = bill({ fansMoney: about(6000, 60), restMoney: about(200 - 20 - 6000, 60) });
    const told = billSection(review({ bills: [cents] }), US);
    expect(told.lead).not.toContain('neither');
    expect(told.lead).toContain(
      'By the tariff the fans alone come to 6,000 USD (5,940 to 6,060) beside fixed charges of 20 USD; 200 USD were paid.',
    );
    // 6,000 over 600 kWh, 200 over 1,000 kWh
    expect(told.notes?.join(' ')).toContain(
      'By the tariff T the fans alone come to 30.0 times what its bills came to: 10.000 USD/kWh of theirs, 0.200 USD/kWh of the bills’',
    );
    const dear = bill({ fansMoney: about(240, 10), restMoney: about(-60, 10) });
    expect(billSection(review({ bills: [dear] }), US).notes?.join(' ')).not.toContain('cents for dollars');
  });
  it('names the bill that the fans exceed, with the cause; counts bills in which a log lacks', () => {
    const over = bill({ fansKwh: about(1200, 10), restKwh: about(-200, 10), cause: 'Most likely X.', untoldHours: 30 });
    const notes = billSection(review({ bills: [over] }), US).notes?.join(' ') ?? '';
    expect(notes).toContain('The bill from 1 Oct 2024, T: the fans explain more than was billed. Most likely X.');
    expect(notes).toContain('In the time of 1 bill');
  });
  it('a bill that says no energy has no share, and no figure stands alone on it', () => {
    const none = bill({ billedKwh: null, share: withheld('no'), restKwh: withheld('no') });
    const told = billSection(review({ bills: [none] }), US);
    expect(told.lead).toMatch(/^Can’t tell what share/);
    expect(told.figures).toEqual([]);
    expect(billSection(review({ bills: [] }), US).lead).toContain('no bills are given');
  });
});

describe('energy for what drying did', () => {
  it('1 kWh a kilogram of water is 1,547.7 Btu a pound: 3,412.14 / 2.20462', () => {
    expect(perWater(about(1, 0), US).value).toBeCloseTo(1547.7, 1);
    expect(perWater(about(1, 0), SI).value).toBe(1);
  });
  it('tells bins outside what fits published figures, and that none can be told where none is', () => {
    const { bins } = exampleInput().review;
    const unit = (stands: 'within' | 'below' | null): BinReview => ({
      ...bins[0],
      unitEnergy: {
        kwhPerPoint: about(1500, 100),
        kwhPerBushelPoint: about(0.1, 0.01),
        kwhPerKgWater: about(0.4, 0.1),
        plausible: { stands, text: ['It lies there.'], sourceKeys: ['ndsu-2007-natural-air'] },
        why: null,
      },
    });
    const below = dryingSection([unit('below')], US);
    expect(below.lead).toContain('0.100 kWh a bushel-point (0.090 to 0.110)');
    expect(below.lead).toContain('North 36 lies outside');
    expect(below.notes?.[0]).toBe('North 36: It lies there.');
    expect(dryingSection([unit('within')], US).lead).toContain('None can be told to lie outside');
    // Of air with heat none are published here: nothing is held beside it, and the bin's reason is told.
    const heated = dryingSection([unit(null)], US);
    expect(heated.lead).toMatch(/No published figures of such drying stand beside it\.$/);
    expect(heated.notes?.[0]).toBe('North 36: It lies there.');
    expect(heated.notes).toHaveLength(2);
    expect(dryingSection(bins.slice(2), US).lead).toMatch(/^Can’t tell what a point took/);
  });
});

describe('where each fan’s energy comes from', () => {
  it('names the way, and fans without a log', () => {
    const { loaded, review: whole } = exampleInput();
    const told = sourceSection(loaded, whole);
    const rows = told.table?.rows ?? [];
    expect(rows).toHaveLength(loaded.season.fans.length);
    expect(rows.map((row) => row.fan)).toEqual(loaded.season.fans.map((fan) => fan.id));
    for (const row of rows)
      expect(row.from === 'no log' ? row.energy : null).toEqual(
        row.from === 'no log' ? { value: null, why: 'No log of this fan.' } : null,
      );
    expect(sourceSection(loaded, { ...whole, fans: [] }).lead).toMatch(/^Can’t tell/);
  });
});

describe('what the tariff charged', () => {
  it('names fans of its tariffs that have no log, and no others', () => {
    const { loaded, review: whole } = exampleInput();
    const { tariffId } = whole.tariffMonths[0];
    const fans = loaded.season.fans.map((fan) => ({ ...fan, tariffId }));
    const told = (ids: readonly string[]) => {
      const logged = whole.fans.filter(({ fanId }) => !ids.includes(fanId));
      const season = {
        ...loaded.season,
        fans: fans.filter(({ id }) => ids.includes(id) || logged.some((f) => f.fanId === id)),
      };
      return tariffTable({ ...loaded, season }, { ...whole, fans: logged }, US);
    };
    const all = told([]);
    expect(all.lead).not.toContain('that have a log');
    expect(all.notes?.join(' ')).not.toContain('no log');
    const lacking = told([fans[0].id]);
    expect(lacking.lead).toContain('for the fans that have a log, over');
    expect(lacking.notes?.join(' ')).toContain(`Fan ${fans[0].id} of these tariffs has no log`);
  });
  it('says of a tariff whose fans all have no log that nothing is told of it', () => {
    const { loaded, review: whole } = exampleInput();
    const tariff = { id: 'X', demand: [], connectedPerHpYear: null } as unknown as Tariff;
    const silent = { ...loaded.season.fans[0], id: 'FX', tariffId: 'X' };
    const season = {
      ...loaded.season,
      tariffs: [...loaded.season.tariffs, tariff],
      fans: [...loaded.season.fans, silent],
    };
    const told = tariffTable({ ...loaded, season }, whole, US);
    expect(told.lead).toContain('for the fans that have a log, over');
    expect(told.notes).toContain('Nothing is told of tariff X: no fan on it has a log.');
  });
  it('says how far back a ratchet sees, where one is stated', () => {
    const { loaded, review: whole } = exampleInput();
    const { tariffId } = whole.tariffMonths[0];
    const told = (ratchet: number | null) => {
      const tariff = { id: tariffId, demand: [{ pricePerKw: 10, when: null, ratchet }] } as unknown as Tariff;
      return tariffTable({ ...loaded, season: { ...loaded.season, tariffs: [tariff] } }, whole, US).notes?.join(' ');
    };
    expect(told(0.6)).toContain('looks back no further than the fans’ logs do, to Oct 2024:');
    expect(told(null)).not.toContain('ratchet');
  });
});
