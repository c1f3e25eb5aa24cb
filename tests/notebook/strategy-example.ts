import type { BinReview, SeasonReview } from '../../src/analysis/types.ts';
import type { BinWhatIf, StrategyOutcome } from '../../src/analysis/what-if/what-if-types.ts';
import { estimate } from '../../src/base/estimate.ts';

/** A run by hand: what the sentences need of it. */
export function run(id: string, title: string, cost: [number, number, number], reaches: boolean): StrategyOutcome {
  const outcome = {
    reachedTarget: reaches,
    fanHours: 300,
    lifeUsed: 0.4,
    endMoistureWb: 0.147,
  } as StrategyOutcome['outcome'];
  const reachedMs = reaches ? Date.UTC(2024, 10, 2, 18) : null;
  const [value, low, high] = cost;
  return { id, title, outcome, cost: estimate(value, low, high), reaching: reaches ? 5 : 0, runs: 6, reachedMs };
}

export function seasonOf(changes: Partial<BinWhatIf>): SeasonReview {
  const bin = { id: 'B1', name: 'North 36', goal: 'dry', grain: { targetMoistureWb: 0.15, targetTempC: null } };
  const review = {
    bin,
    fan: { cost: estimate(540, 530, 550), connectedCost: estimate(20, 20, 20) },
  } as unknown as BinReview;
  const model = { trusted: true, why: 'It fits.', trained: null, unseen: null, wouldHelp: [], notes: [] };
  const whatIf = {
    binId: 'B1',
    model,
    logged: run('as-logged', 'As logged', [500, 500, 500], true),
    strategies: [
      run('always-on', 'Always on', [700, 650, 800], true),
      run('humidity-limit', 'Humidity limit', [400, 380, 450], true),
      run('night-hours', 'Night hours', [200, 190, 210], false),
    ],
    hindsight: { ...run('best-in-hindsight', 'Best in hindsight', [350, 350, 350], true) },
    pick: 'humidity-limit',
    clear: true,
    near: [0, 5, 0],
    sure: false,
    weights: null,
    why: null,
    ...changes,
  } as unknown as BinWhatIf;
  return { bins: [review], whatIf: [whatIf] } as unknown as SeasonReview;
}
