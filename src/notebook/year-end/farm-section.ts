import type { BinReview } from '../../analysis/types.ts';
import { listed } from '../../base/listed.ts';
import { cropOf } from '../../grain/crops.ts';
import type { Cell, Entry, SectionBody, Table } from '../../report/page.ts';
import type { Units } from '../../report/units.ts';
import type { LoadedSeason } from '../../season/loaded.ts';
import { airflowPerGrain, grainAmount } from '../per-grain.ts';
import { capital, counted, sentence } from '../words.ts';

/** The farm: how many bins of what, and each bin as it is built and filled. */
export function farmSection({ season }: LoadedSeason, bins: readonly BinReview[], units: Units): SectionBody {
  const crops = [...new Set(bins.map(({ bin }) => bin.grain.crop))].map(
    (crop) =>
      `${counted(bins.filter(({ bin }) => bin.grain.crop === crop).length, 'bin')} of ${cropOf(crop).name.toLowerCase()}`,
  );
  return {
    lead:
      bins.length === 0
        ? 'There is no bin in season.yaml.'
        : `${capital(counted(season.bins.length, 'bin'))} with ${counted(season.fans.length, 'fan')}: ${listed(crops)}.`,
    table: builtTable(season.fans, bins, units),
    entries: bins.length > 16 ? [] : bins.map((one) => entryOf(one)),
    notes: [
      'Diameter, depth and nameplate as season.yaml states them; the grain’s weight from scale tickets or from depth and test weight, as the chapter on grain says. Airflow by the surest of its ways; corn is usually dried with about 13 L/s per m³ (1 cfm/bu) and kept cool with about 1.3 L/s per m³ (0.1 cfm/bu) (common practice).',
    ],
  };
}

function builtTable(fans: LoadedSeason['season']['fans'], bins: readonly BinReview[], units: Units): Table {
  const watts = (ids: readonly string[]): Cell => {
    const of = fans.filter(({ id }) => ids.includes(id));
    return of.length === 0
      ? { value: null, why: 'No fan is stated.' }
      : of.reduce((sum, { nameplateW }) => sum + nameplateW, 0);
  };
  return {
    id: 'farm',
    caption: 'The bins, as built and filled',
    columns: [
      { key: 'bin', label: 'Bin', quantity: null },
      { key: 'crop', label: 'Crop', quantity: null },
      { key: 'goal', label: 'Fans run to', quantity: null },
      { key: 'across', label: 'Diameter', quantity: 'length', known: 'stated' },
      { key: 'depth', label: 'Depth', quantity: 'length', known: 'stated' },
      { key: 'grain', label: 'Grain', quantity: 'grain' },
      { key: 'fans', label: 'Fans', quantity: 'nameplate', known: 'stated' },
      { key: 'air', label: 'Airflow', quantity: 'airflow per grain' },
      { key: 'sensors', label: 'Cables × sensors', quantity: null },
    ],
    rows: bins.map((one) => {
      const { bin, grain, airflow } = one;
      const counts = [...new Set(bin.cables.map(({ sensorHeightsM }) => sensorHeightsM.length))];
      return {
        bin: bin.name,
        crop: cropOf(bin.grain.crop).name.toLowerCase(),
        goal: bin.goal,
        across: bin.diameterM,
        depth: grain.depthM ?? { value: null, why: grain.why ?? 'Not stated.' },
        grain: grainAmount(one, units),
        fans: watts(bin.fanIds),
        air: airflowPerGrain(airflow.cfmPerBushel, units),
        sensors: bin.cables.length === 0 ? 'none' : `${bin.cables.length} × ${counts.join(' or ')}`,
      };
    }),
    empty: 'there is no bin in season.yaml.',
  };
}

function entryOf({ bin }: BinReview): Entry {
  return { term: bin.name, text: sentence(capital(bin.managedAs ?? 'how it was run is not stated')) };
}
