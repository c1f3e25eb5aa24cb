import type { BinModel } from '../../src/analysis/model/model-types.ts';
import { withoutRuns } from '../../src/analysis/what-if/bin-what-if.ts';
import type { BinWhatIf, StrategyOutcome } from '../../src/analysis/what-if/what-if-types.ts';
import { estimate, withheld } from '../../src/base/estimate.ts';
import type { Outcome } from '../../src/simulation/run/outcome.ts';

const MISFIT = { temperatureK: 0.9, moisturePoints: 0.24, temperatures: 2304, moistures: 2304 };

function outcome(cost: number, reachedTarget: boolean, endMoistureWb: number): Outcome {
  return {
    fanHours: cost / 1.4,
    energyKwh: cost * 9.1,
    energyCost: cost,
    demandCost: 0,
    heatCost: 0,
    cost,
    endMoistureWb,
    topMoistureWb: endMoistureWb + 0.008,
    bottomMoistureWb: endMoistureWb - 0.006,
    wettestWb: endMoistureWb + 0.009,
    endTempC: 11.4,
    warmestC: 14.2,
    lifeUsed: 0.21,
    lossMean: 0.0011,
    lossWorst: 0.0017,
    reachedTarget,
    reachedHour: reachedTarget ? 480 : Number.NaN,
    waterByAirKg: 3100,
    imbalance: { water: 3e-14, heat: 2e-13 },
  };
}

function run(id: string, title: string, cost: readonly [number, number, number], reaches: boolean): StrategyOutcome {
  return {
    id,
    title,
    outcome: outcome(cost[0], reaches, reaches ? 0.151 : 0.166),
    cost: estimate(...cost),
    reaching: reaches ? 5 : 1,
    runs: 6,
    reachedMs: reaches ? Date.UTC(2024, 8, 24, 18) : null,
  };
}

const TRUSTED: BinModel = {
  // No bed to run anew: what was run stands below.
  fitted: null,
  cables: [
    { cable: 'C1', share: 0.5, relative: 0.96 },
    { cable: 'C2', share: 0.5, relative: 1.04 },
  ],
  flowM3S: estimate(4.1, 3.7, 4.6),
  moistureBiasPoints: estimate(0.1, -0.3, 0.5),
  endMoistureWb: estimate(0.153, 0.149, 0.158),
  mayBes: [],
  isotherms: [{ name: 'modified Henderson D245.5', cable: 'modified Henderson D245.5', cost: 1 }],
  trained: { fromMs: Date.UTC(2024, 8, 5), toMs: Date.UTC(2024, 8, 19), fanHours: 210, misfit: MISFIT },
  unseen: {
    fromMs: Date.UTC(2024, 8, 19),
    toMs: Date.UTC(2024, 9, 3),
    fanHours: 190,
    misfit: { ...MISFIT, temperatureK: 1.2 },
    persistence: { ...MISFIT, temperatureK: 4.8, moisturePoints: 0.7 },
  },
  trusted: true,
  why: 'On the part that it had not seen its temperatures lie 2.2 °F from the log.',
  wouldHelp: [],
  notes: ['A note of the model.'],
};

const WHY_NOT = 'Its temperatures lie 7.4 °F from the log on the part that it had not seen, where 3.6 °F is the limit.';

/**
 * What-ifs of the bins B1 and B2, written down and not worked out: one trusted with all that is told of its runs, one not. Pages
 * that show models can be looked at without a fit.
 */
export const WRITTEN_MODELS: readonly BinWhatIf[] = [
  {
    binId: 'B1',
    model: TRUSTED,
    columns: [
      { areaShare: 0.06, airShare: 0.62, cables: ['C1'], usual: false },
      { areaShare: 0.94, airShare: 1.024, cables: ['C2', 'C3'], usual: false },
    ],
    logged: run('as-logged', 'As logged', [532, 532, 532], true),
    strategies: [
      run('always-on', 'Always on', [845, 790, 932], true),
      run('humidity-limit', 'Humidity limit', [418, 391, 472], true),
      run('night-hours', 'Night hours', [236, 229, 251], false),
    ],
    hindsight: run('best-in-hindsight', 'Best in hindsight', [374, 374, 374], true),
    schedule: null,
    hangsOn: [
      { part: 'as fitted', title: 'as fitted', logged: outcome(532, true, 0.151), pick: outcome(418, true, 0.151) },
      {
        part: 'layers',
        title: 'twice the layers',
        logged: outcome(532, true, 0.1514),
        pick: outcome(421, true, 0.151),
      },
      {
        part: 'steps',
        title: 'steps of half an hour',
        logged: outcome(532, true, 0.1501),
        pick: outcome(419, true, 0.151),
      },
    ],
    heldBack: { rules: [], why: 'Past weather has been left out here.' },
    pick: 'humidity-limit',
    clear: true,
    near: [0, 5, 1],
    sure: false,
    weights: null,
    why: null,
  },
  withoutRuns(
    'B2',
    {
      ...TRUSTED,
      flowM3S: withheld(WHY_NOT),
      endMoistureWb: withheld(WHY_NOT),
      trusted: false,
      why: WHY_NOT,
      wouldHelp: ['A plenum log would help.'],
    },
    WHY_NOT,
  ),
];
