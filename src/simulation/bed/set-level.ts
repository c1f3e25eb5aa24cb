import { assertRange } from '../../base/errors.ts';
import { ACCOUNT, type Bed } from './bed.ts';
import { cubicAt } from './cubic-table.ts';
import { grainHeatJKg } from './grain-heat.ts';

/**
 * Fill a bed up to a depth with grain of one state, or draw it down: what leaves is taken from the surface, as a centre
 * sump takes it (common practice); what stays, stays where it lay. A layer that holds grain of both states mixes it.
 *
 * @param depthM      0 to the bed's own depth, a hair above is let pass
 * @param tempC       of what comes in, degC; not looked at where the level falls
 * @param moistureDb  of what comes in, fraction of dry matter
 * @valid             throws RangeError outside
 */
export function setLevel(bed: Bed, depthM: number, tempC: number, moistureDb: number): void {
  const { medium, layers, layerM, dryKgM2 } = bed;
  assertRange('depthM', depthM, 0, layers * layerM * (1 + 1e-9));
  let filled = 0;
  for (let i = 0; i < layers; i++) {
    const thick = Math.min(layerM, Math.max(0, depthM - i * layerM));
    const after = medium.dryDensityKgM3 * (thick < 1e-6 * layerM ? 0 : thick);
    const came = after - dryKgM2[i];
    if (came > 0) pour(bed, i, came, tempC, moistureDb);
    else if (came < 0) draw(bed, i, -came);
    dryKgM2[i] = after;
    if (after > 0) filled = i + 1;
  }
  bed.filled = filled;
}

function pour(bed: Bed, layer: number, cameKgM2: number, tempC: number, moistureDb: number): void {
  const { medium, layers, columns, areaShares, dryKgM2, account } = bed;
  const { heatDryJKgK, heatPerMoistureJKgK, binding } = medium;
  const there = dryKgM2[layer];
  const all = there + cameKgM2;
  const brought = grainHeatJKg(medium, tempC, moistureDb);
  for (let column = 0; column < columns; column++) {
    const at = column * layers + layer;
    const held = there > 0 ? there * grainHeatJKg(medium, bed.tempC[at], bed.moistureDb[at]) : 0;
    const moisture = (there * bed.moistureDb[at] + cameKgM2 * moistureDb) / all;
    const heat = (held + cameKgM2 * brought) / all;
    bed.moistureDb[at] = moisture;
    bed.tempC[at] = (heat + cubicAt(binding, moisture)) / (heatDryJKgK + heatPerMoistureJKgK * moisture);
    bed.lifeUsed[at] = (there * bed.lifeUsed[at]) / all;
    account[ACCOUNT.waterByGrain] += areaShares[column] * cameKgM2 * moistureDb;
    account[ACCOUNT.heatByGrain] += areaShares[column] * cameKgM2 * brought;
  }
}

function draw(bed: Bed, layer: number, leftKgM2: number): void {
  const { medium, layers, columns, areaShares, account } = bed;
  for (let column = 0; column < columns; column++) {
    const at = column * layers + layer;
    account[ACCOUNT.waterByGrain] -= areaShares[column] * leftKgM2 * bed.moistureDb[at];
    account[ACCOUNT.heatByGrain] -=
      areaShares[column] * leftKgM2 * grainHeatJKg(medium, bed.tempC[at], bed.moistureDb[at]);
  }
}
