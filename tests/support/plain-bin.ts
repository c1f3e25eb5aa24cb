import type { Bin, BinGrain } from '../../src/season/season.ts';

/** A corn bin, 10 m wide and 6 m deep, full floor, goal dry, air up, fan F1; what is not said is as season.yaml would leave it. */
export function plainBin(rest: Partial<Omit<Bin, 'grain'>> = {}, grain: Partial<BinGrain> = {}): Bin {
  return {
    id: 'B1',
    name: 'North',
    diameterM: 10,
    eaveHeightM: 7,
    openFloor: 1,
    grain: {
      crop: 'corn',
      depthSteps: stoodAt(6),
      bulkDensityKgM3: 720,
      bulkDensityFrom: 'crop',
      moistureInWb: null,
      moistureOutWb: null,
      isotherm: null,
      targetMoistureWb: null,
      targetTempC: null,
      filledMs: null,
      unloadedMs: null,
      ...grain,
    },
    goal: 'dry',
    air: 'up',
    airflowFactor: 1.5,
    airflowFactorFrom: 'crop',
    managedAs: null,
    strategy: null,
    fanIds: ['F1'],
    cables: [],
    ...rest,
  };
}

/** So deep all the while. */
export function stoodAt(depthM: number): BinGrain['depthSteps'] {
  return [{ fromMs: Number.NEGATIVE_INFINITY, depthM }];
}
