import { specificVolume } from './air.ts';
import { operatingPoint } from './airflow.ts';
import type { FanPlan } from './farm-types.ts';
import type { Kernel } from './kernels.ts';
import type { AirNow } from './weather.ts';

const CFM = 0.3048 ** 3 / 60;
const INCH_WATER = 249.08891;
/** share of the electric power that warms the air: the motor hangs in the stream */
const TO_AIR = 0.92;

/** What a bin's fans do against its grain, by which of them run and how many layers lie there. */
export interface Blower {
  point(ids: readonly string[], layers: number): { flowM3S: number; pressurePa: number };
  /** how far they warm the air, K */
  warmedBy(ids: readonly string[], layers: number, air: AirNow): number;
}

export function blowerOf(fans: readonly FanPlan[], areaM2: number, layerM: number, kernel: Kernel): Blower {
  const planOf = new Map(fans.map((fan) => [fan.id, fan]));
  const remembered = new Map<string, { flowM3S: number; pressurePa: number }>();
  const point: Blower['point'] = (ids, layers) => {
    const key = `${ids.join('+')} ${layers}`;
    let found = remembered.get(key);
    if (found === undefined) {
      const curves = ids.map((id) => planOf.get(id)!.curve.map(([sp, cfm]) => [sp * INCH_WATER, cfm * CFM] as const));
      found = operatingPoint(curves, areaM2, layers * layerM, kernel.resistance);
      remembered.set(key, found);
    }
    return found;
  };
  return {
    point,
    warmedBy(ids, layers, air) {
      if (ids.length === 0 || layers === 0) return 0;
      const kw = ids.reduce((sum, id) => sum + planOf.get(id)!.kw, 0);
      const volume = specificVolume(air.tempC, 0.005, air.pressurePa);
      return (1000 * kw * TO_AIR) / ((point(ids, layers).flowM3S * 1006) / volume);
    },
  };
}
