// For each formula: states in which its functions are called, told by the symbols of its equations. The equations are
// then evaluated in them by an independent parser, so that what the page prints is what the code works out.

import { bulkPorosity, dryMatterKg, KERNEL_DENSITY_KG_M3, standardBulkDensityKgM3 } from '../../../src/grain/bulk.ts';
import { BULK_DENSITY_LINES, bulkDensityKgM3 } from '../../../src/grain/bulk-density.ts';
import { bulkConductivityWMK, CONDUCTIVITY_LINES } from '../../../src/grain/conductivity.ts';
import {
  cornDamageMultiplier,
  cornDryMatterLoss,
  cornMoistureMultiplier,
  cornReferenceHoursPerHour,
  cornTemperatureMultiplier,
} from '../../../src/grain/corn-loss.ts';
import { cornReferenceHours, cornStorageHours } from '../../../src/grain/corn-storage.ts';
import { cropOf } from '../../../src/grain/crops.ts';
import { equilibriumHumidity, equilibriumMoistureWb } from '../../../src/grain/equilibrium.ts';
import { canolaStorageHours, wheatStorageHours } from '../../../src/grain/germination-storage.ts';
import { heatOfVaporisationFreeJKg, heatOfVaporisationJKg } from '../../../src/grain/heat-of-vaporisation.ts';
import { isothermOf } from '../../../src/grain/isotherm.ts';
import { isothermLogHumiditySlope } from '../../../src/grain/isotherm-equations.ts';
import { moistureDbFromWb, moistureWbFromDb } from '../../../src/grain/moisture-basis.ts';
import { specificHeatJKgK, specificHeatLineOf } from '../../../src/grain/specific-heat.ts';
import type { Sample, Samples } from './sample.ts';

/** Both ways of an isotherm at a state inside its data. */
function isothermSamples(crop: string, name: string): Sample[] {
  const isotherm = isothermOf(crop, name);
  return [5, 30].flatMap((T) =>
    [0.4, 0.8].map((rh) => {
      const wb = equilibriumMoistureWb(isotherm, T, rh);
      const { a, b, c } = isotherm;
      return { A: a, B: b, C: c, T, RH: equilibriumHumidity(isotherm, T, wb), M: 100 * moistureDbFromWb(wb) };
    }),
  );
}

function cornState(tempF: number, wb: number) {
  const t = (tempF - 32) / 1.8;
  const form = tempF <= 60 ? ('low-temperature' as const) : ('carried-down' as const);
  return {
    theta: cornReferenceHours(0.005),
    k_M: cornMoistureMultiplier(wb),
    k_T: cornTemperatureMultiplier(t, wb, form),
    k_D: cornDamageMultiplier(0.2),
    H: cornStorageHours(t, wb, { form, damageFraction: 0.2 }),
    r: cornReferenceHoursPerHour(t, wb, form),
  };
}

export const GRAIN_SAMPLES: Samples = {
  'modified-henderson': () => isothermSamples('corn', 'modified Henderson D245.5'),
  'modified-chung-pfost': () => isothermSamples('wheat', 'modified Chung-Pfost D245.5'),
  'modified-halsey': () => isothermSamples('soybean', 'modified Halsey D245.5'),
  'modified-oswin': () => isothermSamples('durum', 'modified Oswin D245.5'),
  'moisture-basis': () => [
    { M_w: 0.16, M_d: moistureDbFromWb(0.16) },
    { M_w: moistureWbFromDb(0.2), M_d: 0.2 },
  ],
  'heat-of-vaporisation': () =>
    ['modified Henderson D245.5', 'modified Chung-Pfost D245.5', 'modified Oswin D245.5'].map((name) => {
      const isotherm = isothermOf('corn', name);
      const { equation, a, b, c } = isotherm;
      return {
        t: 15,
        h_f: heatOfVaporisationFreeJKg(15),
        h: heatOfVaporisationJKg(isotherm, 15, 0.15),
        s: isothermLogHumiditySlope(equation, a, b, c, 15, 0.15 / 0.85),
      };
    }),
  'bulk-density': () => [{ w: cropOf('corn').legalBushelKg, rho: standardBulkDensityKgM3('corn') }],
  'bulk-density-by-moisture': () => {
    const { baseKgM3, slopeKgM3Pct } = BULK_DENSITY_LINES[0];
    return [{ a: baseKgM3, b: slopeKgM3Pct, M: 15, rho: bulkDensityKgM3('rice', 0.15) }];
  },
  porosity: () => [{ rho: 700, rho_k: KERNEL_DENSITY_KG_M3.corn, e: bulkPorosity('corn', 700) }],
  'dry-matter': () => [{ V: 40, rho: 720, M_w: 0.15, D: dryMatterKg(40, 720, 0.15) }],
  'specific-heat': () => {
    const { baseJKgK, slopeJKgKPct } = specificHeatLineOf('corn');
    return [{ a: baseJKgK, b: slopeJKgKPct, M: 15, c: specificHeatJKgK(specificHeatLineOf('corn'), 0.15) }];
  },
  conductivity: () => [
    { a: CONDUCTIVITY_LINES.corn[0], b: CONDUCTIVITY_LINES.corn[1], M: 15, k: bulkConductivityWMK('corn', 0.15) },
  ],
  'corn-loss': () => [
    { theta: 200, L: cornDryMatterLoss(200) },
    { theta: cornReferenceHours(0.005), L: 0.005 },
  ],
  'corn-moisture': () => [{ m: (100 * 0.2) / 0.8, k_M: cornMoistureMultiplier(0.2) }],
  'corn-cold': () => [{ F: 40, k_T: cornTemperatureMultiplier((40 - 32) / 1.8, 0.2, 'low-temperature') }],
  'corn-carried-down': () => [
    { F: 40, w: 0, k_T: cornTemperatureMultiplier((40 - 32) / 1.8, 0.24, 'carried-down') },
    { F: 80, w: 0.05, k_T: cornTemperatureMultiplier((80 - 32) / 1.8, 0.24, 'carried-down') },
  ],
  'corn-damage': () => [{ d: 0.15, k_D: cornDamageMultiplier(0.15) }],
  'corn-storage': () => [cornState(40, 0.2), cornState(75, 0.22)],
  'wheat-storage': () => [{ m: 16, t: 12, H: wheatStorageHours(12, 0.16) }],
  'wheat-storage-damp': () => [{ m: 21, t: 12, H: wheatStorageHours(12, 0.21) }],
  'canola-storage': () => [{ m: 9, t: 12, H: canolaStorageHours(12, 0.09) }],
};
