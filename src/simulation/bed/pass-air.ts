import { HEAT_DRY_AIR_J_KGK, HEAT_VAPOUR_J_KGK, VAPORISATION_0C_J_KG } from '../../air/enthalpy.ts';
import { ACCOUNT, type Bed } from './bed.ts';
import { SATURATION } from './saturation-table.ts';

const WATER_PER_DRY_AIR = 0.621945; // molar masses, ashrae-2017, ch. 1, eq. 20
/** A Newton step below this has converged: the next would be its square. */
const CLOSE_DB = 2e-6;
const MOST_STEPS = 40;

/**
 * Send air through a bed for a while. In each layer grain and leaving air end at one temperature T1 and the balances of water
 * and heat close whatever the moisture M1 that is found:
 *
 *   W1 = W0 + R (M0 - M1)
 *   h(T0, W0) + R g(G0, M0) = h(T1, W1) + R g(T1, M1)
 *
 * with R dry matter over dry air, h the enthalpy of air, g the heat of grain (`grainHeatJKg`, the heat that binds water in it).
 * M1 follows from the thin-layer rate taken at the step's end, M1 = M0 - k dt (M1 - Me): the leaving air is in balance
 * with M* = M1 + (M1 - M0) / (k dt). At low airflow or without a limit of rate M* tends to M1, the near-equilibrium bed.
 * Humidity in balance stays below 1, so that what would condense stays on the grain.
 *
 * @param dryAirKgM2  dry air of this while, kg per m2 of floor, mean of the columns, > 0
 * @param seconds     how long it takes, > 0
 * @param inTempC     entering air, degC, -40 to 60
 * @param inRatio     entering air, kg water per kg dry air
 * @source            thompson-1972 (balances of a layer), bloome-shove-1971 (partial approach); both from memory
 * @valid             the kernel: no checks, no allocation
 */
export function passAir(bed: Bed, dryAirKgM2: number, seconds: number, inTempC: number, inRatio: number): void {
  const { medium, columns, layers, filled, tempC, moistureDb, dryKgM2, airShares, areaShares, down } = bed;
  const { pressurePa, leaving, account } = bed;
  const { heatDryJKgK, heatPerMoistureJKgK, nearEquilibrium } = medium;
  const inverse = medium.equation === 'modified Henderson' ? 0 : medium.equation === 'modified Oswin' ? 2 : 1;
  // Tables as locals: a field of a field costs a load in every layer.
  const { low: qLow, perUnit: qPer, values: qv, slopes: qs } = medium.byTemp;
  const { low: pLow, perUnit: pPer, values: pv, slopes: ps } = medium.byMoisture;
  const { low: bLow, perUnit: bPer, values: bv, slopes: bs } = medium.binding;
  const { low: kLow, perUnit: kPer, values: kv } = medium.rate;
  const { low: sLow, perUnit: sPer, values: sv, slopes: ss } = SATURATION;
  const qLast = qv.length - 1;
  const pLast = pv.length - 1;
  const bLast = bv.length - 1;
  const kLast = kv.length - 1;
  const sLast = sv.length - 1;
  let sumC = 0;
  let sumRatio = 0;

  for (let column = 0; column < columns; column++) {
    const air = dryAirKgM2 * airShares[column];
    let t0 = inTempC;
    let w0 = inRatio;
    if (air > 0) {
      for (let step = 0; step < filled; step++) {
        const layer = down ? filled - 1 - step : step;
        const at = column * layers + layer;
        const r = dryKgM2[layer] / air;
        const g0 = tempC[at];
        const m0 = moistureDb[at];

        // Heat that binds water at m0, and the rate at g0 (straight between the points: it is smooth, and only a rate).
        let x = (m0 - bLow) * bPer;
        let i = x <= 0 ? 0 : x >= bLast ? bLast - 1 : x | 0;
        let u = x <= 0 ? 0 : x >= bLast ? 1 : x - i;
        let rise = bv[i + 1] - bv[i];
        let ca = bs[i] - rise;
        let cb = rise - bs[i + 1];
        const bound0 = bv[i] + u * (rise + (1 - u) * (ca * (1 - u) + cb * u));
        let slower = 0;
        if (!nearEquilibrium) {
          x = (g0 - kLow) * kPer;
          i = x <= 0 ? 0 : x >= kLast ? kLast - 1 : x | 0;
          slower = 1 / ((kv[i] + (x - i) * (kv[i + 1] - kv[i])) * seconds);
        }

        const airHeat0 = HEAT_DRY_AIR_J_KGK + HEAT_VAPOUR_J_KGK * w0;
        const heat0 = airHeat0 * t0 + r * (heatDryJKgK + heatPerMoistureJKgK * m0) * g0;
        // The answer lies where neither the air nor the grain runs out of water.
        let low = 0;
        let high = m0 + w0 / r;
        let m1 = m0;
        let w1 = w0;
        let t1 = g0;
        for (let n = 0; n < MOST_STEPS; n++) {
          x = (m1 - bLow) * bPer;
          i = x <= 0 ? 0 : x >= bLast ? bLast - 1 : x | 0;
          u = x <= 0 ? 0 : x >= bLast ? 1 : x - i;
          rise = bv[i + 1] - bv[i];
          ca = bs[i] - rise;
          cb = rise - bs[i + 1];
          const bound = bv[i] + u * (rise + (1 - u) * (ca * (1 - u) + cb * u));
          const perMoisture = (rise + (1 - 2 * u) * (ca * (1 - u) + cb * u) + u * (1 - u) * (cb - ca)) * bPer;

          w1 = w0 + r * (m0 - m1);
          const airHeat = HEAT_DRY_AIR_J_KGK + HEAT_VAPOUR_J_KGK * w1;
          const held = airHeat + r * (heatDryJKgK + heatPerMoistureJKgK * m1);
          t1 = (heat0 - r * ((m0 - m1) * VAPORISATION_0C_J_KG + bound0 - bound)) / held;
          const tPer =
            (r * (VAPORISATION_0C_J_KG + perMoisture - t1 * (heatPerMoistureJKgK - HEAT_VAPOUR_J_KGK))) / held;

          // Humidity of the air at its temperature.
          x = (t1 - sLow) * sPer;
          i = x <= 0 ? 0 : x >= sLast ? sLast - 1 : x | 0;
          u = x <= 0 ? 0 : x >= sLast ? 1 : x - i;
          rise = sv[i + 1] - sv[i];
          ca = ss[i] - rise;
          cb = rise - ss[i + 1];
          const saturation = sv[i] + u * (rise + (1 - u) * (ca * (1 - u) + cb * u));
          const saturationPer = (rise + (1 - 2 * u) * (ca * (1 - u) + cb * u) + u * (1 - u) * (cb - ca)) * sPer;
          const wet = WATER_PER_DRY_AIR + w1;
          const rh = (pressurePa * w1) / (wet * saturation);
          const rhPer =
            (-r * pressurePa * WATER_PER_DRY_AIR) / (wet * wet * saturation) - (rh * saturationPer * tPer) / saturation;

          // Humidity in balance with the grain's surface.
          x = (t1 - qLow) * qPer;
          i = x <= 0 ? 0 : x >= qLast ? qLast - 1 : x | 0;
          u = x <= 0 ? 0 : x >= qLast ? 1 : x - i;
          rise = qv[i + 1] - qv[i];
          ca = qs[i] - rise;
          cb = rise - qs[i + 1];
          const q = qv[i] + u * (rise + (1 - u) * (ca * (1 - u) + cb * u));
          const qSlope = (rise + (1 - 2 * u) * (ca * (1 - u) + cb * u) + u * (1 - u) * (cb - ca)) * qPer;
          x = (m1 + (m1 - m0) * slower - pLow) * pPer;
          i = x <= 0 ? 0 : x >= pLast ? pLast - 1 : x | 0;
          u = x <= 0 ? 0 : x >= pLast ? 1 : x - i;
          rise = pv[i + 1] - pv[i];
          ca = ps[i] - rise;
          cb = rise - ps[i + 1];
          const p = pv[i] + u * (rise + (1 - u) * (ca * (1 - u) + cb * u));
          const pSlope =
            x <= 0 || x >= pLast
              ? 0
              : (rise + (1 - 2 * u) * (ca * (1 - u) + cb * u) + u * (1 - u) * (cb - ca)) * pPer * (1 + slower);
          const z = q * p;
          const zPer = qSlope * tPer * p + q * pSlope;
          let balance: number;
          let balancePer: number;
          if (inverse === 2) {
            balance = 1 / (1 + z);
            balancePer = -balance * balance * zPer;
          } else {
            const e = Math.exp(-z);
            balance = inverse === 0 ? 1 - e : e;
            balancePer = inverse === 0 ? e * zPer : -e * zPer;
          }

          // Air damper than the balance gives water: the moisture is still too low.
          const gap = rh - balance;
          if (gap > 0) low = m1;
          else high = m1;
          let next = m1 - gap / (rhPer - balancePer);
          if (!(next > low && next < high)) next = 0.5 * (low + high);
          const move = next - m1;
          m1 = next;
          if (move < CLOSE_DB && move > -CLOSE_DB) break;
        }

        // The balances at the moisture found: they close to rounding however near the last step came.
        x = (m1 - bLow) * bPer;
        i = x <= 0 ? 0 : x >= bLast ? bLast - 1 : x | 0;
        u = x <= 0 ? 0 : x >= bLast ? 1 : x - i;
        rise = bv[i + 1] - bv[i];
        ca = bs[i] - rise;
        cb = rise - bs[i + 1];
        const bound1 = bv[i] + u * (rise + (1 - u) * (ca * (1 - u) + cb * u));
        w1 = w0 + r * (m0 - m1);
        t1 =
          (heat0 - r * ((m0 - m1) * VAPORISATION_0C_J_KG + bound0 - bound1)) /
          (HEAT_DRY_AIR_J_KGK + HEAT_VAPOUR_J_KGK * w1 + r * (heatDryJKgK + heatPerMoistureJKgK * m1));
        tempC[at] = t1;
        moistureDb[at] = m1;
        t0 = t1;
        w0 = w1;
      }
    }
    const share = areaShares[column];
    const enters = HEAT_DRY_AIR_J_KGK * inTempC + inRatio * (VAPORISATION_0C_J_KG + HEAT_VAPOUR_J_KGK * inTempC);
    const leaves = HEAT_DRY_AIR_J_KGK * t0 + w0 * (VAPORISATION_0C_J_KG + HEAT_VAPOUR_J_KGK * t0);
    account[ACCOUNT.waterByAir] += share * air * (inRatio - w0);
    account[ACCOUNT.heatByAir] += share * air * (enters - leaves);
    sumC += share * airShares[column] * t0;
    sumRatio += share * airShares[column] * w0;
  }
  leaving[0] = sumC;
  leaving[1] = sumRatio;
}
