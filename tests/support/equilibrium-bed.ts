import { enthalpyJKg } from '../../src/air/enthalpy.ts';
import { humidityRatioOfVapour } from '../../src/air/humidity-ratio.ts';
import { saturationPressurePa } from '../../src/air/saturation.ts';
import { heatOfVaporisationJKg } from '../../src/grain/heat-of-vaporisation.ts';
import type { Isotherm } from '../../src/grain/isotherm.ts';
import { isothermHumidity } from '../../src/grain/isotherm-equations.ts';

/** A bed in thin layers, each in balance with the air that leaves it: the other way to a front, by steps and not by waves. */
export interface LayeredBed {
  isotherm: Isotherm;
  heatJKgK: number;
  pressurePa: number;
  aheadC: number;
  moistureWb: number;
  inletC: number;
  inletRatio: number;
}

/** What came out: state of the top layer after each step, [steps]. */
export interface LayeredRun {
  /** dry air for each dry grain of the whole bed that has passed, kg/kg */
  airPerGrain: number[];
  topC: number[];
  topMoistureDb: number[];
}

/**
 * Send air up a stack of layers. Every step passes `airPerLayer` kg of dry air for each kg of dry matter of a layer. In each layer grain and air
 * leave at one temperature and in balance; found by halving on the temperature, water by the balance.
 */
export function runLayers(bed: LayeredBed, layers: number, airPerLayer: number, steps: number): LayeredRun {
  const { isotherm, heatJKgK, pressurePa } = bed;
  const { equation, a, b, c } = isotherm;
  const ratioAt = (t: number, db: number) =>
    humidityRatioOfVapour(isothermHumidity(equation, a, b, c, t, db) * saturationPressurePa(t), pressurePa);
  const temp = new Float64Array(layers).fill(bed.aheadC);
  const moisture = new Float64Array(layers).fill(bed.moistureWb / (1 - bed.moistureWb));
  const out: LayeredRun = { airPerGrain: [], topC: [], topMoistureDb: [] };
  for (let step = 1; step <= steps; step++) {
    let airC = bed.inletC;
    let ratio = bed.inletRatio;
    for (let i = 0; i < layers; i++) {
      const [t0, m0] = [temp[i], moisture[i]];
      const grainHeat = heatJKgK * (1 + m0);
      const vaporisation = heatOfVaporisationJKg(isotherm, t0, m0 / (1 + m0));
      const airHeat = enthalpyJKg(1, ratio) - enthalpyJKg(0, ratio);
      // Water for a temperature: the layer's moisture ends where its air does, by a few rounds of the balance.
      const leavingAt = (t: number) => {
        let w = ratioAt(t, m0);
        for (let k = 0; k < 3; k++) w = ratioAt(t, m0 - (w - ratio) * airPerLayer);
        return w;
      };
      let [low, high] = [Math.min(t0, airC) - 15, Math.max(t0, airC) + 15];
      for (let k = 0; k < 26; k++) {
        const t = (low + high) / 2;
        const left =
          airPerLayer * (airHeat * (airC - t) - vaporisation * (leavingAt(t) - ratio)) - grainHeat * (t - t0);
        if (left > 0) low = t;
        else high = t;
      }
      temp[i] = (low + high) / 2;
      const w = leavingAt(temp[i]);
      moisture[i] = m0 - (w - ratio) * airPerLayer;
      airC = temp[i];
      ratio = w;
    }
    out.airPerGrain.push((step * airPerLayer) / layers);
    out.topC.push(temp[layers - 1]);
    out.topMoistureDb.push(moisture[layers - 1]);
  }
  return out;
}
