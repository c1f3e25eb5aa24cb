import { endStripSd, sharpness } from './height-error.ts';

/**
 * Error of a layer's mean on one cable from seeing it at a few heights only, standard error in points.
 *
 * A step of size d at any place in a gap that lies whole in the layer: d g / sqrt 12 of the layer's height, as for the
 * whole depth. Of a gap that the layer cuts, the half that is seen is on the wrong side of the step one time in two, by up
 * to all of it: root mean square d o sqrt(1/2 * 1/3) = 0.41 d o, for an overlap o (by hand).
 *
 * @param heightsM  of all of the cable's sensors in the grain, rising
 * @param moistures in percent, of the same
 */
export function layerHeightError(
  heightsM: readonly number[],
  moistures: readonly number[],
  depthM: number,
  fromM: number,
  toM: number,
  air: 'up' | 'down',
): number {
  const overlap = (low: number, high: number) => Math.max(0, Math.min(high, toM) - Math.max(low, fromM));
  let variance = 0;
  for (let i = 1; i < heightsM.length; i++) {
    const gap = heightsM[i] - heightsM[i - 1];
    const seen = overlap(heightsM[i - 1], heightsM[i]);
    const share = seen > gap * 0.999 ? 1 / 12 : 1 / 6;
    variance += (sharpness(gap) * (moistures[i] - moistures[i - 1]) * seen) ** 2 * share;
  }
  const last = heightsM.length - 1;
  const stepUp = last > 0 ? moistures[0] - moistures[1] : 0;
  const stepDown = last > 0 ? moistures[last] - moistures[last - 1] : 0;
  const bottom = endStripSd(heightsM[0], stepUp, last > 0 ? heightsM[1] - heightsM[0] : 0, air === 'up');
  const top = endStripSd(
    depthM - heightsM[last],
    stepDown,
    last > 0 ? heightsM[last] - heightsM[last - 1] : 0,
    air === 'down',
  );
  variance += (overlap(0, heightsM[0]) * bottom) ** 2 + (overlap(heightsM[last], depthM) * top) ** 2;
  return Math.sqrt(variance) / (toM - fromM);
}
