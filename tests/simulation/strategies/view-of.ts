import type { View } from '../../../src/simulation/run/view.ts';

/** A view of an October noon on corn at 17 % and 14 degC, to be 15 % and 4 degC; what a test is about it sets. */
export function viewOf(other: Partial<View> = {}): View {
  return {
    hourOfRun: 12,
    localHour: 12,
    localMonth: 10,
    localDay: 0,
    outdoorC: 10,
    outdoorRh: 0.6,
    plenumC: 12,
    plenumRh: 0.53,
    heatedC: 16,
    heatedRh: 0.41,
    plenumEmcWb: 0.13,
    dayMeanC: 9,
    grainC: 14,
    grainWb: 0.17,
    entryC: 13,
    entryWb: 0.16,
    exitC: 15,
    exitWb: 0.18,
    warmestC: 15,
    wettestWb: 0.18,
    pricePerKwh: 0.12,
    cheapestPerKwh: 0.08,
    dearestPerKwh: 0.16,
    ranBefore: 0,
    fanHours: 0,
    goal: 'dry',
    targetWb: 0.15,
    targetC: 4,
    ...other,
  };
}
