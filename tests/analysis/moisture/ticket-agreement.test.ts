import { describe, expect, it } from 'vitest';
import { observeMoisture } from '../../../src/analysis/moisture/observed-moisture.ts';
import { ticketAgreement } from '../../../src/analysis/moisture/ticket-agreement.ts';
import type { Ticket } from '../../../src/analysis/moisture/tickets.ts';
import { ticketsSummary } from '../../../src/analysis/moisture/tickets-summary.ts';
import { type BinReview, FAN_OFF, FAN_ON } from '../../../src/analysis/types.ts';
import { DAY, makeBin, makeCable, makeSeason, makeSeries, makeSpans, T0 } from './make-bin.ts';

const CABLES = [makeCable('C', 0, 1, 3, 5), makeCable('R', 3, 1, 3, 5)];
const BIN = makeBin(CABLES, { unloadedMs: T0 + 20 * DAY });
const SPANS = makeSpans([48, FAN_OFF], [200, FAN_ON], [232, FAN_OFF]);
const load = (direction: 'in' | 'out', tonnes: number, percent: number, ms: number): Ticket => ({
  timeMs: ms,
  direction,
  netKg: 1000 * tonnes,
  moistureWb: percent / 100,
});
const LOADED = T0;
const OUT = T0 + 20 * DAY;

function held(tickets: Ticket[], weightKg: number | null, spans = SPANS) {
  const observed = observeMoisture({
    bin: BIN,
    season: makeSeason(),
    series: CABLES.flatMap((cable) =>
      [1, 2, 3].map((sensor) => makeSeries(cable, sensor, 0, 480, (hour) => (hour < 48 ? 0.18 : 0.15))),
    ),
    spans,
    fanHours: { value: 200, interval: null, why: null },
    tickets,
  });
  return ticketAgreement(observed, weightKg, null);
}

it('summary.json says why one of the two moments is missing, and nothing where both stand', () => {
  const why = (tickets: Ticket[]) =>
    ticketsSummary({ moisture: { tickets: held(tickets, 15_000) } } as unknown as BinReview).why;
  const loadIn = load('in', 15, 18, LOADED);
  expect(why([loadIn])).toContain('at the end: no loads out with a moisture');
  expect(why([load('out', 14, 15, OUT)])).toContain('at the start: no loads in with a moisture');
  expect(why([loadIn, load('out', 14, 15, OUT)])).toBeNull();
});

describe('ticketAgreement', () => {
  it('agrees within the intervals of both', () => {
    // 10 t at 18.4 % and 5 t at 17.8 %: (1.84 + 0.89) / 15 = 18.2 %.
    const { start, end, sharedBias, likely } = held(
      [load('in', 10, 18.4, LOADED), load('in', 5, 17.8, LOADED)],
      15_000,
    );
    expect(start!.tickets.value).toBeCloseTo(0.182, 9);
    expect(start!.difference.value).toBeCloseTo(-0.2, 9);
    expect(start!.agree).toBe(true);
    expect(end).toBeNull();
    expect(sharedBias.value).toBeCloseTo(-0.2, 9);
    expect(likely).toEqual([]);
  });

  it('says what would explain a difference at both ends', () => {
    const { start, end, sharedBias, drift, likely } = held(
      [load('in', 15, 20, LOADED), load('out', 14.5, 17, OUT)],
      15_000,
    );
    expect(start!.agree).toBe(false);
    expect(end!.agree).toBe(false);
    expect(end!.covered).toBeCloseTo(14.5 / 15, 9);
    // Both read two points drier than the tickets: one bias of -2 explains both, and the ends do not part.
    expect(sharedBias.value).toBeCloseTo(-2, 9);
    expect(sharedBias.interval![0]).toBeLessThan(-2);
    expect(drift.value).toBeCloseTo(0, 9);
    const text = likely.join(' ');
    expect(text).toContain('At the start the sensors read 2.0 points');
    expect(text).toContain('drier');
    expect(text).toContain('cancels in the points removed');
  });

  it('says that no bias explains ends that part', () => {
    const { drift, likely } = held([load('in', 15, 18, LOADED), load('out', 14.5, 17.5, OUT)], 15_000);
    expect(drift.value).toBeCloseTo(-2.5, 9);
    expect(drift.interval![1]).toBeLessThan(0);
    expect(likely.join(' ')).toContain('No one bias explains both ends');
  });

  it('takes what is no bias for a mistake in the tickets', () => {
    const { likely } = held([load('in', 15, 25, LOADED)], 15_000);
    expect(likely.join(' ')).toContain('belong to this bin');
  });

  it('does not judge loads that are a part of the grain', () => {
    const { end, sharedBias } = held([load('out', 5, 17, OUT)], 15_000);
    expect(end!.agree).toBeNull();
    expect(end!.why).toContain('33 %');
    expect(sharedBias.value).toBeNull();
  });

  it('allows for the fans that ran between the loads and the readings', () => {
    // 20 fan hours before the first still air, 200 between the two days, which took out 3 points: 20 * 3 / 200 = 0.3.
    const early = makeSpans([20, FAN_ON], [28, FAN_OFF], [200, FAN_ON], [232, FAN_OFF]);
    const { start } = held([load('in', 15, 19, LOADED)], 15_000, early);
    expect(start!.fanHoursBetween).toBeCloseTo(20, 9);
    expect(start!.expected.value).toBeCloseTo(-0.3, 9);
    // From nothing to twice the season's mean rate.
    expect(start!.expected.interval![0]).toBeCloseTo(-0.6, 9);
    expect(start!.expected.interval![1]).toBe(0);
    expect(start!.difference.value).toBeCloseTo(-1, 9);
  });

  it('has nothing to say without tickets', () => {
    const none = held([], 15_000);
    expect(none.start).toBeNull();
    expect(none.why).toContain('no scale tickets');
  });
});
