import { BUSHEL_FT3 } from '../base/bushel.ts';
import { assertRange } from '../base/errors.ts';

/** cfm per bushel of volume for each m3/s per m3 of grain: cubic feet cancel, minutes and the bushel stay. */
const CFM_BU_PER_S = 60 * BUSHEL_FT3;

/**
 * Airflow for each bushel of volume.
 *
 * @param flowM3S        m3/s, >= 0
 * @param grainVolumeM3  m3, > 0
 * @returns              cfm per bushel of 1.2445 ft3
 * @source               definition
 * @valid                throws RangeError outside
 */
export function cfmPerBushel(flowM3S: number, grainVolumeM3: number): number {
  assertRange('flowM3S', flowM3S, 0, 1e4);
  assertRange('grainVolumeM3', grainVolumeM3, 1e-6, 1e6);
  return (flowM3S / grainVolumeM3) * CFM_BU_PER_S;
}

/**
 * Superficial velocity in a levelled bed that gets this much air for each bushel.
 *
 * @param cfmPerBu  cfm per bushel of 1.2445 ft3, 0 to 100
 * @param depthM    m, 0 to 60
 * @returns         m/s
 * @source          definition: airflow over floor area, volume = area times depth
 * @valid           throws RangeError outside
 */
export function velocityOfCfmPerBushel(cfmPerBu: number, depthM: number): number {
  assertRange('cfmPerBu', cfmPerBu, 0, 100);
  assertRange('depthM', depthM, 0, 60);
  return (cfmPerBu / CFM_BU_PER_S) * depthM;
}
