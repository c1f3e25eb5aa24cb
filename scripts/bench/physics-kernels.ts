import { humidityRatio } from '../../src/air/humidity-ratio.ts';
import { saturationPressurePa } from '../../src/air/saturation.ts';
import { wetBulbC } from '../../src/air/wet-bulb.ts';
import { resistancePaM } from '../../src/bin/airflow-resistance.ts';
import { bedWaveRatio } from '../../src/bin/bed-waves.ts';
import { resistanceCurveOf } from '../../src/bin/resistance-curves.ts';
import { cornReferenceHoursPerHour } from '../../src/grain/corn-loss.ts';
import { isothermOf } from '../../src/grain/isotherm.ts';
import { isothermHumidity, isothermMoistureDb } from '../../src/grain/isotherm-equations.ts';

/** A kernel in a loop of its own, so that no shared call site blurs its time; an isotherm's four equations share one, as in use. */
export interface KernelLoop {
  name: string;
  loop: (calls: number) => number;
}

// Inputs differ from call to call, or the compiler would work a call out once. 1024 of each, spread evenly and out of step.
const MASK = 1023;
const spread = (low: number, high: number, stride: number): Float64Array =>
  Float64Array.from({ length: MASK + 1 }, (_, i) => low + ((high - low) * ((i * stride) & MASK)) / MASK);
const tempC = spread(-20, 40, 7);
const rh = spread(0.2, 0.95, 13);
const moistureWb = spread(0.12, 0.26, 29);
const moistureDb = moistureWb.map((m) => m / (1 - m));
const velocityMS = spread(0.001, 0.3, 11);
const ratio = tempC.map((t, i) => humidityRatio(t, rh[i], 101325));

/** What every ratio is to: one bare `Math.exp`. */
export const BARE: KernelLoop = {
  name: 'Math.exp',
  loop: (calls) => {
    let sum = 0;
    for (let i = 0; i < calls; i++) sum += Math.exp(rh[i & MASK]);
    return sum;
  },
};

const ISOTHERMS = [
  isothermOf('corn', 'modified Henderson D245.5'),
  isothermOf('corn', 'modified Chung-Pfost D245.5'),
  isothermOf('soybean', 'modified Halsey D245.5'),
  isothermOf('corn', 'modified Oswin D245.5'),
];

export const PHYSICS_KERNELS: readonly KernelLoop[] = [
  ...ISOTHERMS.map(({ equation, a, b, c }) => ({
    name: `isothermHumidity, ${equation}`,
    loop: (calls: number) => {
      let sum = 0;
      for (let i = 0; i < calls; i++) sum += isothermHumidity(equation, a, b, c, tempC[i & MASK], moistureDb[i & MASK]);
      return sum;
    },
  })),
  ...ISOTHERMS.map(({ equation, a, b, c }) => ({
    name: `isothermMoistureDb, ${equation}`,
    loop: (calls: number) => {
      let sum = 0;
      for (let i = 0; i < calls; i++) sum += isothermMoistureDb(equation, a, b, c, tempC[i & MASK], rh[i & MASK]);
      return sum;
    },
  })),
  {
    name: 'saturationPressurePa',
    loop: (calls) => {
      let sum = 0;
      for (let i = 0; i < calls; i++) sum += saturationPressurePa(tempC[i & MASK]);
      return sum;
    },
  },
  {
    name: 'humidityRatio',
    loop: (calls) => {
      let sum = 0;
      for (let i = 0; i < calls; i++) sum += humidityRatio(tempC[i & MASK], rh[i & MASK], 101325);
      return sum;
    },
  },
  {
    name: 'wetBulbC',
    loop: (calls) => {
      let sum = 0;
      for (let i = 0; i < calls; i++) sum += wetBulbC(tempC[i & MASK], ratio[i & MASK], 101325);
      return sum;
    },
  },
  {
    name: 'resistancePaM',
    loop: (calls) => {
      const { a, b } = resistanceCurveOf('corn');
      let sum = 0;
      for (let i = 0; i < calls; i++) sum += resistancePaM(a, b, velocityMS[i & MASK]);
      return sum;
    },
  },
  ...(['fast', 'slow'] as const).map((wave) => ({
    name: `bedWaveRatio, ${wave}`,
    loop: (calls: number) => {
      let sum = 0;
      for (let i = 0; i < calls; i++) {
        sum += bedWaveRatio(wave, ISOTHERMS[0], tempC[i & MASK], moistureDb[i & MASK], 2000, 101325);
      }
      return sum;
    },
  })),
  ...(['low-temperature', 'carried-down'] as const).map((form) => ({
    name: `cornReferenceHoursPerHour, ${form}`,
    loop: (calls: number) => {
      let sum = 0;
      for (let i = 0; i < calls; i++) sum += cornReferenceHoursPerHour(tempC[i & MASK], moistureWb[i & MASK], form);
      return sum;
    },
  })),
];
