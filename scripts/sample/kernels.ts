/** What the invented grain is made of. Isotherms are on purpose NOT the ones that the kit takes when nothing is stated. */
export interface Kernel {
  crop: string;
  isotherm: string;
  /** equilibrium relative humidity, from moisture (% dry basis) and C */
  erh(moistureDb: number, tempC: number): number;
  /** d erh / d moisture, 1 per % dry basis */
  erhSlope(moistureDb: number, tempC: number, erh: number): number;
  /** d ln(erh) / dT at constant moisture, 1/K: gives the heat of sorption */
  erhWarming(moistureDb: number, tempC: number, erh: number): number;
  /** % dry basis from relative humidity and C */
  emc(rh: number, tempC: number): number;
  /** kJ/(kg K) of wet grain at a moisture, % wet basis */
  heat(moistureWb: number): number;
  /** share of the wheat rate of O'Callaghan, Menzies & Bailey 1971 at which a kernel dries */
  rate: number;
  /** pounds of the legal bushel */
  bushelLb: number;
  /** constants of ASAE D272.3: Pa/m = a q^2 / ln(1 + b q) */
  resistance: { a: number; b: number; packing: number };
}

const bounded = (rh: number) => Math.min(0.985, Math.max(0.02, rh));

function chungPfost(a: number, b: number, c: number): Pick<Kernel, 'erh' | 'erhSlope' | 'erhWarming' | 'emc'> {
  return {
    erh: (m, t) => Math.exp((-a / (t + c)) * Math.exp(-b * m)),
    erhSlope: (_m, _t, erh) => -erh * Math.log(erh) * b,
    erhWarming: (_m, t, erh) => -Math.log(erh) / (t + c),
    emc: (rh, t) => -Math.log((-(t + c) * Math.log(bounded(rh))) / a) / b,
  };
}

function henderson(a: number, b: number, c: number): Pick<Kernel, 'erh' | 'erhSlope' | 'erhWarming' | 'emc'> {
  return {
    erh: (m, t) => 1 - Math.exp(-a * (t + c) * m ** b),
    erhSlope: (m, t, erh) => (1 - erh) * a * (t + c) * b * m ** (b - 1),
    erhWarming: (m, _t, erh) => ((1 - erh) * a * m ** b) / erh,
    emc: (rh, t) => (-Math.log(1 - bounded(rh)) / (a * (t + c))) ** (1 / b),
  };
}

/** Constants: isotherms ASAE D245 (from memory, as the reference notes print them), heat ASABE D243 (memory), resistance ASAE D272.3 (memory). */
export const KERNELS: Readonly<Record<string, Kernel>> = {
  corn: {
    crop: 'corn',
    isotherm: 'modified Chung-Pfost D245.5',
    ...chungPfost(374.34, 0.18662, 31.696),
    heat: (m) => 1.465 + 0.0356 * m,
    rate: 0.55,
    bushelLb: 56,
    resistance: { a: 20700, b: 30.4, packing: 1.45 },
  },
  soybean: {
    crop: 'soybean',
    isotherm: 'modified Chung-Pfost D245.4',
    ...chungPfost(328.3, 0.13917, 100.288),
    heat: (m) => 1.637 + 0.0193 * m,
    rate: 0.5,
    bushelLb: 60,
    resistance: { a: 10200, b: 16, packing: 1.35 },
  },
  wheat: {
    crop: 'wheat',
    isotherm: 'modified Henderson D245.4',
    ...henderson(2.3007e-5, 2.2857, 55.815),
    heat: (m) => 1.398 + 0.0409 * m,
    rate: 1,
    bushelLb: 60,
    resistance: { a: 27000, b: 8.77, packing: 1.25 },
  },
};

/** Rate constant of thin-layer drying, 1/s: k = 2000 exp(-5094 / T) for wheat, scaled by crop. */
export const rateConstant = (kernel: Kernel, tempC: number): number =>
  kernel.rate * 2000 * Math.exp(-5094 / (tempC + 273.15));

export const toWetBasis = (db: number): number => (100 * db) / (100 + db);
export const toDryBasis = (wb: number): number => (100 * wb) / (100 - wb);
