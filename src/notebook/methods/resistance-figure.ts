import { fromSi } from '../../base/units.ts';
import { resistancePaM } from '../../bin/airflow-resistance.ts';
import { RESISTANCE_CURVES, type ResistanceCurve } from '../../bin/resistance-curves.ts';
import { PACKING_FACTOR } from '../../bin/resistance-factors.ts';
import { type ResistancePanel, resistancePanels } from '../../report/figures/resistance-panels.ts';
import type { Figure, Table } from '../../report/page.ts';
import type { Units } from '../../report/units.ts';
import type { AirflowCheck } from './airflow-checks.ts';
import { cropName } from './crop-name.ts';
import { FT_M } from './printed-units.ts';
import { agrees } from './published-check.ts';

const STEPS = 24;

/** Pa per metre in the shown unit. */
const pressureShown = (paM: number, units: Units) =>
  units.system === 'si' ? paM : fromSi('pressure', paM, 'inH2O') * FT_M;
/** m/s over the floor in the shown unit: feet a minute are cfm per square foot. */
const airflowShown = (velocityMS: number, units: Units) =>
  units.system === 'si' ? velocityMS : (60 * velocityMS) / FT_M;

function lineOf(curve: ResistanceCurve, factor: number, kind: ResistancePanel['lines'][number]['kind'], units: Units) {
  const [low, high] = curve.rangeMS;
  return {
    kind,
    points: Array.from({ length: STEPS + 1 }, (_, i) => {
      const velocityMS = low * (high / low) ** (i / STEPS);
      return {
        airflow: airflowShown(velocityMS, units),
        pressure: pressureShown(factor * resistancePaM(curve.a, curve.b, velocityMS), units),
      };
    }),
  };
}

function panelOf(crop: string, checks: readonly AirflowCheck[], units: Units): ResistancePanel {
  return {
    crop: cropName(crop),
    lines: RESISTANCE_CURVES.filter((curve) => curve.crop === crop).flatMap((curve) =>
      curve.set === 'standard'
        ? [lineOf(curve, 1, 'loose', units), lineOf(curve, PACKING_FACTOR, 'packed', units)]
        : [lineOf(curve, 1, 'low airflow', units)],
    ),
    published: checks
      .filter((check) => check.crop === crop)
      .map((check) => ({
        airflow: airflowShown(check.velocityMS, units),
        pressure: pressureShown(check.publishedPaM, units),
        agrees: agrees(check),
        assumed: check.kind === 'fan power',
      })),
  };
}

/** Pressure per depth of crops (names of the resistance table) with the published points on it, and those as a table; null without a crop. */
export function resistanceFigure(
  id: string,
  crops: readonly string[],
  checks: readonly AirflowCheck[],
  units: Units,
): { figure: Figure; table: Table } | null {
  if (crops.length === 0) return null;
  const own = checks.filter((check) => crops.includes(check.crop));
  const title =
    own.length === 0
      ? 'No published pressure is known here for these crops'
      : `${own.filter(agrees).length} of ${own.length} published pressures lie on the line of packed grain, within what is printed`;
  const panels = crops.map((crop) => panelOf(crop, checks, units));
  return {
    figure: resistancePanels({ id, title, packing: PACKING_FACTOR, panels }, units),
    table: pointTable(id, own, units),
  };
}

function pointTable(id: string, checks: readonly AirflowCheck[], units: Units): Table {
  return {
    id: `${id}-points`,
    caption: `Published pressures and what the equation gives, packed × ${PACKING_FACTOR}`,
    columns: [
      { key: 'crop', label: 'Crop', quantity: null },
      { key: 'at', label: 'Case', quantity: null },
      { key: 'printed', label: 'Printed', quantity: null },
      { key: 'airflow', label: 'Airflow', quantity: 'airflow per floor' },
      { key: 'published', label: 'Published', quantity: 'pressure per depth' },
      { key: 'ours', label: 'The equation', quantity: 'pressure per depth' },
      { key: 'fits', label: 'Within what is printed', quantity: null },
    ],
    rows: checks.map((check) => ({
      crop: cropName(check.crop),
      at: check.at,
      printed: `${check.printed} ${check.unit}`,
      airflow: airflowShown(check.velocityMS, units),
      published: pressureShown(check.publishedPaM, units),
      ours: pressureShown(check.oursPaM, units),
      fits: agrees(check) ? 'yes' : 'no',
    })),
    empty: 'none is known here',
    folded: 'on screen',
  };
}
