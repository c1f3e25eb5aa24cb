import { ACCOUNT, type Bed } from './bed.ts';

/** Air films at floor and surface, W/(m2 K): still air under a floor, moving air in a headspace. memory: handbook values */
export const FLOOR_WM2K = 1.5;
export const SURFACE_WM2K = 4;
/** What surrounds a bed at rest, degC; NaN: no exchange with it. */
export interface Surroundings {
  plenumC: number;
  headspaceC: number;
  wallC: number;
}

/**
 * Let heat flow through the grain for a while, fans on or off: between layers, to plenum, headspace and wall. Moisture
 * stays (diffusion of water through still grain is left out). Flows are those of the temperatures at the end of the while
 * (backward Euler, one sweep up and one down), so that no step is too long for the thinnest layer.
 *
 * @param seconds  an hour or so: what a layer of 0.1 m follows within some hours is spread over a step
 * @source         Fourier's law; carslaw-jaeger-1959 is what tests hold it against
 * @valid          the kernel: no checks, no allocation
 */
export function conduct(bed: Bed, seconds: number, { plenumC, headspaceC, wallC }: Surroundings): void {
  const { medium, columns, layers, filled, tempC, moistureDb, dryKgM2, eased, areaShares, wallWM3K } = bed;
  if (filled === 0) return;
  const { heatDryJKgK, heatPerMoistureJKgK, dryDensityKgM3, conductivityWMK } = medium;
  // Half a layer is dry / (2 density): its resistance for each kg/m2 of dry matter.
  const half = 1 / (2 * dryDensityKgM3 * conductivityWMK);
  const top = filled - 1;
  const floor = Number.isNaN(plenumC) ? 0 : 1 / (half * dryKgM2[0] + 1 / FLOOR_WM2K);
  const surface = Number.isNaN(headspaceC) ? 0 : 1 / (half * dryKgM2[top] + 1 / SURFACE_WM2K);
  const wall = Number.isNaN(wallC) ? 0 : wallWM3K / dryDensityKgM3;
  // What there is no exchange with must not bring its NaN in.
  const fromFloor = floor === 0 ? 0 : floor * plenumC;
  const fromSurface = surface === 0 ? 0 : surface * headspaceC;
  const fromWall = wall === 0 ? 0 : wall * wallC;
  let gained = 0;
  for (let column = 0; column < columns; column++) {
    const first = column * layers;
    // Up: each layer's temperature as far as those below it say, and how it hangs on the one above (`eased`).
    let below = 0;
    let easedBelow = 0;
    for (let i = 0; i < filled; i++) {
      const at = first + i;
      const dry = dryKgM2[i];
      const held = ((heatDryJKgK + heatPerMoistureJKgK * moistureDb[at]) * dry) / seconds;
      const above = i === top ? 0 : 1 / (half * (dry + dryKgM2[i + 1]));
      const outside = wall * dry + (i === 0 ? floor : 0) + (i === top ? surface : 0);
      const from = fromWall * dry + (i === 0 ? fromFloor : 0) + (i === top ? fromSurface : 0);
      const pivot = held + outside + above + below * (1 - easedBelow);
      tempC[at] = (held * tempC[at] + from + (i === 0 ? 0 : below * tempC[at - 1])) / pivot;
      easedBelow = above / pivot;
      eased[i] = easedBelow;
      below = above;
    }
    // Down: with the temperature above known, each is known.
    let came = 0;
    for (let i = top; i >= 0; i--) {
      const at = first + i;
      if (i < top) tempC[at] += eased[i] * tempC[at + 1];
      const outside = wall * dryKgM2[i] + (i === 0 ? floor : 0) + (i === top ? surface : 0);
      const from = fromWall * dryKgM2[i] + (i === 0 ? fromFloor : 0) + (i === top ? fromSurface : 0);
      came += from - outside * tempC[at];
    }
    gained += areaShares[column] * seconds * came;
  }
  bed.account[ACCOUNT.heatByConduction] += gained;
}
