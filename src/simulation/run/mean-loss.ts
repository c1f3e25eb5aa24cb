import type { Bed } from '../bed/bed.ts';

/** Dry matter lost on the mean, fraction; NaN where no rule tells it. No allocation. */
export function meanLoss({ medium, lifeUsed, dryKgM2, areaShares, columns, layers, filled }: Bed): number {
  const lossOfShare = medium.storage?.lossOfShare ?? null;
  if (lossOfShare === null) return Number.NaN;
  let lost = 0;
  let dry = 0;
  for (let column = 0; column < columns; column++) {
    for (let i = 0; i < filled; i++) {
      const kg = areaShares[column] * dryKgM2[i];
      dry += kg;
      lost += kg * lossOfShare(lifeUsed[column * layers + i]);
    }
  }
  return lost / dry;
}
