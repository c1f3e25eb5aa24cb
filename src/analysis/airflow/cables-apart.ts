import { sensorShares } from '../../bin/shares.ts';
import type { Bin } from '../../season/season.ts';
import type { CableFlux } from './cable-flux.ts';

/** Airflow differs from place to place at one distance from the centre (sd), held as firmly as three cables' difference. */
const PLACE_SD = 0.07;
const PLACE_DF = 3;

/** Each cable's share of the floor, among those that have an airflow. */
export function cableShares(bin: Bin, depthM: number, cables: readonly CableFlux[]): number[] {
  const placed = sensorShares(bin.diameterM, depthM, bin.cables, (cable) => cables.some((one) => one.cable === cable));
  const share = (id: string) => placed.find((one) => one.cable === id)?.cableShare ?? 0;
  const all = cables.reduce((sum, one) => sum + share(one.cable), 0);
  return cables.map((one) => share(one.cable) / all);
}

/**
 * How cables at one distance differ, sd of the logarithm, with what is assumed before they are looked at. What they differ by
 * because each is timed with an error of its own is taken out: the timing counts that.
 */
export function placeSd(bin: Bin, cables: readonly CableFlux[]): number {
  const at = (id: string) => bin.cables.find((one) => one.id === id)?.fromCentreM ?? 0;
  let squares = 0;
  let df = PLACE_DF;
  for (const place of new Set(cables.map((one) => at(one.cable)))) {
    const ring = cables.filter((one) => at(one.cable) === place);
    const logs = ring.map((one) => Math.log(one.fluxKgM2S));
    const mean = logs.reduce((sum, one) => sum + one, 0) / ring.length;
    const byTiming = ring.reduce((sum, one) => sum + one.ownSd ** 2, 0) * (1 - 1 / ring.length);
    squares += logs.reduce((sum, one) => sum + (one - mean) ** 2, 0) - byTiming;
    df += ring.length - 1;
  }
  return Math.sqrt((PLACE_DF * PLACE_SD ** 2 + Math.max(0, squares)) / df);
}
