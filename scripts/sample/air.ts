/** The generator's own moist air, apart from the kit's: Buck (1981) over water at every temperature. kg, J->kJ, C, Pa. */
export function saturationPa(tempC: number): number {
  return 611.21 * Math.exp((18.678 - tempC / 234.5) * (tempC / (257.14 + tempC)));
}

/** d ln(saturation pressure) / dT, 1/K */
export function saturationSlope(tempC: number): number {
  const below = 257.14 + tempC;
  return -tempC / 234.5 / below + ((18.678 - tempC / 234.5) * 257.14) / (below * below);
}

/** Buck's equation solved for temperature by Newton's rule. */
export function dewPointC(vapourPa: number): number {
  let t = 5;
  for (let i = 0; i < 30; i++) {
    const step = Math.log(saturationPa(t) / vapourPa) / saturationSlope(t);
    t -= step;
    if (Math.abs(step) < 1e-9) break;
  }
  return t;
}

/** kg water per kg dry air */
export const humidityRatio = (vapourPa: number, pressurePa: number): number =>
  (0.62198 * vapourPa) / (pressurePa - vapourPa);

export const vapourPa = (ratio: number, pressurePa: number): number => (ratio * pressurePa) / (0.62198 + ratio);

/** m3 of moist air per kg dry air */
export const specificVolume = (tempC: number, ratio: number, pressurePa: number): number =>
  (287.05 * (tempC + 273.15) * (1 + 1.6078 * ratio)) / pressurePa;

/** Station pressure at a height, standard atmosphere, Pa */
export const standardPressure = (heightM: number): number => 101325 * (1 - 2.25577e-5 * heightM) ** 5.2559;
