import { ACCOUNT, type Bed } from './bed.ts';
import { bedHolds } from './bed-totals.ts';

/**
 * Put the grain of a bed at other temperatures and moistures, as a run starts from what a log tells; the change is booked as
 * brought by grain, so that the books stay closed.
 *
 * @param tempC       degC, [columns x layers]
 * @param moistureDb  fraction of dry matter, [columns x layers]
 * @valid             throws RangeError where the arrays are not of the bed's size
 */
export function setState(bed: Bed, tempC: Float64Array, moistureDb: Float64Array): void {
  for (const [name, given] of Object.entries({ tempC, moistureDb })) {
    if (given.length !== bed.tempC.length) {
      throw new RangeError(
        `${name} has ${given.length} numbers; the bed has ${bed.tempC.length} layers in its columns`,
      );
    }
  }
  const before = bedHolds(bed);
  bed.tempC.set(tempC);
  bed.moistureDb.set(moistureDb);
  const after = bedHolds(bed);
  bed.account[ACCOUNT.waterByGrain] += after.waterKgM2 - before.waterKgM2;
  bed.account[ACCOUNT.heatByGrain] += after.heatJM2 - before.heatJM2;
}
