import { RESISTANCE_CURVES } from '../../bin/resistance-curves.ts';
import { isothermOf } from '../../grain/isotherm.ts';
import type { Table } from '../../report/page.ts';
import type { Season } from '../../season/season.ts';
import { capital } from '../words.ts';
import { constant, constantColumns, known } from './constant-tables.ts';
import { cropName } from './crop-name.ts';
import { isothermCrops, resistanceCrops } from './season-crops.ts';

/** The constants behind the charts of the season's crops, short enough to be printed: the isotherm that stands for each, and its resistance. */
export function seasonConstants(season: Pick<Season, 'bins'>): Table {
  const isotherms = isothermCrops(season).used.map(({ crop, isotherm }) => isothermOf(crop, isotherm ?? undefined));
  const resistances = RESISTANCE_CURVES.filter(({ crop }) => resistanceCrops(season).used.includes(crop));
  const rows = [
    ...isotherms.map((one) => ({
      crop: cropName(one.crop),
      equation: capital(one.name),
      a: constant(one.a),
      b: constant(one.b),
      c: constant(one.c),
      known: capital(known[one.provenance]),
    })),
    ...resistances.map((one) => ({
      crop: cropName(one.crop),
      equation: `Airflow resistance, ${one.set}`,
      a: constant(one.a),
      b: constant(one.b),
      known: capital(known[one.provenance]),
    })),
  ];
  const labels = { crop: 'Crop', equation: 'Equation', a: 'A, a', b: 'B, b', c: 'C', known: 'How known' };
  return {
    id: 'season-constants',
    caption: 'Constants of the season’s crops; of an isotherm A, B and C, of the airflow resistance a and b',
    columns: constantColumns(labels, rows),
    rows,
    empty: 'none, for no bin is listed',
  };
}
