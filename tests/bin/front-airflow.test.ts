import { describe, expect, it } from 'vitest';
import { type Column, passAir } from '../../scripts/sample/column-bed.ts';
import { KERNELS } from '../../scripts/sample/kernels.ts';
import { humidityRatio } from '../../src/air/humidity-ratio.ts';
import { specificVolumeM3Kg } from '../../src/air/volume.ts';
import { frontPlateauC } from '../../src/bin/front-plateau.ts';
import { airVolumeBehindM3Kg, velocityOfFrontMS } from '../../src/bin/front-speed.ts';
import { frontRatioSpread } from '../../src/bin/front-spread.ts';
import { velocityOfCfmPerBushel } from '../../src/bin/specific-airflow.ts';
import { isothermOf } from '../../src/grain/isotherm.ts';

const PRESSURE_PA = 98500;
const DEPTH_M = 6;
const LAYERS = 60;
const STEPS = 700;

/** Seconds until the middle and the top of a bed have done half of the change from one temperature to the other. */
function arrivals(
  crop: string,
  moistureWb: number,
  aheadC: number,
  behindC: number,
  inletC: number,
  inletRatio: number,
  velocityMS: number,
  dryMatterKgM3: number,
): [number, number] {
  const kernel = KERNELS[crop];
  const column: Column = {
    id: 'bed',
    areaM2: 1,
    airShare: 1,
    tempC: new Float64Array(LAYERS).fill(aheadC),
    moistureDb: new Float64Array(LAYERS).fill((100 * moistureWb) / (1 - moistureWb)),
    passedRatio: new Float64Array(LAYERS).fill(Number.NaN),
    dryKgM2: new Float64Array(LAYERS).fill((dryMatterKgM3 * DEPTH_M) / LAYERS),
  };
  const airKgM2S = velocityMS / specificVolumeM3Kg(inletC, inletRatio, PRESSURE_PA);
  const stepS = (2.2 * dryMatterKgM3 * DEPTH_M) / airKgM2S / STEPS;
  const half = (aheadC + behindC) / 2;
  const found = [Number.NaN, Number.NaN];
  for (let step = 1; step <= STEPS; step++) {
    passAir(column, kernel, LAYERS, airKgM2S * stepS, stepS, inletC, inletRatio, PRESSURE_PA);
    [LAYERS / 2 - 1, LAYERS - 1].forEach((layer, i) => {
      const passed = (column.tempC[layer] - half) * (behindC - aheadC) >= 0;
      if (Number.isNaN(found[i]) && passed) found[i] = step * stepS;
    });
  }
  return [found[0], found[1]];
}

// The sample season's own bed: layers that dry at a rate and so leave their air short of balance, with isotherms other than
// the kit's defaults (Chung-Pfost for corn and soybeans, Henderson for wheat). What is left is what the choice of isotherm
// moves: 6 % at the most in 18 cases tried, and a layer's width of the arrival.
describe('airflow by the front that it drove through another model’s bed', () => {
  it.each([
    ['corn', 0.15, 21.1, 10, 0.7, 0.1],
    ['corn', 0.19, 20, 8, 0.6, 1],
    ['corn', 0.15, 2, 13, 0.6, 0.3],
    ['soybean', 0.12, 20, 5, 0.6, 0.3],
    ['wheat', 0.13, 32, 20, 0.5, 0.1],
  ] as const)(
    '%s of %d from %d to air of %d degC and %d humidity at %d cfm/bu, within 8 percent',
    (crop, moistureWb, aheadC, inletC, rh, cfmPerBu) => {
      const inletRatio = humidityRatio(inletC, rh, PRESSURE_PA);
      const behindC = frontPlateauC(isothermOf(crop), inletC, inletRatio, moistureWb, PRESSURE_PA);
      const velocity = velocityOfCfmPerBushel(cfmPerBu, DEPTH_M);
      const dryMatter = 620;
      const [middleS, topS] = arrivals(crop, moistureWb, aheadC, behindC, inletC, inletRatio, velocity, dryMatter);
      const speed = DEPTH_M / 2 / (topS - middleS);
      const front = { moistureWb, aheadC, behindC, pressurePa: PRESSURE_PA };
      const { value, heatsJKgK } = frontRatioSpread(crop, front);
      const volume = airVolumeBehindM3Kg({ ...front, isotherm: isothermOf(crop), heatJKgK: heatsJKgK[0] });
      const told = velocityOfFrontMS(value, speed, volume, dryMatter);
      expect(Math.abs(told / velocity - 1)).toBeLessThan(0.08);
    },
  );
});
