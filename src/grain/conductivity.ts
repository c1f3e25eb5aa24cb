import { assertRange } from '../base/errors.ts';
import { AS_WHEAT } from './crops.ts';

/** Base and slope over percent moisture, wet basis, W/(m K). asae-d243, memory; wheat is soft wheat. */
export const CONDUCTIVITY_LINES: Readonly<Record<string, readonly [baseWMK: number, slopeWMKPct: number]>> = {
  corn: [0.1409, 0.00112],
  wheat: [0.117, 0.00113],
  sorghum: [0.0976, 0.00148],
  rice: [0.0866, 0.00133],
};

/**
 * Thermal conductivity of grain in bulk, still air between the kernels.
 *
 * @param crop        corn, a wheat, sorghum or rice
 * @param moistureWb  fraction, wet basis, 0.05 to 0.3
 * @returns           W/(m K)
 * @source            asae-d243; memory. Oklahoma State's R-1 per inch (0.144) lies among them
 * @valid             throws RangeError outside and for other crops, with those that there are
 */
export function bulkConductivityWMK(crop: string, moistureWb: number): number {
  assertRange('moistureWb', moistureWb, 0.05, 0.3);
  const line = CONDUCTIVITY_LINES[AS_WHEAT[crop] ?? crop];
  if (line === undefined) {
    const known = Object.keys(CONDUCTIVITY_LINES).join(', ');
    throw new RangeError(`no conductivity for crop "${crop}"; there is one for ${known}`);
  }
  return line[0] + line[1] * 100 * moistureWb;
}
