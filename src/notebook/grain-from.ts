import type { BinReview } from '../analysis/types.ts';
import { listed } from '../base/listed.ts';
import { sentence } from './words.ts';

const SOURCES = { tickets: 'scale tickets', volume: 'depth and test weight' } as const;

/** Where the weight of the bins' grain comes from, and why not from the tickets where there are some, as notes. */
export function grainFrom(bins: readonly BinReview[]): string[] {
  const single = bins.length === 1;
  const parts = (['tickets', 'volume'] as const).flatMap((from) => {
    const names = bins.filter((one) => one.grain.from === from).map((one) => one.bin.name);
    return names.length === 0 ? [] : [`from ${SOURCES[from]}${single ? '' : ` in ${listed(names)}`}`];
  });
  return [
    ...(parts.length === 0 ? [] : [`The weight of the grain comes ${parts.join(', ')}.`]),
    ...bins.flatMap((one) =>
      (one.grain.notes ?? []).map((note) => `${single ? '' : `${one.bin.name}: `}${sentence(note)}`),
    ),
  ];
}
