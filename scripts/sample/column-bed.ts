import { humidityRatio, saturationPa, saturationSlope } from './air.ts';
import { type Kernel, rateConstant } from './kernels.ts';

/** An upright piece of a bin: its own airflow, its own wall. Arrays are [layers], from the floor up. */
export interface Column {
  id: string;
  areaM2: number;
  /** airflow per area over the bin's mean */
  airShare: number;
  tempC: Float64Array;
  /** % dry basis */
  moistureDb: Float64Array;
  /** humidity ratio of the air that last left each layer, kg/kg; NaN before any air */
  passedRatio: Float64Array;
  /** kg of dry matter per m2 of each layer; 0 above the grain */
  dryKgM2: Float64Array;
}

/**
 * Send air up a column for a while: one temperature for grain and air of a layer, found so that heat balances; water goes to or from the grain
 * at the thin-layer rate, so that air leaves short of balance where it passes fast. Water above saturation stays on the grain.
 *
 * Kernel rate against air: the layer gives d(ratio)/dn = ratioInBalance - ratio over n = dry * k * dM/dRatio / air transfer units.
 *
 * @param layers      layers that hold grain
 * @param airKgM2     dry air in this while, kg per m2
 * @param seconds     how long the while is (only for the rate)
 * @returns           kg of water carried off per m2
 */
export function passAir(
  column: Column,
  kernel: Kernel,
  layers: number,
  airKgM2: number,
  seconds: number,
  inTempC: number,
  inRatio: number,
  pressurePa: number,
): number {
  let airC = inTempC;
  let ratio = inRatio;
  const { tempC, moistureDb, passedRatio, dryKgM2 } = column;
  for (let i = 0; i < layers; i++) {
    const before = tempC[i];
    const m = moistureDb[i];
    const grainPerAir = dryKgM2[i] / airKgM2;
    const heat = kernel.heat((100 * m) / (100 + m)) * (1 + m / 100);
    const erh0 = Math.min(0.995, kernel.erh(m, before));
    const warming = kernel.erhWarming(m, before, erh0);
    // Heat of free water plus that of sorption (Clausius-Clapeyron on the kernel's own isotherm).
    const latent = 2501 - 2.361 * before + 0.4615 * (before + 273.15) ** 2 * warming;
    const balance0 = humidityRatio(erh0 * saturationPa(before), pressurePa);
    const ratioPerMoisture = (balance0 * kernel.erhSlope(m, before, erh0)) / erh0; // per % dry basis
    const units = (grainPerAir * rateConstant(kernel, before) * seconds * 0.01) / Math.max(ratioPerMoisture, 1e-7);
    const approach = 1 - Math.exp(-Math.min(units, 30));
    const airHeat = 1.006 + 1.86 * ratio;
    let t = before;
    let out = ratio;
    for (let k = 0; k < 12; k++) {
      const pressure = saturationPa(t);
      const erh = Math.min(0.995, kernel.erh(m, t));
      const vapour = erh * pressure;
      const balance = humidityRatio(vapour, pressurePa);
      out = ratio + approach * (balance - ratio);
      let slope = approach * balance * (pressurePa / (pressurePa - vapour)) * (saturationSlope(t) + warming);
      const saturated = humidityRatio(pressure, pressurePa);
      if (out > saturated) {
        out = saturated;
        slope = saturated * saturationSlope(t);
      }
      const rest = airHeat * (airC - t) - latent * (out - ratio) - grainPerAir * heat * (t - before);
      const step = rest / (airHeat + latent * slope + grainPerAir * heat);
      t += step;
      if (Math.abs(step) < 1e-7) break;
    }
    moistureDb[i] = m - (100 * (out - ratio)) / grainPerAir;
    tempC[i] = t;
    passedRatio[i] = out;
    ratio = out;
    airC = t;
  }
  return airKgM2 * (ratio - inRatio);
}

/** Heat that flows through the bulk, W/(m K), and is held by it, J/(m3 K) */
const CONDUCTIVITY = 0.155;
const BULK_HEAT = 1.45e6;

/** An upright face between two columns, or a column and the wall: conductance in W/K per metre of height. */
export interface Face {
  a: number;
  /** null: the wall */
  b: number | null;
  wattPerMetreK: number;
  /** wall only: share of the south sun, 0 to 1 */
  sun: number;
}

/** Conductance between two rings whose middles lie `betweenM` apart, across a face of `widthM`. */
export const faceConductance = (widthM: number, betweenM: number): number => (CONDUCTIVITY * widthM) / betweenM;

/** Let heat flow for a while with no regard to air: up and down, across the faces, to floor and headspace. */
export function conduct(
  columns: readonly Column[],
  faces: readonly Face[],
  layers: number,
  layerM: number,
  seconds: number,
  floorC: number,
  headspaceC: number,
  wallC: (sun: number) => number,
): void {
  if (layers === 0) return;
  const before = columns.map((column) => column.tempC.slice(0, layers));
  const perLayer = seconds / (BULK_HEAT * layerM);
  // Half a layer of grain in series with the air film at floor and surface.
  const half = layerM / 2 / CONDUCTIVITY;
  const floorU = 1 / (half + 1 / 1.5);
  const topU = 1 / (half + 1 / 4);
  columns.forEach((column, c) => {
    const old = before[c];
    for (let i = 0; i < layers; i++) {
      const below = i === 0 ? floorU * (floorC - old[0]) : (CONDUCTIVITY / layerM) * (old[i - 1] - old[i]);
      const above = i === layers - 1 ? topU * (headspaceC - old[i]) : (CONDUCTIVITY / layerM) * (old[i + 1] - old[i]);
      column.tempC[i] = old[i] + perLayer * (below + above);
    }
  });
  for (const face of faces) {
    const a = columns[face.a];
    const rate = (seconds * face.wattPerMetreK) / BULK_HEAT;
    const wall = face.b === null ? wallC(face.sun) : 0;
    for (let i = 0; i < layers; i++) {
      const other = face.b === null ? wall : before[face.b][i];
      const flow = rate * (other - before[face.a][i]);
      a.tempC[i] += flow / a.areaM2;
      if (face.b !== null) columns[face.b].tempC[i] -= flow / columns[face.b].areaM2;
    }
  }
}
