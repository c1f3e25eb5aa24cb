import { describe, expect, it } from 'vitest';
import type { Track } from '../../../src/season/checks/track.ts';
import { UNIT_MISTAKES, unitStretches } from '../../../src/season/checks/unit-stretch.ts';

const [AS_F] = UNIT_MISTAKES;
const HOUR_MS = 3_600_000;

/** Every third hour a reading, C as the file says it. */
function trackOf(tempC: readonly number[]): Track {
  return {
    timeMs: Float64Array.from(tempC, (_, i) => 3 * i * HOUR_MS),
    values: Float64Array.from(tempC),
    use: new Uint8Array(tempC.length).fill(1),
  } as Track;
}

/** Grain of 12 C, in a file of degF, whose logger wrote C for a while: 12 is read as 12 F, -11.1 C. */
const inCelsius = (tempC: number) => (tempC - 32) / 1.8;

describe('stretches in another scale', () => {
  it('are found where the record joins by the other scale', () => {
    const read = [
      ...new Array<number>(40).fill(12),
      ...new Array<number>(60).fill(inCelsius(12)),
      ...new Array<number>(40).fill(12),
    ];
    expect(unitStretches(trackOf(read), AS_F)).toEqual([{ first: 40, last: 99 }]);
  });

  it('are none where the grain would have been hotter than any by the other scale', () => {
    // 20 C at harvest, cooled to -5 C by winter; then the cable hangs in spring air of 21 C. By the other scale -5 C is 23 C, which joins
    // to 21; but 20 C would have been 68 C, which no grain is.
    const season = Array.from({ length: 300 }, (_, i) => 20 - (25 * i) / 299);
    expect(unitStretches(trackOf([...season, ...new Array<number>(40).fill(21)]), AS_F)).toEqual([]);
    // The same end of a log that was in C all along, 20 to 23 C: nothing speaks against that.
    const all = Array.from({ length: 300 }, (_, i) => inCelsius(20 + (3 * i) / 299));
    expect(unitStretches(trackOf([...all, ...new Array<number>(40).fill(22)]), AS_F)).toEqual([
      { first: 0, last: 299 },
    ]);
  });
});
