import { describe, expect, it } from 'vitest';
import { grainDiffusivity } from '../../../src/analysis/surface/grain-diffusivity.ts';
import { CROPS } from '../../../src/grain/crops.ts';

/** m3; the kit’s bulk densities are those of the legal bushel */
const BUSHEL_M3 = 0.03523907;

describe('how fast warmth goes through grain at rest', () => {
  it('is near the 1e-7 m2/s that handbooks give for bulk grain (from memory), whatever the crop weighs', () => {
    // Kazarian and Hall 1965, Trans. ASAE 8(1), 33-37 (from memory): about 0.8 to 1.0e-7 for soft wheat and yellow dent corn.
    for (const { id, legalBushelKg } of CROPS) {
      const { diffusivityM2S } = grainDiffusivity({ crop: id, bulkDensityKgM3: legalBushelKg / BUSHEL_M3 }, 0.14);
      expect(diffusivityM2S, id).toBeGreaterThan(0.8e-7);
      expect(diffusivityM2S, id).toBeLessThan(1.2e-7);
    }
  });

  it('is less sure for a crop whose conductivity is not published', () => {
    const sdOf = (crop: string) => grainDiffusivity({ crop, bulkDensityKgM3: 600 }, 0.1).relSd;
    expect(sdOf('sunflower')).toBeGreaterThan(1.5 * sdOf('corn'));
    expect(sdOf('durum')).toBe(sdOf('wheat'));
  });
});
