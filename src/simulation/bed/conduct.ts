import { ACCOUNT, type Bed } from './bed.ts';

/** Air films at floor and surface, W/(m2 K): still air under a floor, moving air in a headspace. memory: handbook values */
const FLOOR_WM2K = 1.5;
const SURFACE_WM2K = 4;
/** What surrounds a bed at rest, degC; NaN: no exchange with it. */
export interface Surroundings {
  plenumC: number;
  headspaceC: number;
  wallC: number;
}

/**
 * Let heat flow through the grain for a while, fans on or off: between layers, to plenum, headspace and wall. Moisture
 * stays (diffusion of water through still grain is left out).
 *
 * @param seconds  short against a layer's own time, c dz^2 / 2k; an hour down to layers of 0.1 m
 * @valid          the kernel: no checks, no allocation
 */
export function conduct(bed: Bed, seconds: number, { plenumC, headspaceC, wallC }: Surroundings): void {
  const { medium, columns, layers, filled, layerM, tempC, moistureDb, dryKgM2, before, areaShares, wallWM3K } = bed;
  if (filled === 0) return;
  const between = medium.conductivityWMK / layerM;
  const half = 1 / (2 * between);
  const floor = !Number.isNaN(plenumC) ? 1 / (half + 1 / FLOOR_WM2K) : 0;
  const surface = !Number.isNaN(headspaceC) ? 1 / (half + 1 / SURFACE_WM2K) : 0;
  const wall = !Number.isNaN(wallC) ? wallWM3K : 0;
  const { heatDryJKgK, heatPerMoistureJKgK, dryDensityKgM3 } = medium;
  let gained = 0;
  for (let column = 0; column < columns; column++) {
    const first = column * layers;
    for (let i = 0; i < filled; i++) before[i] = tempC[first + i];
    for (let i = 0; i < filled; i++) {
      const t = before[i];
      const below = i === 0 ? (floor === 0 ? 0 : floor * (plenumC - t)) : between * (before[i - 1] - t);
      const above = i === filled - 1 ? (surface === 0 ? 0 : surface * (headspaceC - t)) : between * (before[i + 1] - t);
      const side = wall === 0 ? 0 : ((wall * dryKgM2[i]) / dryDensityKgM3) * (wallC - t);
      const heat = (heatDryJKgK + heatPerMoistureJKgK * moistureDb[first + i]) * dryKgM2[i];
      tempC[first + i] = t + (seconds * (below + above + side)) / heat;
      gained += areaShares[column] * seconds * (below + above + side);
    }
  }
  bed.account[ACCOUNT.heatByConduction] += gained;
}
