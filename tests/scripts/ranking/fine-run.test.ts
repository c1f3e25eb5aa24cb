import { expect, it } from 'vitest';
import { binHours } from '../../../scripts/bench/ranking/bin-hours.ts';
import { drawBin } from '../../../scripts/bench/ranking/draw-bin.ts';
import { bedOfBin, fineRun } from '../../../scripts/bench/ranking/fine-run.ts';
import { isothermOf } from '../../../src/grain/isotherm.ts';
import { alwaysOn } from '../../../src/simulation/strategies/always-on.ts';
import { untilReached } from '../../../src/simulation/strategies/until-reached.ts';

it('dry grain of a bin that states no temperature is not cooled, that of one that does is', () => {
  const bin = { ...drawBin(1), goal: 'dry' as const, moistureWb: 0.11, targetWb: 0.15, days: 30 };
  const { weather, hours } = binHours(bin);
  const costWith = (targetC: number | null) =>
    fineRun(
      bedOfBin(bin),
      { goal: 'dry', targetWb: bin.targetWb, targetC },
      weather,
      hours,
      untilReached(alwaysOn, 'dry'),
      isothermOf(bin.crop),
    );
  expect(costWith(null)).toEqual({ cost: 0, reached: true });
  expect(costWith(3).cost).toBeGreaterThan(0);
});
