import { describe, expect, it } from 'vitest';
import { binMoisture } from '../../../src/analysis/moisture/bin-moisture.ts';
import type { Ticket } from '../../../src/analysis/moisture/tickets.ts';
import { FAN_OFF, FAN_ON } from '../../../src/analysis/types.ts';
import { DAY, HOUR, makeBin, makeCable, makeSeason, makeSeries, makeSpans, T0 } from './make-bin.ts';

const CABLES = [makeCable('C', 0, 1, 3, 5), makeCable('R', 3, 1, 3, 5)];
const BIN = makeBin(CABLES, { unloadedMs: T0 + 20 * DAY });
const PRICED = { prices: { corn: { pricePerBushel: 4, baseMoistureWb: 0.15, schedules: [] } } };
// The fan runs from the filling on, so the start is read in moving air; it stands still before the end.
const SPANS = makeSpans([240, FAN_ON], [240, FAN_OFF]);
// 14 loads of 24,720 kg are the bin of 339,292 kg, packed by 2 %; 14 of 23,848 kg come out with the same dry matter at 15 %.
const loads = (direction: 'in' | 'out', netKg: number, percent: number, ms: number): Ticket[] =>
  Array.from({ length: 14 }, (_, i) => ({
    timeMs: ms + i * HOUR,
    direction,
    netKg: netKg + i,
    moistureWb: percent / 100,
  }));
const LOADS_IN = loads('in', 24_720, 18, T0 - 14 * HOUR);
const LOADS_OUT = loads('out', 23_848, 15, T0 + 20 * DAY);

/** The bin whose sensors read so at the start and the end. */
function told(startWb: number, endWb: number, tickets: readonly Ticket[]) {
  return binMoisture({
    bin: BIN,
    season: makeSeason(PRICED as never),
    series: CABLES.flatMap((cable) =>
      [1, 2, 3].map((sensor) =>
        makeSeries(cable, sensor, 0, 480, (hour) => startWb + ((endWb - startWb) * Math.min(hour, 240)) / 240),
      ),
    ),
    spans: SPANS,
    fanHours: { value: 240, interval: null, why: null },
    tickets,
  });
}

describe('a change told by two sources', () => {
  it('stands where the sensors’ own change meets it', () => {
    const { start, end, pointsRemoved, ticketsAlone } = told(0.186, 0.152, [...LOADS_IN, ...LOADS_OUT]);
    expect([start.from, end.from, ticketsAlone]).toEqual(['tickets', 'sensors', false]);
    expect(pointsRemoved.value).toBeCloseTo(2.8, 6);
  });

  it('is the tickets’ where both sources say that the grain dried and the two together that it took up water', () => {
    const { start, end, pointsRemoved, ticketsAlone, notes, layers } = told(0.38, 0.25, [...LOADS_IN, ...LOADS_OUT]);
    expect([start.from, end.from, ticketsAlone]).toEqual(['tickets', 'tickets', true]);
    expect(pointsRemoved.value).toBeCloseTo(3, 9);
    // By hand: a meter's 0.6/1.96 and 0.3/sqrt 14 of sampling at each end, 0.4475 together, times 1.645.
    expect(pointsRemoved.interval![1] - 3).toBeCloseTo(0.736, 3);
    expect(notes.join(' ')).toContain('contradict each other, so neither moment');
    expect(notes.join(' ')).not.toContain('surer than the sensors');
    // The thirds are the sensors' 25 %: the tickets' 15 % are none of them mixed.
    expect(layers?.end.map(({ moisture }) => Math.round(100 * (moisture.value ?? 0)))).toEqual([25, 25, 25]);
    expect(layers?.unload.mixed).toMatchObject({ value: null, why: expect.stringContaining('contradict each other') });
  });

  it('is withheld where only the loads in were weighed, and over-drying with it', () => {
    const { pointsRemoved, overdryingLossBushels, start } = told(0.38, 0.25, LOADS_IN);
    // 18 % in and 25 % out: 7 points up; by the sensors 38 % at first, less a tenth of 13 points in the day's mean.
    expect(pointsRemoved.value).toBeNull();
    expect(pointsRemoved.why).toMatch(
      /by tickets at the start and sensors at the end the grain took up 7\.0 points .* by the sensors at both it lost 12\.\d points/,
    );
    expect(overdryingLossBushels.why).toBe(pointsRemoved.why);
    expect(start.value).toBeCloseTo(0.18, 6);
  });

  it('stands where the loads out bear out the sensors’ end, however wrong the sensors were at the start', () => {
    const { start, end, pointsRemoved } = told(0.38, 0.151, [...LOADS_IN, ...LOADS_OUT]);
    expect([start.from, end.from]).toEqual(['tickets', 'sensors']);
    expect(pointsRemoved.value).toBeCloseTo(2.9, 6);
  });

  it('loads out that are part of the grain are no change of the bin', () => {
    const { pointsRemoved } = told(0.38, 0.25, [...LOADS_IN, ...LOADS_OUT.slice(0, 7)]);
    expect(pointsRemoved.value).toBeNull();
  });
});
