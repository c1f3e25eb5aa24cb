import { FT, LAYERS } from './bin-run.ts';
import { type Column, type Face, faceConductance } from './column-bed.ts';
import type { BinPlan } from './farm-types.ts';

/** The bin's columns, airflow shares scaled to a mean of 1, and the faces between them and to the wall. */
export function makeColumns(plan: BinPlan): { columns: Column[]; faces: Face[] } {
  const columns = plan.columns.map(
    (one): Column => ({
      id: one.id,
      areaM2: Math.PI * (one.toFt ** 2 - one.fromFt ** 2) * FT * FT * one.share,
      airShare: one.air,
      tempC: new Float64Array(LAYERS),
      moistureDb: new Float64Array(LAYERS),
      passedRatio: new Float64Array(LAYERS).fill(Number.NaN),
      dryKgM2: new Float64Array(LAYERS),
    }),
  );
  const total = columns.reduce((sum, one) => sum + one.areaM2, 0);
  const air = columns.reduce((sum, one) => sum + one.areaM2 * one.airShare, 0) / total;
  for (const one of columns) one.airShare /= air;
  const faces: Face[] = [];
  plan.columns.forEach((inner, a) => {
    plan.columns.forEach((outer, b) => {
      if (outer.fromFt !== inner.toFt) return;
      const width = 2 * Math.PI * inner.toFt * FT * Math.min(inner.share, outer.share);
      // Quarters meet both halves of the wall ring in part; each pair gets its part of the circle.
      const part = inner.share === 1 || outer.share === 1 ? 1 : 0.5;
      const between = ((outer.toFt - inner.fromFt) / 2) * FT;
      faces.push({ a, b, wattPerMetreK: faceConductance(width * part, between), sun: 0 });
    });
    if (inner.sun !== undefined) {
      const width = 2 * Math.PI * inner.toFt * FT * inner.share;
      faces.push({
        a,
        b: null,
        wattPerMetreK: faceConductance(width, ((inner.toFt - inner.fromFt) / 2) * FT),
        sun: inner.sun,
      });
    }
  });
  return { columns, faces };
}

/** The column a cable hangs in: the core inside its radius, else the quarter of its bearing. */
export function columnOfCable(plan: BinPlan, fromCentreFt: number, bearing: number): number {
  const within = plan.columns
    .map((one, i) => ({ one, i }))
    .filter(({ one }) => fromCentreFt >= one.fromFt && fromCentreFt < one.toFt);
  if (within.length === 1) return within[0].i;
  return within[Math.round(bearing / 90) % within.length].i;
}

/** A column's value at a height, straight between the middles of layers. */
export function between(values: Float64Array, layers: number, layerM: number, heightM: number): number {
  const at = heightM / layerM - 0.5;
  const i = Math.min(layers - 2, Math.max(0, Math.floor(at)));
  const f = Math.min(1, Math.max(0, at - i));
  return values[i] + f * (values[i + 1] - values[i]);
}
