import { HEAT_DRY_AIR_J_KGK, HEAT_VAPOUR_J_KGK, VAPORISATION_0C_J_KG } from '../../air/enthalpy.ts';
import { ACCOUNT, type Bed } from './bed.ts';
import { placeIn, slopeAt, valueAt } from './cubic-table.ts';
import { SATURATION } from './saturation-table.ts';

const WATER_PER_DRY_AIR = 0.621945; // molar masses, ashrae-2017, ch. 1, eq. 20
/**
 * A Newton step below these has converged, for the next would be its square: in the grain's moisture, in that of its surface
 * (which a slow rate moves far more) and in the humidity ratio of the air.
 */
const CLOSE_DB = 1e-5;
const CLOSE_SURFACE_DB = 5e-4;
const CLOSE_RATIO = 5e-5;
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
  const { heatDryJKgK, heatPerMoistureJKgK, nearEquilibrium, byTemp, byMoisture, humidity, binding, rate } = medium;
  const { cubics: ofTemp } = byTemp;
  const { cubics: ofMoisture } = byMoisture;
  const { cubics: ofProduct } = humidity;
  const { cubics: bounds } = binding;
  const { cubics: rates } = rate;
  const { cubics: saturations } = SATURATION;
  let sumC = 0;
  let sumRatio = 0;

  for (let column = 0; column < columns; column++) {
    const air = dryAirKgM2 * airShares[column];
    // A plus tells V8 that they are numbers; it would box them in every layer else.
    let t0 = +inTempC;
    let w0 = +inRatio;
    if (air > 0) {
      for (let step = 0; step < filled; step++) {
        const layer = down ? filled - 1 - step : step;
        const at = column * layers + layer;
        const r = dryKgM2[layer] / air;
        const g0 = tempC[at];
        const m0 = moistureDb[at];
        const k = placeIn(rate, g0);
        const ki = k | 0;
        const slower = nearEquilibrium ? 0 : 1 / (valueAt(rates, ki, k - ki) * seconds);
        const heat0 =
          (HEAT_DRY_AIR_J_KGK + HEAT_VAPOUR_J_KGK * w0) * t0 + r * (heatDryJKgK + heatPerMoistureJKgK * m0) * g0;
        // The answer lies where neither the air nor the grain runs out of water.
        let low = 0;
        let high = m0 + w0 / r;
        const close = Math.min(CLOSE_DB, CLOSE_SURFACE_DB / (1 + slower), CLOSE_RATIO / r);
        let m1 = m0;
        let bound0 = 0;
        let w1 = w0;
        let t1 = g0;
        for (let n = 0, move = Number.NaN; ; n++) {
          const b = placeIn(binding, m1);
          const bi = b | 0;
          const bu = b - bi;
          const bound = valueAt(bounds, bi, bu);
          if (n === 0) bound0 = bound;
          // The balances at this moisture: they close to rounding, however near the last step came.
          w1 = w0 + r * (m0 - m1);
          const held = HEAT_DRY_AIR_J_KGK + HEAT_VAPOUR_J_KGK * w1 + r * (heatDryJKgK + heatPerMoistureJKgK * m1);
          t1 = (heat0 - r * ((m0 - m1) * VAPORISATION_0C_J_KG + bound0 - bound)) / held;
          if ((move < close && move > -close) || n === MOST_STEPS) break;
          // Slopes, `Per` a moisture; those of tables are for each interval.
          const bound1Per = slopeAt(bounds, bi, bu) * binding.perUnit;
          const t1Per =
            (r * (VAPORISATION_0C_J_KG + bound1Per - t1 * (heatPerMoistureJKgK - HEAT_VAPOUR_J_KGK))) / held;
          const tPer = t1Per * byTemp.perUnit;

          // Humidity in balance with the grain's surface.
          const t = placeIn(byTemp, t1);
          const ti = t | 0;
          const tu = t - ti;
          const m = placeIn(byMoisture, m1 + (m1 - m0) * slower);
          const mi = m | 0;
          const mu = m - mi;
          const q = valueAt(ofTemp, ti, tu);
          const p = valueAt(ofMoisture, mi, mu);
          const z = placeIn(humidity, q * p);
          const zi = z | 0;
          const zu = z - zi;
          // Beyond the driest and the wettest of the table nothing moves.
          const pPer =
            m > 0 && m < byMoisture.end ? slopeAt(ofMoisture, mi, mu) * (1 + slower) * byMoisture.perUnit : 0;
          const zPer = (slopeAt(ofTemp, ti, tu) * tPer * p + q * pPer) * humidity.perUnit;
          const rh = valueAt(ofProduct, zi, zu);
          const rhPer = slopeAt(ofProduct, zi, zu) * zPer;

          // The air's vapour over that of such air: where it has more, the moisture is still too low.
          const saturation = valueAt(saturations, ti, tu);
          const saturationPer = slopeAt(saturations, ti, tu) * tPer;
          const wet = WATER_PER_DRY_AIR + w1;
          const gap = pressurePa * w1 - wet * saturation * rh;
          const gapPer = r * (saturation * rh - pressurePa) - wet * (saturationPer * rh + saturation * rhPer);
          if (gap > 0) low = m1;
          else high = m1;
          let next = m1 - gap / gapPer;
          if (!(next > low && next < high)) next = 0.5 * (low + high);
          move = next - m1;
          m1 = next;
        }
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
