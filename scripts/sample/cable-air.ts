import { humidityRatio, saturationPa } from './air.ts';
import { type SensorTrace, STEP_MS } from './bin-run.ts';
import { MINUTE } from './calendar.ts';
import type { Column } from './column-bed.ts';
import { type Kernel, toWetBasis } from './kernels.ts';
import { between } from './make-columns.ts';
import type { AirNow } from './weather.ts';

/** The air inside a cable's sensor, which comes after what is around it; NaN before anything was. */
export interface CableAir {
  airC: number;
  rh: number;
}

export interface Around {
  layers: number;
  layerM: number;
  on: boolean;
  air: AirNow;
  headspaceC: number;
  headspaceRh: number;
}

/** Share of air that slips up along the cable itself and comes from under the floor. */
const ALONG_CABLE = 0.12;

const follow = (from: number, to: number, ms: number): number =>
  Number.isNaN(from) ? to : from + (to - from) * (1 - Math.exp(-STEP_MS / ms));

/**
 * One step of one sensor: what it is in, what its own air has come to, and the moisture that the cable works out from that.
 * With the fan on the air that passes is seen, in still air the grain's own after an hour or two.
 */
export function readCable(
  sensor: SensorTrace,
  step: number,
  state: CableAir,
  column: Column,
  kernel: Kernel,
  around: Around,
): void {
  const { layers, layerM, air } = around;
  let t = around.headspaceC;
  let rh = around.headspaceRh;
  let settleMs = 20 * MINUTE;
  if (layers > 1 && sensor.heightM < layers * layerM) {
    t = between(column.tempC, layers, layerM, sensor.heightM);
    const grainRh = Math.min(0.985, kernel.erh(between(column.moistureDb, layers, layerM, sensor.heightM), t));
    rh = grainRh;
    settleMs = 50 * MINUTE;
    if (around.on) {
      const passing = between(column.passedRatio, layers, layerM, sensor.heightM);
      const relative = (w: number) => (w * air.pressurePa) / (0.62198 + w) / saturationPa(t);
      const stream = Number.isNaN(passing) ? grainRh : relative(passing);
      const below = relative(humidityRatio(air.vapourPa, air.pressurePa));
      rh = Math.min(0.985, (1 - ALONG_CABLE) * stream + ALONG_CABLE * below);
      settleMs = 25 * MINUTE;
    }
  }
  sensor.tempC[step] = t;
  state.airC = follow(state.airC, t, 18 * MINUTE);
  state.rh = follow(state.rh, rh, settleMs);
  sensor.moistureWb[step] = toWetBasis(Math.max(1, kernel.emc(state.rh, state.airC)));
}
