import { describe, expect, it } from 'vitest';
import { pushSpan, spanList, toFanSpans } from '../../../src/analysis/fan/spans.ts';
import type { BinReview } from '../../../src/analysis/types.ts';
import { FAN_OFF } from '../../../src/analysis/types.ts';
import { impossibleDrying } from '../../../src/analysis/water/impossible-drying.ts';
import { mostAirflowM3S } from '../../../src/analysis/water/most-airflow.ts';
import { mostWaterKg } from '../../../src/analysis/water/most-water.ts';
import { estimate, withheld } from '../../../src/base/estimate.ts';
import type { Fan } from '../../../src/bin/fan.ts';
import { resistanceCurveOf } from '../../../src/bin/resistance-curves.ts';
import { FAN } from '../fan/known-fan.ts';

// ASAE D272.3, wheat: 27000 x 0.1^2 / ln(1 + 8.77 x 0.1) = 428.8 Pa a metre at 0.1 m/s; 1,286 Pa over 3 m. A floor of 25 m2 takes
// 2.5 m3/s at that, 3,216 W of air; at 0.65 x 0.94 that is 5,263 W of electricity.
const WATT = (25 * 0.1 * 3 * 27_000 * 0.01) / Math.log(1.877) / (0.65 * 0.94);

it('no more air than the power allows, by the standard’s curve', () => {
  expect(WATT).toBeCloseTo(5263, 0);
  expect(mostAirflowM3S(resistanceCurveOf('wheat'), WATT, 25, 3)).toBeCloseTo(2.5, 6);
});

const DAY = 24 * 3_600_000;
const log = spanList();
pushSpan(log, 0, 30 * DAY, FAN_OFF, 0);
const window = (day: number) => ({ window: { fromMs: day * DAY, toMs: (day + 1) * DAY } });
/** 46 t of dry wheat on 25 m2, 3 m deep; a fan of `WATT` whose log tells so many hours at the most. */
const review = (hours: number, water: [number, number], more: object = {}) =>
  ({
    bin: {
      name: 'W',
      diameterM: Math.sqrt(100 / Math.PI),
      grain: { crop: 'wheat', depthSteps: [{ fromMs: Number.NEGATIVE_INFINITY, depthM: 3 }] },
      fanIds: ['F1'],
    },
    failure: null,
    fan: {
      hours: estimate(hours, 0, hours),
      spans: toFanSpans(log),
      fans: [{ fanId: 'F1', onHours: 10, energyKwh: WATT / 100 }],
    },
    moisture: { start: window(1), end: window(28) },
    grain: { dryMatterKg: 46_000 },
    water: { bySensors: estimate((water[0] + water[1]) / 2, ...water), byTickets: withheld('none') },
    ...more,
  }) as unknown as BinReview;
const fans = [{ ...FAN, nameplateW: 3000 }];
const doubt = (one: BinReview, of: Fan[] = fans) => impossibleDrying(one, { fans: of });

describe('a ton of water in one fan hour', () => {
  it('is more than the air of that hour can hold: 2.5 m3/s x 1.3 kg/m3 x 3,600 s x 0.02 = 234 kg', () => {
    expect(mostWaterKg(review(1, [765, 1300]), fans)).toBeCloseTo(234, 3);
    expect(doubt(review(1, [765, 1300]))).toMatch(
      /^W lost at least 1\.9 times the water .* in the 1 h .* so the fan log is most likely wrong/,
    );
  });
  it('and in the 167 h of the whole log an everyday thing', () => {
    expect(doubt(review(167, [765, 1300]))).toBeNull();
  });
  it('is not held against the log where the loss may be a drift of the sensors, or tickets know less of it', () => {
    expect(doubt(review(0, [100, 600]))).toBeNull();
    expect(doubt(review(0, [400, 600]))).toMatch(
      /^W lost more water than its fan could have carried off at the very most in the 0 h/,
    );
    expect(
      doubt(
        review(1, [765, 1300], { water: { bySensors: estimate(1000, 765, 1300), byTickets: estimate(300, 100, 500) } }),
      ),
    ).toBeNull();
  });
  it('with a heater is held against what its heat takes up too', () => {
    const heater = (outputW: number): Fan[] => [
      { ...fans[0], heater: { fuel: 'electric', outputW, efficiency: 1, pricePerJ: null } },
    ];
    // 23 kW for an hour, a fifth more than stated, over 2.3 MJ a kilogram: 43.2 kg beside the 234 of the air.
    expect(mostWaterKg(review(1, [765, 1300]), heater(23_000))).toBeCloseTo(277.2, 3);
    expect(doubt(review(1, [765, 1300]), heater(23_000))).toMatch(/ the fan log is most likely wrong/);
    // 443 kg are sure (765 less half a point of 46 t); 150 kW take up 282.
    expect(doubt(review(1, [765, 1300]), heater(150_000))).toBeNull();
    expect(doubt(review(0, [400, 600]), heater(150_000))).toMatch(/in the 0 h/);
  });
  it('has no bound where days of the log are missing', () => {
    const late = { moisture: { start: { window: { fromMs: -9 * DAY, toMs: -8 * DAY } }, end: window(28) } };
    expect(doubt(review(1, [765, 1300], late))).toBeNull();
    // A day that the log leaves out the fan may have run.
    const day = { moisture: { start: { window: { fromMs: -2 * DAY, toMs: -DAY } }, end: window(28) } };
    expect(mostWaterKg(review(1, [765, 1300], day), fans)).toBeCloseTo(25 * 234, 2);
  });
});
