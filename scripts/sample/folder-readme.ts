import { localText } from './calendar.ts';
import type { FarmPlan } from './farm-types.ts';
import type { PlantedFault } from './faults.ts';

const when = (ms: number): string => (Number.isNaN(ms) ? '' : localText(ms));

/** README of the sample season: what is where, and each planted fault with what the review should say of it. */
export function folderReadme(farm: FarmPlan, faults: readonly PlantedFault[]): string {
  const rows = faults.map(
    (one) =>
      `| ${one.kind} | ${one.where}${one.quantity && one.quantity !== 'both' ? ` (${one.quantity})` : ''} | ${when(one.fromMs)} | ${when(one.toMs)} | ${one.count} | ${one.expect} |`,
  );
  return `# Sorrel Fork, ${farm.title.toLowerCase()}: an invented farm

Nothing here was measured: grain, weather, prices and people are made up by \`scripts/make-sample.ts\` from the seed ${farm.seed}, so that the
kit can be tried, and tested against a truth that is known. Make it again with \`npm run make-sample\`; the same seed gives the same bytes.

## What is where

| file | what |
|---|---|
| season.yaml | bins, fans, prices and files, as a grower would state them |
| logs/b1-cables.csv | cables of B1, every two hours, one column a sensor, local time |
| logs/cables-lane.csv.gz | cables of B2 and B3, every three hours, one row a reading, local time |
| logs/cables-shop.csv.gz | cables of B4, B5 and B6, the same shape, UTC |
| logs/fan-f1.csv.gz | fan F1: current and a running energy meter, every 15 minutes, standard time (and season.yaml says so) |
| logs/fans-lane.csv.gz | F2A and F6 power, F2B and F3 current, every 10 minutes, local time |
| logs/fans-shop.csv.gz | F4 run-hour meter, F5 state, every 15 minutes, UTC |
| logs/plenum.csv, logs/plenum-b2.csv | air under the floors, hourly |
| weather/station.csv | the farm's station, hourly, local time |
| weather/history/ | ten invented years in NOAA's ISD-Lite layout, under a station number that does not exist |
| tickets.csv, probes.csv, bills.csv | scale tickets, hand samples, electricity bills (fans and the rest of the farm on the same meters) |
| truth.json | what truly happened; the kit does not read it |

## The bins

| bin | what to find |
|---|---|
| B1 Lane 42 | corn, short of air (see \`airflow\` in truth.json), fan on day and night, drying stopped half-way: dry below, wet on top |
| B2 Lane 36 | corn, filled in three stages, two fans by day for too long: over-dried |
| B3 Creek 33 | corn, cooled in two steps; the front stalled on C4, the cable under the spreader |
| B4 Shop 30 | soybeans, conditioned upwards by damp air |
| B5 Shop 27 | soybeans, cooled only, one cable, sold in March |
| B6 Road 24 | wheat, dried by a humidity limit, then cooled |

## How it was made

Each bin is seven upright columns (core, four quarters, a sunny and a shaded half of the wall ring) of 64 layers, in steps of ten minutes; each column
has its own airflow; kernels give up water at a thin-layer rate; water above saturation stays on the grain; heat is conducted up, down, across and through the wall.
The grain follows other isotherms than the kit takes by default (\`isothermOfTheGrain\` in truth.json). Cables work moisture out from the air between the kernels by the
grain's own isotherm, so with the fan on they lean towards the passing air, and come back in an hour or two. Sensors carry a fixed error each, one shared by the bin, a slow drift,
noise, a lag, and steps of 0.1. The generator has its own fan rules, prices, clock and air; it shares no code with the kit.
What it does not have: respiration, air currents with the fan off, fines that move, a cable whose isotherm is wrong for its grain.

In truth.json: \`connectedPerYear\` is the horsepower charge of a whole year (how much of it a season bears is for the kit to say); demand is shared by each fan's part in the peak that
set the bill, an earlier month's where the ratchet did; fan hours and costs cover the whole log. A campaign is one planned cooling, from its first start to its last stop.

## Faults on purpose

Times are local. \`count\` is cells for flags, rows for duplicates and rejects, lacking readings for gaps.

| kind | where | from | to | count | what the review should say |
|---|---|---|---|---|---|
${rows.join('\n')}
`;
}
