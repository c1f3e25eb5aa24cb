/** The equations of ASAE D245 for equilibrium moisture. */
export const ISOTHERM_EQUATIONS = [
  'modified Henderson',
  'modified Chung-Pfost',
  'modified Halsey',
  'modified Oswin',
] as const;
export type IsothermEquation = (typeof ISOTHERM_EQUATIONS)[number];

/**
 * Equilibrium relative humidity of the air between the kernels: the kernel, no checks, no allocation.
 *
 * modified Henderson    RH = 1 - exp(-A (T + C) M^B)
 * modified Chung-Pfost  RH = exp(-A / (T + C) * exp(-B M))
 * modified Halsey       RH = exp(-exp(A + B T) M^-C)
 * modified Oswin        RH = 1 / (((A + B T) / M)^C + 1)
 *
 * @param equation    which of them
 * @param a           constant A of the equation
 * @param b           constant B
 * @param c           constant C
 * @param tempC       grain temperature T, degC
 * @param moistureDb  moisture, fraction of dry matter; the equations take it as percent (M)
 * @returns           fraction
 * @source            asae-d245-5, equations (the forms from memory, confirmed by tests/reference/emc.csv)
 * @valid             T + C > 0 (Henderson, Chung-Pfost), A + B T > 0 (Oswin), moistureDb > 0; NaN or nonsense outside
 */
export function isothermHumidity(
  equation: IsothermEquation,
  a: number,
  b: number,
  c: number,
  tempC: number,
  moistureDb: number,
): number {
  const m = moistureDb * 100;
  switch (equation) {
    case 'modified Henderson':
      return -Math.expm1(-a * (tempC + c) * m ** b);
    case 'modified Chung-Pfost':
      return Math.exp((-a / (tempC + c)) * Math.exp(-b * m));
    case 'modified Halsey':
      return Math.exp(-Math.exp(a + b * tempC) * m ** -c);
    case 'modified Oswin':
      return 1 / (((a + b * tempC) / m) ** c + 1);
  }
}

/**
 * Equilibrium moisture: `isothermHumidity` solved for the moisture. The kernel, no checks, no allocation.
 *
 * @param rh  relative humidity, fraction, 0 < rh < 1
 * @returns   fraction of dry matter; Chung-Pfost falls below zero in hot and very dry air
 * @source    asae-d245-5, equations solved for M
 */
export function isothermMoistureDb(
  equation: IsothermEquation,
  a: number,
  b: number,
  c: number,
  tempC: number,
  rh: number,
): number {
  switch (equation) {
    case 'modified Henderson':
      return (-Math.log1p(-rh) / (a * (tempC + c))) ** (1 / b) / 100;
    case 'modified Chung-Pfost':
      return -Math.log((-(tempC + c) * Math.log(rh)) / a) / b / 100;
    case 'modified Halsey':
      return (Math.exp(a + b * tempC) / -Math.log(rh)) ** (1 / c) / 100;
    case 'modified Oswin':
      return ((a + b * tempC) * (rh / (1 - rh)) ** (1 / c)) / 100;
  }
}

/**
 * How fast the logarithm of the equilibrium humidity rises with temperature at one moisture: the derivative of
 * `isothermHumidity`. The kernel, no checks, no allocation.
 *
 * @returns  1/K
 */
export function isothermLogHumiditySlope(
  equation: IsothermEquation,
  a: number,
  b: number,
  c: number,
  tempC: number,
  moistureDb: number,
): number {
  const m = moistureDb * 100;
  switch (equation) {
    case 'modified Henderson': {
      const perK = a * m ** b;
      return perK / Math.expm1(perK * (tempC + c));
    }
    case 'modified Chung-Pfost':
      return (a / (tempC + c) ** 2) * Math.exp(-b * m);
    case 'modified Halsey':
      return -b * Math.exp(a + b * tempC) * m ** -c;
    case 'modified Oswin': {
      const ratio = ((a + b * tempC) / m) ** c;
      return ((-c * b) / (a + b * tempC)) * (ratio / (ratio + 1));
    }
  }
}

/**
 * How fast the equilibrium humidity rises with moisture at one temperature: the derivative of `isothermHumidity`. The
 * kernel, no checks, no allocation.
 *
 * @returns  fraction of humidity for a fraction of dry matter
 */
export function isothermHumidityPerMoisture(
  equation: IsothermEquation,
  a: number,
  b: number,
  c: number,
  tempC: number,
  moistureDb: number,
): number {
  const m = moistureDb * 100;
  switch (equation) {
    case 'modified Henderson': {
      const k = a * (tempC + c);
      return 100 * k * b * m ** (b - 1) * Math.exp(-k * m ** b);
    }
    case 'modified Chung-Pfost': {
      const k = (a / (tempC + c)) * Math.exp(-b * m);
      return 100 * k * b * Math.exp(-k);
    }
    case 'modified Halsey': {
      const k = Math.exp(a + b * tempC) * m ** -c;
      return (100 * k * c * Math.exp(-k)) / m;
    }
    case 'modified Oswin': {
      const k = ((a + b * tempC) / m) ** c;
      return (100 * c * k) / (m * (k + 1) ** 2);
    }
  }
}
