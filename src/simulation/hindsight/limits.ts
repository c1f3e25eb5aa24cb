/**
 * What a schedule has to come to at the run's end, as plain numbers; NaN: not asked for. Moistures wet basis, fractions.
 */
export interface Limits {
  /** mean moisture at most (drying) or at least (conditioning) */
  driestMeanWb: number;
  wettestMeanWb: number;
  /** wettest layer at most, and driest at least (conditioning) */
  wettestLayerWb: number;
  driestLayerWb: number;
  /** mean temperature and warmest layer at most, degC */
  meanC: number;
  warmestC: number;
  /** share of the allowable storage time that the worst layer may use, at every moment */
  lifeUsed: number;
  /** dry matter lost on the mean, fraction, at every moment */
  lossMean: number;
}
