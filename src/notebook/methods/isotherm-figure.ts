import { equilibriumMoistureWb } from '../../grain/equilibrium.ts';
import { type Isotherm, isothermOf } from '../../grain/isotherm.ts';
import { type IsothermPanel, isothermPanels } from '../../report/figures/isotherm-panels.ts';
import type { Figure, Table } from '../../report/page.ts';
import type { Units } from '../../report/units.ts';
import { cropName } from './crop-name.ts';
import type { EmcCheck } from './emc-checks.ts';
import { celsius } from './printed-units.ts';
import { agrees, groupsOf } from './published-check.ts';
import type { CropIsotherm } from './season-crops.ts';

/** Most of the published points are at these, in degF; so the lines run through them. */
const LINES_F = [35, 70, 100] as const;
// Halsey runs off above: at 95 % it would flatten all the others.
const HUMIDITIES = Array.from({ length: 33 }, (_, i) => 0.1 + 0.025 * i);

interface Point {
  check: EmcCheck;
  /** by the panel's isotherm, fraction */
  oursWb: number;
  agrees: boolean;
}

/** Every published moisture of the crop once, held against one isotherm. */
export function pointsOf(isotherm: Isotherm, checks: readonly EmcCheck[]): Point[] {
  const own = checks.filter((check) => check.crop === isotherm.crop);
  const distinct = groupsOf(own, (check) => `${check.at} ${check.printed} ${check.source}`);
  return [...distinct.values()].map(([check]) => {
    const oursWb = equilibriumMoistureWb(isotherm, check.tempC, check.rh);
    return { check, oursWb, agrees: agrees({ ...check, ours: 100 * oursWb }) };
  });
}

function panelOf(isotherm: Isotherm, points: readonly Point[]): IsothermPanel {
  return {
    crop: cropName(isotherm.crop),
    isotherm: isotherm.name,
    lines: LINES_F.map(celsius).map((tempC) => ({
      tempC,
      points: HUMIDITIES.map((rh) => ({ rh, moistureWb: equilibriumMoistureWb(isotherm, tempC, rh) })),
    })),
    published: points.map(({ check, oursWb, agrees }) => ({
      tempC: check.tempC,
      rh: check.rh,
      moistureWb: check.published / 100,
      oursWb,
      agrees,
    })),
  };
}

/** The isotherms of crops with the published points on them, and those points as a table; null without a crop. */
export function isothermFigure(
  id: string,
  crops: readonly CropIsotherm[],
  checks: readonly EmcCheck[],
  units: Units,
): { figure: Figure; table: Table } | null {
  if (crops.length === 0) return null;
  const all = crops.map(({ crop, isotherm }) => isothermOf(crop, isotherm ?? undefined));
  const points = all.map((isotherm) => pointsOf(isotherm, checks));
  const flat = points.flat();
  const title =
    flat.length === 0
      ? 'No published moisture is known here for these crops'
      : `${flat.filter((point) => point.agrees).length} of ${flat.length} published moistures lie on these isotherms, within what is printed`;
  const panels = all.map((isotherm, i) => panelOf(isotherm, points[i]));
  return {
    figure: isothermPanels({ id, title, panels }, units),
    table: pointTable(id, all, points),
  };
}

function pointTable(id: string, isotherms: readonly Isotherm[], points: readonly Point[][]): Table {
  return {
    id: `${id}-points`,
    caption: 'Published moistures and what these isotherms give, %, wet basis',
    columns: [
      { key: 'crop', label: 'Crop', quantity: null },
      { key: 'temp', label: 'Temperature', quantity: 'temperature' },
      { key: 'rh', label: 'Humidity', quantity: 'share' },
      { key: 'printed', label: 'Printed, % wet basis', quantity: 'number' },
      { key: 'ours', label: 'This isotherm, % wet basis', quantity: 'number' },
      { key: 'off', label: 'Difference, points', quantity: 'misfit' },
      { key: 'fits', label: 'Within what is printed', quantity: null },
    ],
    rows: points.flatMap((of, i) =>
      of.map(({ check, oursWb, agrees }) => ({
        crop: cropName(isotherms[i].crop),
        temp: check.tempC,
        rh: check.rh,
        printed: check.published,
        ours: 100 * oursWb,
        off: Math.abs(100 * oursWb - check.published),
        fits: agrees ? 'yes' : 'no',
      })),
    ),
    empty: 'none is known here',
    folded: 'on screen',
  };
}
