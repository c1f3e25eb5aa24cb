import type { Summary } from '../../src/analysis/summary-shape.ts';

/** A number of summary.json and the cell of a table that says it: by table, first cells of its row, and column. */
export interface SummaryCell {
  table: string;
  row: readonly string[];
  column: string;
  value: number | null;
  interval: readonly number[] | null;
}

type Numbers = Record<string, unknown>;

// NIST SP 811 (2008), appendix B: exact pound, foot; cubic foot a minute.
const LB_KG = 0.45359237;
const FT_M = 0.3048;
const CFM_M3S = 4.719474e-4;
const fahrenheit = (celsius: number) => 1.8 * celsius + 32;
const percent = (part: number) => 100 * part;

/** Cells of one row: column, key of the block, and how its number is said there. */
function cellsOf(
  table: string,
  row: readonly string[],
  block: object,
  columns: readonly (readonly [column: string, key: string, said?: (value: number) => number])[],
): SummaryCell[] {
  const numbers = block as Numbers;
  return columns.map(([column, key, said = (value: number) => value]) => {
    if (!(key in numbers)) throw new Error(`summary.json has no ${key} for ${table}`);
    const value = numbers[key] as number | null;
    const interval = (numbers[`${key}Interval`] ?? null) as readonly number[] | null;
    return { table, row, column, value: value === null ? null : said(value), interval: interval?.map(said) ?? null };
  });
}

function binCells(bin: Summary['bins'][number], name: string): SummaryCell[] {
  const { fan, usefulHours, temperature, water, airflow, layers, rates } = bin;
  const row = [name];
  const id = bin.id.toLowerCase();
  const third = (block: object, layer: string): SummaryCell[] =>
    cellsOf('moisture-layers-layers', row, block, [[`${layer} third (%)`, 'moisturePct']]);
  return [
    ...(usefulHours === null
      ? []
      : [
          ...cellsOf('fan-energy-useful-useful', row, usefulHours, [
            ['For the goal (h)', 'forGoal'],
            ['Against it (h)', 'against'],
            ['Share against (%)', 'againstShare', percent],
            ['Energy cost against (USD)', 'againstCost'],
          ]),
          ...cellsOf('fan-energy-useful-classes', row, usefulHours, [
            ['Dry (h)', 'dry'],
            ['Rewet (h)', 'rewet'],
            ['Cool (h)', 'cool'],
            ['Warm (h)', 'warm'],
            ['Next to nothing (h)', 'little'],
          ]),
        ]),
    ...(fan.months ?? []).flatMap((month) =>
      cellsOf('fan-energy-months-months', [name, month.month], month, [
        ['Fan hours (h)', 'hours'],
        ['Energy (kWh)', 'energyKwh'],
        ['Energy cost (USD)', 'energyCost'],
        ['Demand cost (USD)', 'demandCost'],
      ]),
    ),
    ...cellsOf(`moisture-bin-${id}-numbers`, ['Temperature at the start'], temperature, [
      ['Value', 'startC', fahrenheit],
    ]),
    ...cellsOf(`moisture-bin-${id}-numbers`, ['Temperature at the end'], temperature, [['Value', 'endC', fahrenheit]]),
    ...cellsOf('moisture-water-water', row, water, [
      ['By sensors (lb)', 'bySensorsKg', (kg) => kg / LB_KG],
      ['By air, all running (lb)', 'byAirKg', (kg) => kg / LB_KG],
      ['By tickets (lb)', 'byTicketsKg', (kg) => kg / LB_KG],
    ]),
    ...cellsOf('fronts-airflow-airflow', row, airflow, [
      ['For the grain (cfm/bu)', 'cfmPerBushel'],
      ['By fronts (cfm)', 'byFrontM3S', (m3S) => m3S / CFM_M3S],
      ['By pressure (cfm)', 'byPressureM3S', (m3S) => m3S / CFM_M3S],
    ]),
    ...(layers?.end ?? []).flatMap((one) => third(one, one.layer[0].toUpperCase() + one.layer.slice(1))),
    ...(rates ?? [])
      .filter(({ period }) => period === 'season')
      .flatMap((one) =>
        cellsOf('moisture-rates-rates', [name, 'Start to end'], one, [
          ['Points removed (points/100 h)', 'perHundredFanHours'],
          ['Fan hours a point (h)', 'hoursPerPoint'],
          ['Energy a point (kWh)', 'kwhPerPoint'],
        ]),
      ),
    ...(bin.fronts ?? [])
      .filter(({ kind }) => kind === 'cooling' || kind === 'warming')
      .flatMap((one) =>
        cellsOf(`fronts-bin-${id}-arrivals`, [`${one.campaign} ${one.kind}`, `${one.cable} ${one.sensor}`], one, [
          ['Height, stated (ft)', 'heightM', (m) => m / FT_M],
          ['Fan hours (h)', 'fanHours'],
        ]),
      ),
  ];
}

/** Numbers of summary.json that tables say too, beside those of the first page. @param names  of the bins, in its order */
export function summaryCells(summary: Summary, names: readonly string[]): SummaryCell[] {
  return [
    ...summary.bins.flatMap((bin, at) => binCells(bin, names[at])),
    ...(summary.tariffs ?? []).flatMap((month) => [
      ...cellsOf('fan-energy-tariff-tariff-months', [month.month, month.tariff], month, [
        ['Energy (kWh)', 'energyKwh'],
        ['Energy cost (USD)', 'energyCost'],
        ['Demand cost (USD)', 'demandCost'],
        ['Total (USD)', 'total'],
      ]),
      ...month.demand.flatMap((one) =>
        cellsOf('fan-energy-tariff-peaks', [month.month, month.tariff, String(one.rule)], one, [
          ['Peak (kW)', 'peakKw'],
          ['Billed (kW)', 'billedKw'],
          ['Cost (USD)', 'cost'],
        ]),
      ),
    ]),
  ];
}
