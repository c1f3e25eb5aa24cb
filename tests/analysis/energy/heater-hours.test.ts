import { describe, expect, it } from 'vitest';
import { heatCost } from '../../../src/analysis/energy/heat-cost.ts';
import { heaterHours } from '../../../src/analysis/energy/heater-hours.ts';
import { HEATER_ON } from '../../../src/analysis/energy/heater-use.ts';
import { FAN_OFF, FAN_ON, type FanSeason } from '../../../src/analysis/types.ts';
import type { Fan } from '../../../src/bin/fan.ts';
import { FAN, H } from '../fan/known-fan.ts';

/**
 * By hand: a fan of 10 kW puts 9 kW into its air, and a heater 13.5 kW: 1.5 times as much, so that air warmed 1.2 K by the fan
 * alone is warmed 3 K by both. The fan runs 300 h after ten of rest.
 */
const HEATED: Fan = { ...FAN, heater: { fuel: 'propane', outputW: 13_500, efficiency: 1, pricePerJ: 1e-8 } };
const RAN = 300;
const spans = {
  startMs: Float64Array.of(0, 10 * H, (10 + RAN) * H),
  endMs: Float64Array.of(10 * H, (10 + RAN) * H, (20 + RAN) * H),
  state: Uint8Array.of(FAN_OFF, FAN_ON, FAN_OFF),
  powerW: Float64Array.of(0, 10_000, 0),
};
const SEASON = {
  fanId: 'F1',
  energyFrom: 'power',
  spans,
  onHours: RAN,
  unknownHours: 0,
  energyKwh: 10 * RAN,
  energyRelSd: 0.01,
} as unknown as FanSeason;

/** Outdoor air of a daily wave; the plenum half-hourly, warmer by what the hour says; noise of 0.4 K to and fro. */
function heat(warmK: (fanHour: number) => number, has: (fanHour: number) => boolean = () => true, season = SEASON) {
  const outdoor = (h: number) => 10 + 6 * Math.sin((2 * Math.PI * h) / 24);
  const hours = Array.from({ length: 20 + RAN }, (_, h) => h);
  const half = Array.from({ length: 2 * (20 + RAN) }, (_, i) => i / 2).filter((h) => has(h - 10));
  const plenum = half.map((h, i) => outdoor(h) + warmK(h - 10) + [0.4, -0.4, 0.1, -0.1][i % 4]);
  return heaterHours(
    HEATED,
    season,
    { timeMs: Float64Array.from(half, (h) => h * H), tempC: Float64Array.from(plenum) },
    { timeMs: Float64Array.from(hours, (h) => h * H), tempC: Float64Array.from(hours, outdoor) },
  );
}

describe('hours in which a heater burned, by the warming of the plenum’s air', () => {
  it('are those warmed 3 K, not those warmed 1.2: 120 of 300', () => {
    const use = heat((h) => (h < 120 ? 3 : 1.2));
    expect(use?.hours).toBeGreaterThan(116);
    expect(use?.hours).toBeLessThan(122);
    expect(use?.untoldHours).toBeLessThan(6);
    const cost = heatCost(HEATED, { ...SEASON, heater: use ?? undefined }, undefined, 10_000);
    // 13.5 kW x 3600 s x 1e-8 are 0.486 an hour: 58.32 for 120 h, of 145.80 for all of the fan's.
    expect(cost.part?.value).toBeGreaterThan(0.486 * 116);
    expect(cost.part?.value).toBeLessThan(0.486 * 126);
    expect(cost.part?.less).toBeCloseTo(0.486 * (use?.untoldHours ?? Number.NaN), 9);
    expect(cost.note).toMatch(/^By the warming of the plenum's air .* burned in 1\d\d of the fan's 300 h/);
  });

  it('are found where the heater is off for a few days, or burns at night alone', () => {
    const mostly = heat((h) => (h >= 200 && h < 248 ? 1.2 : 3));
    expect(mostly?.hours).toBeGreaterThan(246);
    expect(mostly?.hours).toBeLessThan(254);
    // Nights of 10 h: of each burst's two ends an hour or two may not be told.
    const nights = heat((h) => ((h + 10) % 24 < 10 ? 3 : 1.2));
    const burned = Array.from({ length: RAN }, (_, h) => ((h + 10) % 24 < 10 ? 1 : 0)).reduce<number>(
      (a, b) => a + b,
      0,
    );
    expect(Math.abs((nights?.hours ?? 0) - burned)).toBeLessThan(30);
  });

  it('can’t be told where all warming is alike: of 3 K that may be a fan at high pressure or a heater', () => {
    expect(heat(() => 3)).toBeNull();
    expect(heat(() => 1.2)).toBeNull();
  });

  it('are all of them where no fan alone warms so much; a heater that warms less than 1 K can’t be told', () => {
    // 6 K: 2.4 by the fan; alone it would be 6, which none makes.
    expect(heat(() => 6)?.hours).toBeCloseTo(RAN, 6);
    // 0.5 K by the fan make 0.75 by the heater.
    expect(heat(() => 0.5)).toBeNull();
  });

  it('are untold without readings, and where the warming lies between', () => {
    const gap = heat(
      (h) => (h < 120 ? 3 : 1.2),
      (h) => h < 40 || h >= 60,
    );
    expect(gap?.untoldHours).toBeGreaterThan(16);
    expect(gap?.untoldHours).toBeLessThan(24);
    const between = heat((h) => (h < 100 ? 3 : h < 150 ? 2.1 : 1.2));
    expect(between?.untoldHours).toBeGreaterThan(44);
    expect(between?.untoldHours).toBeLessThan(60);
    expect(
      heat(
        () => 3,
        () => false,
      ),
    ).toBeNull();
    // A thermometer that has nothing to do with fan or heater.
    expect(heat((h) => (h % 2 === 0 ? 9 : -6))).toBeNull();
  });

  it('are told as those around them where the warming lies between for two hours alone', () => {
    const use = heat((h) => (h >= 200 && h < 204 ? 2.1 : h < 120 ? 3 : 1.2));
    expect(use?.untoldHours).toBeLessThan(2);
    expect(use?.hours).toBeLessThan(122);
    // and at the start of a run
    const first = heat((h) => (h < 1 ? 2.1 : h < 120 ? 3 : 1.2));
    expect(first?.burned[1]).toBe(HEATER_ON);
    expect(first?.untoldHours).toBeLessThan(2);
  });

  it('are the same where the fan’s log changes its power every ten minutes', () => {
    const cut = Array.from({ length: 6 * (20 + RAN) }, (_, i) => (i * H) / 6);
    const on = cut.map((ms) => ms >= 10 * H && ms < (10 + RAN) * H);
    const fine = {
      startMs: Float64Array.from(cut),
      endMs: Float64Array.from(cut, (ms) => ms + H / 6),
      state: Uint8Array.from(on, (runs) => (runs ? FAN_ON : FAN_OFF)),
      powerW: Float64Array.from(on, (runs, i) => (runs ? 9_900 + 100 * (i % 3) : 0)),
    };
    const warm = (h: number) => (h < 120 ? 3 : 1.2);
    const [one, other] = [heat(warm), heat(warm, () => true, { ...SEASON, spans: fine })];
    expect(other?.hours).toBeCloseTo(one?.hours ?? Number.NaN, 9);
    expect(other?.untoldHours).toBeCloseTo(one?.untoldHours ?? Number.NaN, 9);
  });

  it('add up with the rest to the fan’s own, span by span', () => {
    const use = heat(
      (h) => (h < 120 ? 3 : 1.2),
      (h) => h < 40 || h >= 60,
    );
    if (use === null) throw new Error('nothing told');
    const { startMs, endMs, state } = use.spans;
    for (let k = 1; k < state.length; k++) expect(startMs[k]).toBe(endMs[k - 1]);
    expect([startMs[0], endMs[state.length - 1]]).toEqual([0, (20 + RAN) * H]);
    const on = state.reduce((sum, of, k) => sum + (of === FAN_ON ? (endMs[k] - startMs[k]) / H : 0), 0);
    expect(on).toBeCloseTo(RAN, 9);
  });
});
