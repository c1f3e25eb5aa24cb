import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';

// The demo fits the sample's bins, whose seasons another, finer bed made: what it tells is held against what truly was. The tests fit drawn seasons.
const AIRFLOW_WITHIN = 0.1;
const END_WITHIN_POINTS = 0.3;
/** The table is printed to a tenth of a point. */
const PRINTED_POINTS = 0.05;
const UNSEEN_K = 1.5;
const LEAST_TOLD = { airflows: 4, ends: 6 };

interface Told {
  id: string;
  airflow: { byModelM3S: number | null };
  model: { trusted: boolean; temperatureRmseC: number; why: string };
}
interface True {
  id: string;
  airflow: { flowM3S: number };
  moisture: { endPct: number };
}

const [review, truthPath] = process.argv.slice(2);
const told = (JSON.parse(readFileSync(join(review, 'summary.json'), 'utf8')) as { bins: Told[] }).bins;
const truths = (JSON.parse(readFileSync(truthPath, 'utf8')) as { bins: True[] }).bins;
const wrong: string[] = [];
const counts = { airflows: 0, ends: 0 };
for (const { id, airflow, model } of told) {
  const truth = truths.find((one) => one.id === id)!;
  if (!model.trusted) {
    wrong.push(`${id} is not trusted: ${model.why}`);
    continue;
  }
  if (!(model.temperatureRmseC < UNSEEN_K)) wrong.push(`${id}: ${model.temperatureRmseC} K off on the unseen part`);
  if (airflow.byModelM3S !== null) {
    counts.airflows++;
    const off = airflow.byModelM3S / truth.airflow.flowM3S - 1;
    if (!(Math.abs(off) < AIRFLOW_WITHIN)) wrong.push(`${id}: airflow off by ${(100 * off).toFixed(1)} %`);
  }
  const table = join(review, 'tables', `strategies-bin-${id.toLowerCase()}-runs-${id.toLowerCase()}.csv`);
  const [asLogged] = parse(readFileSync(table), { columns: true, bom: true }) as Record<string, string>[];
  const endPct = asLogged['Moisture at the end, by the model (%)'];
  if (asLogged.Way !== 'As logged' || endPct === undefined) wrong.push(`${table}: no end of the season as logged`);
  else if (endPct !== '') {
    counts.ends++;
    const off = Number(endPct) - truth.moisture.endPct;
    if (!(Math.abs(off) < END_WITHIN_POINTS + PRINTED_POINTS)) wrong.push(`${id}: end off by ${off.toFixed(2)} points`);
  }
}
for (const [what, least] of Object.entries(LEAST_TOLD)) {
  const count = counts[what as keyof typeof counts];
  if (count < least) wrong.push(`${count} ${what} told, ${least} were expected`);
}
for (const line of wrong) console.error(line);
process.exitCode = wrong.length === 0 ? 0 : 1;
