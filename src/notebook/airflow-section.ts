import type { BinReview } from '../analysis/types.ts';
import { type Estimate, scaled } from '../base/estimate.ts';
import { listed } from '../base/listed.ts';
import { waysByBin } from '../report/figures/ways-by-bin.ts';
import type { Cell, Figure, SectionBody, Table } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import { binTable } from './airflow-tables.ts';
import { airflowPerGrain } from './per-grain.ts';
import { known } from './words.ts';

/** Airflow of every bin by fronts and by pressure, in one section. */
export function airflowSection(bins: readonly BinReview[], units: Units): SectionBody {
  const figure = airflowFigure(bins, units);
  return {
    lead: airflowLead(bins, units),
    table: binTable(bins, units),
    figures: figure === null ? [] : [figure],
    tables: [pressureTable(bins), cableTable(bins)],
    notes: [
      'By fronts: the fan hours that changes of temperature take from sensor to sensor, through the balances of heat and water; daily waves and weather count as well as whole fronts; where a crop has several published specific heats, the static pressure and the fans’ power say which of them counts more; where the number could well be more than 20 % off by all of these together, none is shown and the reason tells how far it reaches. By pressure: the static pressure in the plenum, through the published resistance of the grain. The first is used where it is shown. By the model: the bed fitted to the bin’s whole log, where it is trusted and known to 12.5 %; for what lies between the cables it leans on the static pressure, against which it was held before.',
      'About 13 L/s per m³ (1 cfm/bu) is usual for drying and 1.3 L/s per m³ (0.1 cfm/bu) for aeration (common practice).',
      ...bins.flatMap(({ bin, airflow }) =>
        [...airflow.likely, ...airflow.notes].map((note) => `${bin.name}: ${note}`),
      ),
    ],
  };
}

/** What the grain of the bins got, and whether the ways agree. */
export function airflowLead(bins: readonly BinReview[], units: Units): string {
  const told = bins.flatMap((one) => {
    const flow = known(airflowPerGrain(one.airflow.cfmPerBushel, units));
    return flow === null ? [] : [{ name: one.bin.name, flow }];
  });
  if (told.length === 0) return 'Can’t tell the airflow of any bin; the notes of the table say why.';
  const sorted = [...told].sort((a, b) => b.flow.value - a.flow.value);
  const said = ({ name, flow }: (typeof told)[number]) => `${units.say('airflow per grain', flow)} in ${name}`;
  const range = sorted.length === 1 ? said(sorted[0]) : `from ${said(sorted[sorted.length - 1])} to ${said(sorted[0])}`;
  // Fronts too wide to be shown may agree, but nobody sees that they do.
  const both = bins.filter(
    ({ airflow }) => airflow.agree !== null && airflow.byFront.value !== null && airflow.byPressure.value !== null,
  );
  const parted = bins.filter((one) => one.airflow.agree === false).map((one) => one.bin.name);
  const agree =
    both.length === 0 && parted.length === 0
      ? 'it stands on one way in every bin'
      : parted.length === 0
        ? `fronts and pressure agree ${both.length === bins.length ? 'in every bin' : `in the ${both.length === 1 ? 'one bin' : `${both.length} bins`} that ${both.length === 1 ? 'has' : 'have'} both`}`
        : `fronts and pressure disagree in ${listed(parted)}`;
  return `The grain got ${range}; ${agree}.`;
}

function airflowFigure(bins: readonly BinReview[], units: Units): Figure | null {
  const shown = bins.map(({ bin, airflow, grain }) => {
    const perGrain = (of: Estimate): Estimate => {
      const { flowM3S, cfmPerBushel } = airflow;
      if (of.value === null || flowM3S.value === null || cfmPerBushel.value === null || grain.volumeM3 === null)
        return { value: null, interval: null, why: of.why ?? 'Not known.' };
      return airflowPerGrain(scaled(of, cfmPerBushel.value / flowM3S.value), units);
    };
    return {
      name: bin.name,
      ways: [
        { name: 'fronts', of: perGrain(airflow.byFront) },
        { name: 'pressure', of: perGrain(airflow.byPressure) },
        { name: 'fan curve', of: perGrain(airflow.byFanCurve) },
      ],
    };
  });
  const lacking = shown.filter(({ ways }) => ways.every(({ of }) => of.value === null)).map(({ name }) => name);
  if (lacking.length === shown.length) return null;
  const parted = bins.filter((one) => one.airflow.agree === false).map((one) => one.bin.name);
  return waysByBin(
    {
      id: 'airflow-ways',
      title:
        parted.length === 0
          ? bins.some((one) => one.airflow.agree)
            ? 'Fronts and pressure agree wherever both are known'
            : 'Airflow for the grain'
          : `Fronts and pressure tell different airflows in ${listed(parted)}`,
      quantity: 'airflow per grain',
      bins: shown,
      notShown:
        lacking.length === 0
          ? null
          : `${listed(lacking)} not shown: no airflow is known; the notes of the table say why.`,
    },
    units,
  );
}

/** What the airflow by pressure stands on. */
function pressureTable(bins: readonly BinReview[]): Table {
  return {
    id: 'airflow-pressure',
    caption: 'What the airflow by pressure stands on: the median with the fan on, by depth and fans',
    folded: 'on screen',
    columns: [
      { key: 'bin', label: 'Bin', quantity: null },
      { key: 'depth', label: 'Depth', quantity: 'length', known: 'stated' },
      { key: 'fans', label: 'Fans on', quantity: null },
      { key: 'readings', label: 'Readings', quantity: 'count' },
      { key: 'pressure', label: 'Static pressure', quantity: 'pressure', known: 'measured' },
      { key: 'factor', label: 'Packing factor', quantity: 'times' },
      { key: 'flow', label: 'Airflow', quantity: 'airflow' },
    ],
    rows: bins.flatMap(({ bin, airflow }) =>
      airflow.stages.map((stage) => ({
        bin: bin.name,
        depth: stage.depthM,
        fans: stage.fanSet.split('+').join(' and '),
        readings: stage.readings,
        pressure: stage.pressurePa,
        factor: {
          value: bin.airflowFactor,
          interval: airflow.pressure === null ? null : ([...airflow.pressure.factorRange] as [number, number]),
          why: null,
        },
        flow: stage.flowM3S,
      })),
    ),
    empty: 'no static pressure was logged while a fan ran.',
  };
}

/** How air and speed differ from cable to cable. */
function cableTable(bins: readonly BinReview[]): Table {
  const why = 'No two sensors of it could be timed against each other.';
  return {
    id: 'airflow-cables',
    caption: 'Air past each cable over the bin’s mean, with the cable’s share of the floor',
    folded: 'on screen',
    columns: [
      { key: 'bin', label: 'Bin', quantity: null },
      { key: 'cable', label: 'Cable', quantity: null },
      { key: 'share', label: 'Floor', quantity: 'share', known: 'from stated' },
      { key: 'relative', label: 'Air over the mean', quantity: 'times' },
      { key: 'pairs', label: 'Times two sensors were compared', quantity: 'count' },
    ],
    rows: bins.flatMap(({ bin, airflow }) =>
      bin.cables.map(({ id }): Record<string, Cell> => {
        const of = airflow.front.cables.find((one) => one.cable === id);
        return {
          bin: bin.name,
          cable: id,
          share: of?.share ?? { value: null, why },
          relative:
            of === undefined
              ? { value: null, why }
              : { value: of.relative, interval: [...of.relativeInterval] as [number, number], why: null },
          pairs: of?.pairs ?? 0,
        };
      }),
    ),
    empty: 'there is no cable.',
  };
}
