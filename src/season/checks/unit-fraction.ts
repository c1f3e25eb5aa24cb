import { UNIT_READINGS } from './unit-stretch.ts';

/** What a share must look like when it is read rightly. */
const SHARE_RANGE = { moisture: [0.05, 0.4], rh: [0.05, 1.05] } as const;

/**
 * Runs of at least UNIT_READINGS values that were fractions read as percent (0.15 as 0.15 %) or percent read as fractions (15 as 1500 %).
 * Positions, rising.
 *
 * @param values  fractions, [readings]
 * @param use     [readings], 0 to pass over
 */
export function wrongShares(values: ArrayLike<number>, use: ArrayLike<number>, of: keyof typeof SHARE_RANGE): number[] {
  const [low, high] = SHARE_RANGE[of];
  const found: number[] = [];
  for (const factor of [100, 0.01]) {
    let run: number[] = [];
    const close = () => {
      if (run.length >= UNIT_READINGS) found.push(...run);
      run = [];
    };
    for (let i = 0; i < values.length; i++) {
      if (!use[i]) continue;
      // Read rightly now, it needs no other reading: the two ranges don't meet.
      const other = values[i] * factor;
      if (other >= low && other <= high && !(values[i] >= 0.03 && values[i] <= high)) run.push(i);
      else close();
    }
    close();
  }
  return found.sort((a, b) => a - b);
}
