import { describe, expect, it } from 'vitest';
import type { BinLog } from '../../../src/analysis/model/bin-log.ts';
import { fansPower } from '../../../src/analysis/model/fans-power.ts';
import { hoursInPart, loggedShares } from '../../../src/analysis/model/logged-shares.ts';

const fan = (id: string, hp: number, heaterW = 0) => ({
  id,
  nameplateW: 745.7 * hp,
  load: null,
  motorEfficiency: null,
  heater: heaterW === 0 ? null : { fuel: 'electric', outputW: heaterW, efficiency: 1 },
});
const season = (fanId: string, onHours: number, kw: number) => ({
  ...{ fanId, onHours, energyKwh: kw * onHours, energyFrom: 'current', energyRelSd: 0.03 },
});
const logOf = (
  fans: ReturnType<typeof fan>[],
  seasons: ReturnType<typeof season>[],
  fanSet: string,
  bins = [['F1', 'F2']],
) =>
  ({
    bin: { fanIds: fans.map(({ id }) => id) },
    season: { fans, bins: bins.map((fanIds) => ({ fanIds })) },
    review: { fan: { fans: seasons }, airflow: { fanSet } },
  }) as unknown as BinLog;

// What a run of all fans draws hangs on what each draws, not on how often they ran together.
describe('the power of the fans of which the airflow is told', () => {
  const two = [fan('F1', 10), fan('F2', 10)];
  const ran = [season('F1', 600, 8.2), season('F2', 400, 8.5)];

  it('is the sum of those that ran most, though one ran longer', () => {
    expect(fansPower(logOf(two, ran, 'F1+F2')).powerW).toBeCloseTo(16_700, 6);
    expect(fansPower(logOf(two, ran, 'F1')).powerW).toBeCloseTo(8200, 6);
    expect(fansPower(logOf(two, ran, '')).powerW).toBeCloseTo(16_700, 6);
  });

  it('is this bin’s part of a fan that serves two, and the nameplate’s of one without a log', () => {
    const shared = fansPower(logOf(two, ran, 'F1+F2', [['F1', 'F2'], ['F1']]));
    expect(shared.powerW).toBeCloseTo(4100 + 8500, 6);
    expect(shared.shared).toBe(true);
    const silent = fansPower(logOf(two, [ran[0]], 'F1+F2'));
    // 1 kW for each horsepower.
    expect(silent.powerW).toBeCloseTo(8200 + 10_000, 1);
    expect(silent.byNameplate).toBe(true);
  });

  it('is without the electric heater that is on the fan’s meter', () => {
    const heated = [fan('F1', 8, 20_000)];
    expect(fansPower(logOf(heated, [season('F1', 100, 28)], 'F1', [['F1']])).powerW).toBeCloseTo(8000, 6);
    // Too little for both: the heater is on a meter of its own.
    expect(fansPower(logOf(heated, [season('F1', 100, 8)], 'F1', [['F1']])).powerW).toBeCloseTo(8000, 6);
  });
});

it('an hour in which a part of the fans ran is that part of an hour; what pressure moves by hundredths is whole', () => {
  const of = { fan: { on: Float64Array.of(1, 0.5, 1, 1, 0) }, relativeFlow: Float64Array.of(1, 0.6, 1.4, 0.98, 0.6) };
  expect([...loggedShares(of)]).toEqual([1, 0.3, 1, 1, 0]);
  expect(hoursInPart(of)).toBe(0.5);
});
