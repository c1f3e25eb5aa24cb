import type { Bin } from '../../season/season.ts';

/**
 * What the resistance multiplier for packing and fines leaves open, 90 %.
 *
 * The standard's notes let packing raise the resistance of loose clean grain by up to a half (read); in practice 1.2 is taken for
 * small grain that is levelled and 1.5 for corn filled with a spreader (memory), 42 published pressures of corn fit 1.49, and
 * spread and fines go beyond either way. So a factor that is only the crop's default is let go from four fifths of itself to
 * a quarter more, never below 1; one that the user states was found somehow: a tenth either way.
 *
 * @source asae-d272-3, notes; mwps-drying (memory)
 */
export function packingRange({ airflowFactor, airflowFactorFrom }: Bin): readonly [low: number, high: number] {
  if (airflowFactorFrom === 'stated') return [0.9 * airflowFactor, 1.1 * airflowFactor];
  return [Math.max(1, 0.8 * airflowFactor), 1.25 * airflowFactor];
}
