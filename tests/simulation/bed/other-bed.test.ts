import { describe, expect, it } from 'vitest';
import { isothermOf } from '../../../src/grain/isotherm.ts';
import { mediumOf } from '../../../src/simulation/bed/medium-of.ts';
import { passAir } from '../../../src/simulation/bed/pass-air.ts';
import { runLayers } from '../../support/equilibrium-bed.ts';
import { filledBed, ratioOf, SEA_PA } from './filled-bed.ts';

const LAYERS = 20;
const STEPS = 480;

describe('the bed beside another one, written for the fronts: halving on the temperature, exact isotherms, no tables', () => {
  it.each([
    { what: 'drying corn', crop: 'corn', aheadC: 12, wb: 0.2, airC: 14, rh: 0.55 },
    { what: 'cooling corn', crop: 'corn', aheadC: 22, wb: 0.15, airC: 8, rh: 0.7 },
    { what: 'wetting soybeans', crop: 'soybean', aheadC: 5, wb: 0.11, airC: 12, rh: 0.8 },
    { what: 'drying wheat', crop: 'wheat', aheadC: 18, wb: 0.17, airC: 18, rh: 0.5 },
  ])('$what: every hour of the top within 0.3 K and 0.05 point', ({ crop, aheadC, wb, airC, rh }) => {
    const medium = mediumOf(crop, 620, { thinLayer: 'near-equilibrium' });
    const bed = filledBed(aheadC, wb, { medium, layers: LAYERS });
    const airKgM2 = 250;
    const [ratio, db] = [ratioOf(airC, rh), wb / (1 - wb)];
    const other = runLayers(
      {
        isotherm: isothermOf(crop),
        heatJKgK: (medium.heatDryJKgK + medium.heatPerMoistureJKgK * db) / (1 + db),
        pressurePa: SEA_PA,
        aheadC,
        moistureWb: wb,
        inletC: airC,
        inletRatio: ratio,
      },
      LAYERS,
      airKgM2 / bed.dryKgM2[0],
      STEPS,
    );
    for (let step = 0; step < STEPS; step++) {
      passAir(bed, airKgM2, 3600, airC, ratio);
      // The other one keeps the heat of the grain's first moisture and takes the heat of vaporisation before each step.
      expect(Math.abs(bed.tempC[LAYERS - 1] - other.topC[step]), `hour ${step}`).toBeLessThan(0.3);
      expect(Math.abs(bed.moistureDb[LAYERS - 1] - other.topMoistureDb[step]), `hour ${step}`).toBeLessThan(0.0005);
    }
  });
});
