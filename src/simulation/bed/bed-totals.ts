import { ACCOUNT, type Bed } from './bed.ts';
import { grainHeatJKg } from './grain-heat.ts';

/** Dry matter, water and heat that a bed holds now, per m2 of floor: kg, kg, J. */
export function bedHolds(bed: Bed): { dryKgM2: number; waterKgM2: number; heatJM2: number } {
  let dryKgM2 = 0;
  let waterKgM2 = 0;
  let heatJM2 = 0;
  for (let column = 0; column < bed.columns; column++) {
    for (let i = 0; i < bed.filled; i++) {
      const at = column * bed.layers + i;
      const dry = bed.areaShares[column] * bed.dryKgM2[i];
      dryKgM2 += dry;
      waterKgM2 += dry * bed.moistureDb[at];
      heatJM2 += dry * grainHeatJKg(bed.medium, bed.tempC[at], bed.moistureDb[at]);
    }
  }
  return { dryKgM2, waterKgM2, heatJM2 };
}

/** How far a bed's books are from closing, as fractions of what went through them: water and heat. 0 but for rounding. */
export function bedImbalance(bed: Bed): { water: number; heat: number } {
  const { account } = bed;
  const { waterKgM2, heatJM2 } = bedHolds(bed);
  const water = [account[ACCOUNT.waterByAir], account[ACCOUNT.waterByGrain], account[ACCOUNT.waterBySpoiling]];
  const heat = [
    account[ACCOUNT.heatByAir],
    account[ACCOUNT.heatByGrain],
    account[ACCOUNT.heatByConduction],
    account[ACCOUNT.heatBySpoiling],
  ];
  return { water: open(water, waterKgM2), heat: open(heat, heatJM2) };
}

function open(came: readonly number[], held: number): number {
  const scale = came.reduce((sum, one) => sum + Math.abs(one), Math.abs(held));
  return scale === 0 ? 0 : (came.reduce((sum, one) => sum + one, 0) - held) / scale;
}
