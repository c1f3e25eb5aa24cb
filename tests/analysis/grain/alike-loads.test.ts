import { describe, expect, it } from 'vitest';
import { fillLoads } from '../../../src/analysis/grain/fill-loads.ts';
import { fillTimes } from '../../../src/analysis/grain/fill-times.ts';
import { grainAmount } from '../../../src/analysis/grain/grain-amount.ts';
import { weightByVolume } from '../../../src/analysis/grain/weight-by-volume.ts';
import { binMoisture } from '../../../src/analysis/moisture/bin-moisture.ts';
import type { Ticket } from '../../../src/analysis/moisture/tickets.ts';
import { FAN_OFF, FAN_ON } from '../../../src/analysis/types.ts';
import { ticketNotes, waterByTickets } from '../../../src/analysis/water/water-by-tickets.ts';
import { DAY, makeBin, makeCable, makeSeason, makeSeries, makeSpans, T0 } from '../moisture/make-bin.ts';

// A bin of 10 m by 6 m of 720 kg/m3 holds 339,292 kg by volume. Of 14 loads of 24,720 kg on two dates, all at 18 %, only two
// are unlike: 49,440 kg cannot be the filling, 346,080 kg (2 % more) can.
const NET = 24_720;
const CABLE = makeCable('C', 0, 1, 3, 5);
const BIN = makeBin([CABLE], { unloadedMs: T0 + 20 * DAY });
const bare = (count: number, direction: 'in' | 'out', netKg: number, moistureWb: number, ms: number): Ticket[] =>
  Array.from({ length: count }, (_, i) => ({ timeMs: ms + (i % 2) * DAY, direction, netKg, moistureWb }));
const LOADS_IN = bare(14, 'in', NET, 0.18, T0 - DAY);
// 14 x 24,720 x 0.82 / 0.85 = 333,865 kg come out at 15 %, in 14 loads of 23,847.5 kg.
const LOADS_OUT = bare(14, 'out', (NET * 0.82) / 0.85, 0.15, T0 + 20 * DAY);

const season = makeSeason();
const spans = makeSpans([48, FAN_OFF], [200, FAN_ON], [232, FAN_OFF]);
const fanHours = { value: 200, interval: null, why: null };
function held(tickets: readonly Ticket[]) {
  const series = [1, 2, 3].map((sensor) => makeSeries(CABLE, sensor, 0, 480, (hour) => (hour < 48 ? 0.18 : 0.15)));
  return binMoisture({ bin: BIN, season, series, spans, fanHours, tickets }).tickets!;
}
/** The end of a bin without sensors. */
function ticketMoisture(tickets: readonly Ticket[]) {
  return binMoisture({ bin: BIN, season, series: [], spans, fanHours, tickets }).end;
}

describe('loads alike by a bare date', () => {
  const tickets = [...LOADS_IN, ...LOADS_OUT];
  const volume = weightByVolume(BIN, fillTimes(BIN).depthM);

  it('counted as loads of their own for the weight, they are so for the water', () => {
    expect(grainAmount(BIN, null, tickets)).toMatchObject({ from: 'tickets', weightKg: 14 * NET });
    // By hand: 346,080 x 0.82 = 283,786 kg of dry matter; 18/82 - 15/85 = 0.043042 of it is 12,215 kg, which is also 346,080 - 333,865.
    const water = waterByTickets(tickets, fillTimes(BIN), volume);
    expect(water.why).toBeNull();
    expect(water.value! / 12_215).toBeCloseTo(1, 4);
  });

  it('and where the sensors are held against them', () => {
    expect(held(tickets).start).toMatchObject({ loads: 14, covered: 1, agree: true });
  });

  it('the loads without their doubles fit: a double is a row told twice, for all of them', () => {
    const unlike = LOADS_IN.map((one, i) => ({ ...one, netKg: one.netKg + i }));
    const { in: counted, doubles, alikeKept } = fillLoads([...unlike, unlike[3]], fillTimes(BIN), volume);
    expect([counted.length, doubles.length, alikeKept]).toEqual([14, 1, false]);
  });

  it('and so out: a row told twice is left out of the water, the share and the mean where the rest is what came in', () => {
    // By a bare date, each load by a kilogram or more unlike the others, and two rows of the loads out told twice.
    const unlike = (loads: readonly Ticket[]) => loads.map((one, i) => ({ ...one, netKg: one.netKg + i }));
    const [loadsIn, loadsOut] = [unlike(LOADS_IN), unlike(LOADS_OUT)];
    const fill = fillTimes(BIN);
    const once = waterByTickets([...loadsIn, ...loadsOut], fill, volume);
    expect(once.value! / 12_215).toBeCloseTo(1, 2);
    const twice = [...loadsIn, ...loadsOut, loadsOut[3], loadsOut[9]];
    expect(waterByTickets(twice, fill, volume)).toEqual(once);
    expect(ticketNotes(twice, fill, volume)).toEqual([
      '2 scale tickets out with the moment, weight and moisture of another counted once.',
    ]);
    const { end } = held(twice);
    expect([end!.loads, end!.covered! > 1]).toEqual([14, false]);
  });

  it('out, with a time of day: a row told twice is none of its own, whatever the dry matter would ask', () => {
    const timed = LOADS_IN.map((one, i) => ({ ...one, timeMs: one.timeMs + i * 60_000 }));
    const out = LOADS_OUT.map((one, i) => ({ ...one, timeMs: one.timeMs + i * 60_000 }));
    const lacking = [...timed, ...out.slice(0, 13), { ...out[5], moistureWb: Number.NaN }];
    const { why } = waterByTickets(lacking, fillTimes(BIN), volume);
    // 13 of 14 loads: 93 %.
    expect(why).toContain('93 % of the dry matter that came in');
    expect(why).toContain('1 scale ticket out with the moment, weight and moisture of another counted once.');
    expect(ticketMoisture(lacking)).toMatchObject({ value: expect.closeTo(0.15, 9), readings: 13 });
  });

  it('out of the season before are no end of this one’s, where no sensor tells it', () => {
    const lastYear = bare(6, 'out', NET, 0.12, T0 - 200 * DAY);
    expect(ticketMoisture([...LOADS_IN, ...lastYear, ...LOADS_OUT])).toMatchObject({
      value: expect.closeTo(0.15, 9),
      readings: 14,
    });
  });

  it('out of a bin still being filled: taken off once', () => {
    const cored: Ticket = { timeMs: T0 - DAY + 1000, direction: 'out', netKg: 1000, moistureWb: 0.18 };
    const { out } = fillLoads([...LOADS_IN, cored, cored], fillTimes(BIN), volume);
    expect(out).toHaveLength(1);
  });

  it('no depth to decide by: alike count once, and the water says so', () => {
    const { why } = waterByTickets(tickets, fillTimes(BIN), null);
    // 2 of 14 in, 14 out: 700 %.
    expect(why).toContain('700 % of the dry matter that came in');
    expect(why).toContain('12 scale tickets in with the moment, weight and moisture of another counted once.');
  });
});
