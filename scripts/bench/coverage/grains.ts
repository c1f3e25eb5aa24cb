import { KERNELS, type Kernel, toDryBasis } from '../../sample/kernels.ts';
import type { Random } from '../../sample/random.ts';
import { weighted } from './chance.ts';
import type { Resistance } from './draw-resistance.ts';

type Curve = Pick<Kernel, 'erh' | 'erhSlope' | 'erhWarming' | 'emc'>;

const bounded = (rh: number) => Math.min(0.985, Math.max(0.02, rh));

const chungPfost = (a: number, b: number, c: number): Curve => ({
  erh: (m, t) => Math.exp((-a / (t + c)) * Math.exp(-b * m)),
  erhSlope: (_m, _t, erh) => -erh * Math.log(erh) * b,
  erhWarming: (_m, t, erh) => -Math.log(erh) / (t + c),
  emc: (rh, t) => -Math.log((-(t + c) * Math.log(bounded(rh))) / a) / b,
});

const henderson = (a: number, b: number, c: number): Curve => ({
  erh: (m, t) => 1 - Math.exp(-a * (t + c) * m ** b),
  erhSlope: (m, t, erh) => (1 - erh) * a * (t + c) * b * m ** (b - 1),
  erhWarming: (m, _t, erh) => ((1 - erh) * a * m ** b) / erh,
  emc: (rh, t) => (-Math.log(1 - bounded(rh)) / (a * (t + c))) ** (1 / b),
});

const halsey = (a: number, b: number, c: number): Curve => ({
  erh: (m, t) => Math.exp(-Math.exp(a + b * t) * m ** -c),
  erhSlope: (m, t, erh) => erh * Math.exp(a + b * t) * c * m ** (-c - 1),
  erhWarming: (m, t) => -b * Math.exp(a + b * t) * m ** -c,
  emc: (rh, t) => (Math.exp(a + b * t) / -Math.log(bounded(rh))) ** (1 / c),
});

/** An isotherm as season.yaml names it, with the generator's own working of it. */
export interface NamedCurve {
  name: string;
  curve: Curve;
}

/**
 * Isotherms that a grain may follow and a cable may work by; the first is what the kit takes when nothing is stated.
 * Constants of ASAE D245.4 and D245.5 (from memory), typed here apart from the kit's.
 */
export const CURVES: Readonly<Record<string, readonly NamedCurve[]>> = {
  corn: [
    { name: 'modified Henderson D245.5', curve: henderson(6.6612e-5, 1.9677, 42.143) },
    { name: 'modified Chung-Pfost D245.5', curve: chungPfost(374.34, 0.18662, 31.696) },
    { name: 'modified Henderson D245.4', curve: henderson(8.6541e-5, 1.8634, 49.81) },
  ],
  soybean: [
    { name: 'modified Halsey D245.5', curve: halsey(2.87, -0.0054, 1.38) },
    { name: 'modified Chung-Pfost D245.4', curve: chungPfost(328.3, 0.13917, 100.288) },
    { name: 'modified Henderson D245.4', curve: henderson(0.000305327, 1.2164, 134.136) },
  ],
  wheat: [
    { name: 'modified Chung-Pfost D245.5', curve: chungPfost(610.34, 0.15526, 93.213) },
    { name: 'modified Henderson D245.4', curve: henderson(2.3007e-5, 2.2857, 55.815) },
    { name: 'modified Chung-Pfost D245.4', curve: chungPfost(529.43, 0.17609, 50.998) },
  ],
};

export type CropId = 'corn' | 'soybean' | 'wheat';

/** kJ/(kg K) of wet grain at a moisture, % wet basis. */
type Heat = Kernel['heat'];

/**
 * Soybeans have two published lines that part by 20 % at 13 % moisture: that of ASABE D243 (Alam and Shove 1973, from memory)
 * and one measured at 42 C (Deshpande and Bal 1999, read), both by the dry basis. The latter gives each kilogram of water more
 * than twice the heat of liquid water, so it is the rarer.
 */
const SOYBEAN_HEATS: readonly (readonly [heat: Heat, weight: number])[] = [
  [(wb) => 1.638 + 0.0193 * toDryBasis(wb), 3],
  [(wb) => 1.444 * (1 + 0.0406 * toDryBasis(wb)), 1],
];

export const drawHeat = (random: Random, crop: CropId): Heat =>
  crop === 'soybean' ? weighted(random, SOYBEAN_HEATS) : KERNELS[crop].heat;

/** The grain of one bin: the sample's kernel (drying rate, heat but for soybeans) with another isotherm and resistance. */
export const grainOf = (crop: CropId, curve: Curve, heat: Heat, resistance: Resistance): Kernel => ({
  ...KERNELS[crop],
  ...curve,
  heat,
  resistance,
});
