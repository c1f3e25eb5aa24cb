import { saturationPa } from '../../sample/air.ts';
import { MINUTE } from '../../sample/calendar.ts';
import type { Column } from '../../sample/column-bed.ts';
import type { BinDraw } from './plan.ts';

/** The air inside a cable at one sensor, which comes after what is around it; NaN before anything was. */
export interface SensorState {
  tempC: number;
  rh: number;
}

export interface Around {
  layers: number;
  layerM: number;
  on: boolean;
  /** kg/kg of the air under the floor */
  ratio: number;
  pressurePa: number;
  headspaceC: number;
  /** relative humidity outdoors, fraction */
  rh: number;
  stepMs: number;
}

/**
 * One step: with the fan on a sensor sees the air that passes, some of it from under the floor along the cable; in still air
 * after an hour or two the grain's own. Above the grain it hangs in the headspace.
 */
export function senseAir(state: SensorState, heightM: number, column: Column, draw: BinDraw, around: Around): void {
  const { layers, layerM, on, ratio, pressurePa, stepMs } = around;
  let t = around.headspaceC;
  let rh = around.rh;
  if (heightM < layers * layerM) {
    const at = heightM / layerM - 0.5;
    const low = Math.min(layers - 2, Math.max(0, Math.floor(at)));
    const part = Math.min(1, Math.max(0, at - low));
    const valueAt = (values: Float64Array) => values[low] + part * (values[low + 1] - values[low]);
    t = valueAt(column.tempC);
    rh = Math.min(0.985, draw.grain.erh(valueAt(column.moistureDb), t));
    if (on) {
      const relative = (w: number) => (w * pressurePa) / (0.62198 + w) / saturationPa(t);
      const passing = valueAt(column.passedRatio);
      const stream = Number.isNaN(passing) ? rh : relative(passing);
      rh = Math.min(0.985, (1 - draw.slip) * stream + draw.slip * relative(ratio));
    }
  }
  const settleMs = (on ? 25 : 50) * MINUTE;
  state.tempC = follow(state.tempC, t, stepMs / (18 * MINUTE));
  state.rh = follow(state.rh, rh, stepMs / settleMs);
}

const follow = (from: number, to: number, units: number): number =>
  Number.isNaN(from) ? to : from + (to - from) * (1 - Math.exp(-units));
