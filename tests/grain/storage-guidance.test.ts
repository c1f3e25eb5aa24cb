import { describe, expect, it } from 'vitest';
import { sourceOf } from '../../src/base/sources/sources.ts';
import { CROPS } from '../../src/grain/crops.ts';
import { STORAGE_GUIDANCE, storageGuidanceOf } from '../../src/grain/storage-guidance.ts';

describe('published guidance for storage moisture', () => {
  // Read: Michigan State (corn 15 % up to 6 months, 13 beyond; soybeans 13 and 11), NDSU slides of 2019 (long term: barley 12,
  // canola 8, corn 13, soybeans 11, oil sunflower 7 to 8, wheat 13.5), IRRI (rice 14 % weeks to months, 13 % 8 to 12 months).
  // From memory: sorghum 14 and 13 (MWPS-13).
  it.each([
    ['corn', 15, 13],
    ['soybean', 13, 11],
    ['wheat', null, 13.5],
    ['barley', null, 12],
    ['canola', null, 8],
    ['sunflower', null, 8],
    ['rice', 14, 13],
    ['sorghum', 14, 13],
  ])('of %s is as its sources print it', (crop, short, long) => {
    const { shortWb, longWb } = storageGuidanceOf(crop)!;
    expect(shortWb).toBe(short === null ? null : short / 100);
    expect(longWb).toBe(long / 100);
  });

  it('stands for crops that the kit knows, each with a source; none was read of oats and rapeseed', () => {
    const ids = CROPS.map(({ id }) => id);
    for (const { crop, sourceKeys } of STORAGE_GUIDANCE) {
      expect(ids).toContain(crop);
      expect(sourceKeys.length).toBeGreaterThan(0);
      for (const key of sourceKeys) expect(sourceOf(key).key).toBe(key);
    }
    expect(ids.filter((id) => storageGuidanceOf(id) === null)).toEqual(['oats', 'rapeseed']);
  });
});
