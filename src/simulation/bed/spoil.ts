import { ACCOUNT, type Bed } from './bed.ts';
import { cubicAt } from './cubic-table.ts';
import { grainHeatJKg } from './grain-heat.ts';

/** Heat and water of respiration, for each kg of dry matter: C6H12O6 + 6 O2 gives 6 CO2 + 6 H2O and 2816 kJ/mol. textbook */
const RESPIRATION_J_KG = 15.6e6;
const RESPIRATION_WATER = 0.6;
/** Mould and grain die off about there, so that grain that heats itself goes no further, degC. memory */
const DEADLY_C = 60;

/**
 * Let the grain age for a while at its present state: its share of the allowable storage time, and the heat and water that
 * the lost dry matter gives, up to `DEADLY_C`. The dry matter itself is kept: of grain that keeps a part in a hundred is lost.
 *
 * @param hours  some hours: temperature and moisture are those of the moment
 * @valid        the kernel: no checks
 */
export function spoil(bed: Bed, hours: number): void {
  const { medium, columns, layers, filled, tempC, moistureDb, lifeUsed, dryKgM2, areaShares, account } = bed;
  const { storage, respirationFactor, heatDryJKgK, heatPerMoistureJKgK, binding } = medium;
  if (storage === null) return;
  const { lossOfShare } = storage;
  for (let column = 0; column < columns; column++) {
    for (let i = 0; i < filled; i++) {
      const at = column * layers + i;
      const used = lifeUsed[at];
      lifeUsed[at] = used + hours * storage.sharePerHour(tempC[at], moistureDb[at]);
      if (lossOfShare === null) continue;
      const room = (heatDryJKgK + heatPerMoistureJKgK * moistureDb[at]) * Math.max(0, DEADLY_C - tempC[at]);
      const lost = Math.min(
        respirationFactor * (lossOfShare(lifeUsed[at]) - lossOfShare(used)),
        room / RESPIRATION_J_KG,
      );
      const held = grainHeatJKg(medium, tempC[at], moistureDb[at]) + lost * RESPIRATION_J_KG;
      const moisture = moistureDb[at] + RESPIRATION_WATER * lost;
      moistureDb[at] = moisture;
      tempC[at] = (held + cubicAt(binding, moisture)) / (heatDryJKgK + heatPerMoistureJKgK * moisture);
      const dry = areaShares[column] * dryKgM2[i];
      account[ACCOUNT.waterBySpoiling] += dry * RESPIRATION_WATER * lost;
      account[ACCOUNT.heatBySpoiling] += dry * RESPIRATION_J_KG * lost;
    }
  }
}
