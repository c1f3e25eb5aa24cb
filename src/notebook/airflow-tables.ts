import type { BinReview } from '../analysis/types.ts';
import type { Cell, Table } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import { airflowPerGrain, nameplatePerGrain } from './per-grain.ts';

const USED: Readonly<Record<string, string>> = { front: 'fronts', pressure: 'pressure', model: 'model' };

/** A bin's airflow by each way. */
export function binTable(bins: readonly BinReview[], units: Units): Table {
  return {
    id: 'airflow',
    caption: 'Airflow by independent ways',
    columns: [
      { key: 'bin', label: 'Bin', quantity: null },
      { key: 'perGrain', label: 'For the grain', quantity: 'airflow per grain' },
      { key: 'front', label: 'By fronts', quantity: 'airflow' },
      { key: 'pressure', label: 'By pressure', quantity: 'airflow' },
      { key: 'curve', label: 'By fan curve', quantity: 'airflow' },
      { key: 'used', label: 'Used', quantity: null },
      { key: 'agree', label: 'Agree', quantity: null },
      { key: 'hp', label: 'Nameplate', quantity: 'nameplate per grain', known: 'stated' },
    ],
    rows: bins.map(({ bin, airflow }): Record<string, Cell> => {
      const { from, agree, hpPerThousandBushels } = airflow;
      const why = airflow.why ?? 'Only one of the two is known, or they are of different fans.';
      return {
        bin: bin.name,
        perGrain: airflowPerGrain(airflow.cfmPerBushel, units),
        front: airflow.byFront,
        pressure: airflow.byPressure,
        curve: airflow.byFanCurve,
        used: from === null ? { value: null, why } : USED[from],
        agree: agree === null ? { value: null, why } : agree ? 'yes' : 'no',
        hp:
          hpPerThousandBushels === null
            ? { value: null, why: 'Nameplate or volume is not stated.' }
            : nameplatePerGrain(hpPerThousandBushels, units),
      };
    }),
    empty: 'there is no bin in season.yaml.',
  };
}

/** For the first page: the airflow that each bin's grain got. */
export function airflowTable(bins: readonly BinReview[], units: Units): Table {
  const { columns, rows, empty } = binTable(bins, units);
  const keys = ['bin', 'perGrain', 'used', 'hp'];
  return {
    id: 'airflow',
    caption: 'Airflow for the grain, and the fans’ nameplate',
    columns: columns.filter(({ key }) => keys.includes(key)),
    rows,
    empty,
  };
}
