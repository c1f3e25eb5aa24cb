// Samples of the equations of a bed, see formula-samples.ts: what a bed of one filled layer does in a step.

import { enthalpyJKg } from '../../../src/air/enthalpy.ts';
import { humidityRatio, relativeHumidityOfRatio } from '../../../src/air/humidity-ratio.ts';
import { GAS_WATER_J_KGK } from '../../../src/grain/heat-of-vaporisation.ts';
import { isothermOf } from '../../../src/grain/isotherm.ts';
import { isothermLogHumiditySlope, isothermMoistureDb } from '../../../src/grain/isotherm-equations.ts';
import { ACCOUNT, type Bed, newBed, wallConductanceWM3K } from '../../../src/simulation/bed/bed.ts';
import { conduct } from '../../../src/simulation/bed/conduct.ts';
import { grainHeatJKg } from '../../../src/simulation/bed/grain-heat.ts';
import { mediumOf } from '../../../src/simulation/bed/medium-of.ts';
import { passAir } from '../../../src/simulation/bed/pass-air.ts';
import { setLevel } from '../../../src/simulation/bed/set-level.ts';
import { spoil } from '../../../src/simulation/bed/spoil.ts';
import { misraBrookerPage, thinLayerOf } from '../../../src/simulation/bed/thin-layer.ts';
import type { Sample, Samples } from './sample.ts';

const P = 98_000;
const DEPTH_M = 0.5;
const medium = mediumOf('corn', 600);

/** A bed of two layers of which the lower is filled. */
function oneLayer(tempC: number, moistureDb: number): Bed {
  const bed = newBed({ medium, depthM: 2 * DEPTH_M, layers: 2, pressurePa: P });
  setLevel(bed, DEPTH_M, tempC, moistureDb);
  return bed;
}

/** A step of air that hardly moves the moisture, so that the search for it has gone far beyond the samples' own digits. */
function passed() {
  const [tempC, moistureDb, airKgM2, seconds] = [12, 0.22, 60, 1800];
  const bed = oneLayer(tempC, moistureDb);
  const ratio = humidityRatio(13, 0.8, P);
  passAir(bed, airKgM2, seconds, 13, ratio);
  const [leavesC, leavesRatio] = bed.leaving;
  const { a, b, c, equation } = isothermOf('corn');
  return {
    R: bed.dryKgM2[0] / airKgM2,
    W_0: ratio,
    W_1: leavesRatio,
    M_0: moistureDb,
    M_1: bed.moistureDb[0],
    h_0: enthalpyJKg(13, ratio),
    h_1: enthalpyJKg(leavesC, leavesRatio),
    g_0: grainHeatJKg(medium, tempC, moistureDb),
    g_1: grainHeatJKg(medium, bed.tempC[0], bed.moistureDb[0]),
    k: thinLayerOf('corn').rate1S?.(tempC) ?? Number.NaN,
    dt: seconds,
    M_e: isothermMoistureDb(equation, a, b, c, leavesC, relativeHumidityOfRatio(leavesC, leavesRatio, P)),
  };
}

/** Heat that binds water from 1 % on, by Simpson over 20,000 intervals. */
function boundJKg(moistureDb: number): number {
  const { a, b, c, equation } = isothermOf('corn');
  const at = (m: number) => GAS_WATER_J_KGK * 283.15 ** 2 * isothermLogHumiditySlope(equation, a, b, c, 10, m);
  const parts = 20_000;
  const step = (moistureDb - 0.01) / parts;
  let sum = 0;
  for (let i = 0; i < parts; i++) {
    const m = 0.01 + i * step;
    sum += (step / 6) * (at(m) + 4 * at(m + step / 2) + at(m + step));
  }
  return sum;
}

function conducted(): Sample {
  const bed = newBed({ medium, depthM: 2 * DEPTH_M, layers: 2, pressurePa: P });
  setLevel(bed, DEPTH_M, 5, 0.18);
  setLevel(bed, 2 * DEPTH_M, 20, 0.18);
  const held = grainHeatJKg(medium, bed.tempC[0], 0.18);
  conduct(bed, 3600, { plenumC: Number.NaN, headspaceC: Number.NaN, wallC: Number.NaN });
  const gained = (grainHeatJKg(medium, bed.tempC[0], 0.18) - held) * bed.dryKgM2[0];
  const lambda = medium.conductivityWMK;
  return {
    q: gained / 3600,
    lambda,
    T_1: bed.tempC[0],
    T_2: bed.tempC[1],
    dz: DEPTH_M,
    U: wallConductanceWM3K(lambda, 4.5),
    r: 4.5,
  };
}

function mixed(): Sample {
  const bed = oneLayer(10, 0.16);
  setLevel(bed, 0.2, Number.NaN, Number.NaN);
  setLevel(bed, DEPTH_M, 25, 0.24);
  return {
    m_1: 600 * 0.2,
    m_2: 600 * 0.3,
    M_1: 0.16,
    M_2: 0.24,
    M: bed.moistureDb[0],
    g_1: grainHeatJKg(medium, 10, 0.16),
    g_2: grainHeatJKg(medium, 25, 0.24),
    g: grainHeatJKg(medium, bed.tempC[0], bed.moistureDb[0]),
  };
}

function spoiled(): Sample {
  const bed = oneLayer(22, 0.25);
  bed.lifeUsed[0] = 0.3;
  const { storage } = medium;
  spoil(bed, 6);
  const lost = (storage?.lossOfShare?.(bed.lifeUsed[0]) ?? Number.NaN) - (storage?.lossOfShare?.(0.3) ?? Number.NaN);
  return {
    S_0: 0.3,
    S: bed.lifeUsed[0],
    dt: 6,
    t: 1 / (storage?.sharePerHour(22, 0.25) ?? Number.NaN),
    x: lost,
    Q: bed.account[ACCOUNT.heatBySpoiling] / bed.dryKgM2[0],
    w: bed.account[ACCOUNT.waterBySpoiling] / bed.dryKgM2[0],
  };
}

function cornRate(): Sample {
  const { k, n } = misraBrookerPage(12, 65, 25, 0.1);
  return { T: 12, v: 0.1, RH: 65, M_0: 25, k_p: k, n, k: thinLayerOf('corn').rate1S?.(12) ?? Number.NaN };
}

export const LAYER_SAMPLES: Samples = {
  'bed-balances': () => [passed()],
  'bed-rate': () => [passed()],
  'grain-heat': () =>
    [0.12, 0.25].map((M) => ({
      M,
      T: 15,
      c_d: medium.heatDryJKgK,
      c_w: medium.heatPerMoistureJKgK,
      B: boundJKg(M),
      g: grainHeatJKg(medium, 15, M),
    })),
  'thin-layer-corn': () => [cornRate()],
  'thin-layer-cereals': () => [
    {
      T: 18,
      k_w: thinLayerOf('wheat').rate1S?.(18) ?? Number.NaN,
      k_b: thinLayerOf('barley').rate1S?.(18) ?? Number.NaN,
    },
  ],
  'bed-conduction': () => [conducted()],
  'bed-level': () => [mixed()],
  'bed-spoiling': () => [spoiled()],
};
