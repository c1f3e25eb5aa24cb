/** A column of a sweep's results; names and units are those of `strategies` in `summary.json`. */
export interface SweepColumn {
  name: string;
  type: 'text' | 'number' | 'boolean';
  unit: string | null;
  description: string;
}

const text = (name: string, description: string): SweepColumn => ({ name, type: 'text', unit: null, description });
const number = (name: string, unit: string, description: string): SweepColumn => ({
  name,
  type: 'number',
  unit,
  description,
});

/** Which run a row tells of. */
const KEYS = [
  text('bin', 'bin id'),
  text('strategy', 'strategy id, with the parameters that were chosen otherwise than usual'),
  text('weather', 'season, or the local calendar year in which the run begins'),
  number('airflowFactor', '1', 'airflow over the bin’s own'),
  number('fillDays', 'd', 'filled so many days later than in the season'),
  number('startPoints', 'pct', 'grain came in wetter by so many points'),
] as const;

/** What the run came to. Money in the season's currency. */
export const NUMBERS = [
  number('fanHours', 'h', 'hours in which the fan ran'),
  number('energyKwh', 'kWh', 'electric energy'),
  number('energyCost', 'currency', 'its price by the tariff'),
  number('demandCost', 'currency', 'demand charges, the bin alone on its tariff'),
  number('heatCost', 'currency', 'fuel of the heater'),
  number('cost', 'currency', 'energy, demand and heat'),
  number('costPerBushel', 'currency', 'cost over the bushels as filled'),
  number('endMoisturePct', 'pct', 'mean moisture at the end, wet basis'),
  number('topMoisturePct', 'pct', 'of the layer at the surface'),
  number('bottomMoisturePct', 'pct', 'of the layer at the floor'),
  number('wettestMoisturePct', 'pct', 'of the wettest layer'),
  number('endTemperatureC', 'degC', 'mean temperature at the end'),
  number('warmestC', 'degC', 'of the warmest layer'),
  number('storageLifeUsed', '1', 'share of the allowable storage time that the worst layer used'),
  number('dryMatterLossPct', 'pct', 'dry matter lost, mean'),
  number('worstLayerLossPct', 'pct', 'of the worst layer'),
  number('waterByAirKg', 'kg', 'water that the air carried off'),
  number('waterImbalance', '1', 'the model’s books of water, 0 where they close'),
  number('heatImbalance', '1', 'the model’s books of heat, 0 where they close'),
] as const;

export const SWEEP_COLUMNS: readonly SweepColumn[] = [
  ...KEYS,
  ...NUMBERS,
  { name: 'reachedTarget', type: 'boolean', unit: null, description: 'at the end, as the contract says "reached"' },
  text('reachedOn', 'local date from which the target stays reached'),
  text('why', 'why numbers are missing'),
  text('inputs', 'hash of all that the run hangs on'),
];

/** A row of a sweep's results by column; null is missing. */
export type SweepRow = Record<string, string | number | boolean | null>;
