import { describe, expect, it } from 'vitest';
import type { BinMoisture, BinReview } from '../../src/analysis/types.ts';
import { estimate, withheld } from '../../src/base/estimate.ts';
import { errorsSection } from '../../src/notebook/layers-errors.ts';
import { layersSection } from '../../src/notebook/layers-section.ts';
import { stagesSection } from '../../src/notebook/layers-stages.ts';
import { errorTable } from '../../src/notebook/moisture-tables.ts';
import { agreementSection } from '../../src/notebook/probes-section.ts';
import { exampleInput } from '../report/example-review.ts';

const { review, units } = exampleInput();

function bin(name: string, moisture: Partial<BinMoisture>, rest: Partial<BinReview> = {}): BinReview {
  const [first] = review.bins;
  return { ...first, ...rest, bin: { ...first.bin, name }, moisture: { ...first.moisture, ...moisture } };
}

const third = (name: 'bottom' | 'middle' | 'top', wb: number) => ({
  name,
  fromM: 0,
  toM: 2,
  moisture: estimate(wb, wb - 0.005, wb + 0.005),
  sensors: 4,
});
const THIRDS = [third('bottom', 0.14), third('middle', 0.15), third('top', 0.18)];
const layersOf = (low: number) => ({
  start: THIRDS,
  end: THIRDS,
  spread: estimate(4, low, 5),
  unload: {
    mixed: estimate(0.157, 0.15, 0.164),
    centre: withheld('No cable hangs there.'),
    centreCable: null,
    driest: THIRDS[0],
    wettest: THIRDS[2],
  },
  why: null,
});

describe('the moisture page', () => {
  it('names the wettest third only where the difference is sure', () => {
    expect(layersSection([bin('North', { layers: layersOf(3) })], units).lead).toBe(
      'At the end the wettest third stood out: in North, the top third by 4.0 points (3.0 to 5.0) over the bottom.',
    );
    expect(layersSection([bin('North', { layers: layersOf(0.1) })], units).lead).toContain('In no bin');
    expect(layersSection([bin('North', { layers: undefined })], units).lead).toContain('Can’t tell');
  });

  it('tells core and mix, and a dash with its reason', () => {
    const [row] = layersSection([bin('North', { layers: layersOf(3) })], units).table!.rows;
    expect(row.mixed).toEqual(estimate(0.157, 0.15, 0.164));
    expect(row.centre).toEqual(withheld('No cable hangs there.'));
  });

  it('says which errors cancel in a difference of the same sensors', () => {
    const moisture = {
      pointsRemoved: estimate(3, 2.6, 3.4),
      errorParts: [
        { cause: 'noise of the readings', sd: 0.1 },
        { cause: 'spread between cables', sd: 0.2 },
      ],
      end: { ...review.bins[0].moisture.end, interval: [0.145, 0.155] as [number, number] },
      endParts: [
        { cause: 'bias that the sensors share', sd: 0.3 },
        { cause: 'noise of the readings', sd: 0.1 },
      ],
    };
    const { rows, total } = errorTable(bin('North', moisture).moisture);
    expect(rows.map((row) => row.cause)).toEqual([
      'Bias that the sensors share',
      'Noise of the readings',
      'Spread between cables',
    ]);
    expect(rows[0].off).toEqual({ value: null, why: expect.stringMatching(/^It cancels/) });
    // Half of 0.8 points times 0.1 / sqrt(0.05) = 0.1789; half of 1 point times 0.1 / sqrt(0.1) = 0.1581.
    expect(rows[1].off).toBeCloseTo(0.1789, 4);
    expect(rows[1].end).toBeCloseTo(0.1581, 4);
    expect(rows[2].end).toEqual({ value: null, why: expect.stringMatching(/no part in the moisture at the end/) });
    expect(total).toMatchObject({ end: expect.closeTo(0.5, 9), off: expect.closeTo(0.4, 9) });
    const [line] = errorsSection([bin('North', moisture)], units).table!.rows;
    expect(line.fixed).toBeCloseTo(0.4743, 4);
    expect(line.unseen).toBeCloseTo(0.3578, 4);
    expect(line.rest).toBe(0);
    expect(line.all).toBeCloseTo(0.4, 9);
  });

  it('says that nothing cancels between two instruments', () => {
    const mixed = bin('North', {
      pointsRemoved: estimate(3, 2, 4),
      errorParts: [
        { cause: 'moisture meter of the tickets, at the start', sd: 0.3 },
        { cause: 'bias that the sensors share, at the end', sd: 0.3 },
      ],
      end: { ...review.bins[0].moisture.end, interval: [0.145, 0.155] },
      endParts: [{ cause: 'bias that the sensors share', sd: 0.3 }],
    });
    const [line] = errorsSection([mixed], units).table!.rows;
    expect(line.fixed).toMatchObject({ value: null, why: expect.stringContaining('nothing cancels') });
    // Both count in full: half of 2 points.
    expect(line.rest).toBeCloseTo(1, 9);
  });

  it('has a section of stages only where there are any', () => {
    expect(stagesSection([bin('North', { stages: null })], units)).toBeNull();
    const stage = {
      span: { fromMs: 0, toMs: 86_400_000 },
      depthM: 3,
      share: 0.5,
      fanHours: { value: null, interval: null, why: 'No log tells when the fan ran.' },
      likelyHours: null,
      startWb: 0.14,
      endWb: 0.15,
      points: estimate(-1, -1.2, -0.8),
      mixed: null,
    };
    const stages = {
      stages: [stage, { ...stage, mixed: estimate(0.4, 0.1, 0.7) }],
      perFullBushel: estimate(-1, -1.3, -0.7),
      stayed: estimate(-2, -2.4, -1.6),
      outsideFanHours: null,
      notes: [],
    };
    expect(stagesSection([bin('North', { stages })], units)!.lead).toBe(
      'North had 2 stages, in which each bushel of the full bin took up 1.0 points (0.7 to 1.3).',
    );
  });

  it('says whether tickets and hand samples bear the sensors out', () => {
    const moment = {
      moment: 'start' as const,
      sensors: estimate(0.18, 0.175, 0.185),
      tickets: estimate(0.2, 0.195, 0.205),
      loads: 9,
      covered: 1,
      difference: estimate(-2, -2.7, -1.3),
      fanHoursBetween: 0,
      hoursLogged: true,
      expected: { value: 0, interval: [0, 0] as [number, number], why: null },
      agree: false,
      why: null,
    };
    const tickets = {
      start: moment,
      end: null,
      sharedBias: estimate(-2, -2.6, -1.4),
      drift: withheld('Only one.'),
      likely: ['Most likely all sensors read dry.'],
      why: null,
    };
    const apart = agreementSection([bin('North', { tickets })], units);
    expect(apart.lead).toBe(
      'Sensors and scale tickets do not agree in North at the start. No hand samples can be held against the cables.',
    );
    expect(apart.notes).toContain('North: Most likely all sensors read dry.');
    expect(
      agreementSection([bin('North', { tickets: { ...tickets, start: { ...moment, agree: true } } })], units).lead,
    ).toContain('agree wherever both tell (1 time)');
    const offset = { offset: estimate(-0.6, -1, -0.2), pairs: 6 };
    const probes = {
      pairs: [],
      unmatched: [{ count: 2, why: 'no height is given' }],
      bin: offset,
      rings: [],
      sensors: [
        {
          cable: 'C1',
          sensor: 3,
          pairs: 2,
          offset: { value: 0.9, interval: [0.3, 1.5] as [number, number], why: null },
          beyondOthers: { value: 1.5, interval: [1.2, 1.8] as [number, number], why: null },
          corrected: { end: estimate(0.151, 0.148, 0.154), pointsRemoved: estimate(2, 1, 3) },
        },
      ],
      days: [],
      meterLimit: 0.5,
      corrected: null,
      notes: [],
      why: null,
    };
    const sampled = agreementSection([bin('North', { tickets: undefined }, { probes })], units);
    expect(sampled.lead).toContain('By hand samples the cables read 0.6 points (0.2 to 1.0) too dry in North.');
    expect(sampled.notes).toContain(
      'North: C1, sensor 3 reads 1.5 points (1.2 to 1.8) too wet beside the other sensors, by 2 hand samples: have it looked at. With it corrected the moisture out is 15.1 % (14.8 to 15.4).',
    );
    expect(sampled.notes).toContain('North: 2 hand samples not used: no height is given.');
  });
});
