import type { RunSpec } from './run-spec.ts';

/**
 * What a controller can know in an hour. One object is filled anew each hour and handed to the strategy, which reads it and
 * keeps nothing of it. Moistures are fractions, wet basis; temperatures degC; humidities fractions.
 */
export interface View {
  /** counted from the run's first hour; the clock is `localHour` */
  hourOfRun: number;
  /** local clock: 0 to 23; 1 to 12; days since the first day */
  localHour: number;
  localMonth: number;
  localDay: number;
  outdoorC: number;
  outdoorRh: number;
  /** the air as it would enter the grain with the fan on (and with its heater) */
  plenumC: number;
  plenumRh: number;
  heatedC: number;
  heatedRh: number;
  /** moisture that the grain would come to in the plenum's air, by the run's isotherm */
  plenumEmcWb: number;
  /** mean outdoor temperature of the 24 hours before */
  dayMeanC: number;
  /** by dry matter */
  grainC: number;
  grainWb: number;
  /** outermost layers where the air enters and leaves */
  entryC: number;
  entryWb: number;
  exitC: number;
  exitWb: number;
  /** warmest and wettest layer */
  warmestC: number;
  wettestWb: number;
  /** money per kWh now, and the cheapest and dearest of the 24 hours from now on (a tariff is known ahead); NaN without a tariff */
  pricePerKwh: number;
  cheapestPerKwh: number;
  dearestPerKwh: number;
  /** share of the last hour in which the fan ran */
  ranBefore: number;
  /** hours that the fan has run so far */
  fanHours: number;
  /** stated for the bin: what the fans are run for; targets, NaN where not */
  goal: RunSpec['goal'];
  targetWb: number;
  targetC: number;
}
