/** Pressure through a levelled bed at a mean superficial speed (m/s), ASAE D272.3 times a packing multiplier, Pa. */
export function bedPressurePa(
  speedMs: number,
  depthM: number,
  resistance: { a: number; b: number; packing: number },
): number {
  if (speedMs <= 0) return 0;
  return (depthM * resistance.packing * resistance.a * speedMs * speedMs) / Math.log(1 + resistance.b * speedMs);
}

/** Flow of a fan against a pressure, straight between the points of its curve and on beyond the last, m3/s. */
function fanFlow(curve: readonly (readonly [pressurePa: number, flowM3S: number])[], pressurePa: number): number {
  let k = 1;
  while (k < curve.length - 1 && pressurePa > curve[k][0]) k++;
  const [p0, q0] = curve[k - 1];
  const [p1, q1] = curve[k];
  return Math.max(0, q0 + ((pressurePa - p0) / (p1 - p0)) * (q1 - q0));
}

/** Where the running fans' curves meet the bed's, by halving. */
export function operatingPoint(
  curves: readonly (readonly (readonly [number, number])[])[],
  areaM2: number,
  depthM: number,
  resistance: { a: number; b: number; packing: number },
): { flowM3S: number; pressurePa: number } {
  if (curves.length === 0) return { flowM3S: 0, pressurePa: 0 };
  let low = 0;
  let high = 4000;
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2;
    const flow = curves.reduce((sum, curve) => sum + fanFlow(curve, middle), 0);
    if (bedPressurePa(flow / areaM2, depthM, resistance) > middle) low = middle;
    else high = middle;
  }
  return { flowM3S: curves.reduce((sum, curve) => sum + fanFlow(curve, low), 0), pressurePa: low };
}
