/** What a run came to. Money in the season's currency; NaN where it cannot be told. */
export interface Outcome {
  fanHours: number;
  energyKwh: number;
  energyCost: number;
  demandCost: number;
  /** fuel of the heater */
  heatCost: number;
  cost: number;
  /** at the end, wet basis: mean by dry matter, and the outermost layers at the surface and the floor */
  endMoistureWb: number;
  topMoistureWb: number;
  bottomMoistureWb: number;
  wettestWb: number;
  endTempC: number;
  warmestC: number;
  /** share of the allowable storage time that the worst layer used; NaN where no rule is known */
  lifeUsed: number;
  /** dry matter lost, fraction: mean, worst layer; NaN where the rule counts germination or none is known */
  lossMean: number;
  lossWorst: number;
  /** at the end, by the contract's definition of reached */
  reachedTarget: boolean;
  /** first hour from which the target stays reached to the end; NaN where it is not */
  reachedHour: number;
  /** water carried off by the air, kg for the whole bin */
  waterByAirKg: number;
  /** books of the bed, fractions that should be 0, see `bedImbalance` */
  imbalance: { water: number; heat: number };
}

/** A run hour by hour, the grain at each hour's end, [hours of the run]; layers are means over the columns by their floor, [hours x layers], row-major. */
export interface RunTrace {
  fan: Float64Array;
  meanWb: Float64Array;
  meanC: Float64Array;
  plenumC: Float64Array;
  layerC: Float64Array;
  layerWb: Float64Array;
}
