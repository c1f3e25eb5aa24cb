import { storageLifeOf } from '../../simulation/bed/storage-life.ts';
import type { RunSpec } from '../../simulation/run/run-spec.ts';

/** A run's numbers without the functions of its storage rule, which no thread can hand to another. */
export interface PlainSpec {
  spec: RunSpec;
  /** the medium had a storage rule: that of its crop */
  ages: boolean;
}

export function plainSpec(spec: RunSpec): PlainSpec {
  const { bed } = spec;
  const { medium } = bed;
  return { spec: { ...spec, bed: { ...bed, medium: { ...medium, storage: null } } }, ages: medium.storage !== null };
}

export function specOfPlain({ spec, ages }: PlainSpec): RunSpec {
  const { bed } = spec;
  const { medium } = bed;
  return { ...spec, bed: { ...bed, medium: { ...medium, storage: ages ? storageLifeOf(medium.crop) : null } } };
}
