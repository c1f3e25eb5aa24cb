import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { pushSpan, spanList, toFanSpans } from '../../../src/analysis/fan/spans.ts';
import { grainSurface } from '../../../src/analysis/surface/grain-surface.ts';
import { contradictionSaid } from '../../../src/analysis/surface/surface-said.ts';
import { FAN_OFF, FAN_UNKNOWN } from '../../../src/analysis/types.ts';
import { FLAGS } from '../../../src/tables/flags.ts';
import { loadedSample, reviewedSample } from '../../support/sample.ts';
import { DAY, type Kept, keptInput, START } from '../condition/kept-bin.ts';
import { cylinder } from './cylinder.ts';
import { DIFFUSIVITY, FILM_M, halfSpace } from './half-space.ts';

/** A bin of corn whose grain truly ends at a height; fan on for the first ten days. */
function bin(
  surfaceM: number,
  { seed = 1, diameterM = 10, ...more }: Partial<Kept> & { seed?: number; diameterM?: number } = {},
) {
  const grainAt = halfSpace(seed);
  const input = keptInput({
    days: 130,
    heightsM: [0.5, 1.5, 2.5, 3.5, 4.5],
    tempC: (heightM, day) => grainAt(surfaceM + FILM_M - heightM, day),
    outdoorC: (day) => grainAt(0, day) - 2,
    fanOn: (day) => day < 10,
    ...more,
  });
  return { ...input, bin: { ...input.bin, diameterM }, moistureWb: 0.15 };
}
const stated = (depthM: number) => [{ day: 0, depthM }];

describe('how deep the grain lies by its temperatures at rest', () => {
  it('is told within a few inches, and goes with a stated depth that is right', () => {
    for (let seed = 1; seed <= 6; seed++) {
      const found = grainSurface(bin(5, { seed, depths: stated(5) }));
      expect(found.depthM.value).not.toBeNull();
      expect(Math.abs(found.depthM.value! - 5)).toBeLessThan(0.15);
      expect(found).toMatchObject({ statedM: 5, cables: 1, contradicted: false });
      expect(contradictionSaid(found)).toBeNull();
    }
  });

  it('contradicts a depth stated a third too large, and not one within a heap and a tenth', () => {
    const found = grainSurface(bin(5, { depths: stated(6.6) }));
    expect(found.contradicted).toBe(true);
    expect(contradictionSaid(found)).toMatch(
      /^While the fans rested, the weather came into the grain as if its surface lay at [45]\.\d m \(1[5-7]\.\d ft\), between .* not at the stated 6\.6 m \(21\.7 ft\)\.$/,
    );
    expect(grainSurface(bin(5, { depths: stated(5.6) })).contradicted).toBe(false);
  });

  it('contradicts a depth stated a quarter too small by a cable under the mean of a heap', () => {
    const found = grainSurface(bin(3.8, { heightsM: [0.5, 1.5, 2.2, 2.9], depths: stated(2.95), fromCentreM: 10 / 3 }));
    expect(found.contradicted).toBe(true);
    expect(found.depthM.interval![0]).toBeLessThan(3.8);
    expect(found.depthM.interval![1]).toBeGreaterThan(3.8);
    // At the centre a heap may be what lies higher.
    expect(
      grainSurface(bin(3.8, { heightsM: [0.5, 1.5, 2.2, 2.9], depths: stated(2.95), fromCentreM: 0 })),
    ).toMatchObject({
      contradicted: false,
      cables: 1,
    });
  });

  it('holds the levelled depth of nine in ten heaps and cores, by a cable anywhere', () => {
    for (const heap of [0.36, -0.36]) {
      for (const fromCentreM of [0, 1.5, 3.5]) {
        // Nine tenths of a full cone; it lies as high as the levelled depth at two thirds of the radius.
        const surfaceM = 5 + heap * (10 / 3 - fromCentreM);
        const heightsM = [0.6, 1.5, 2.4, 3.3].map((heightM) => heightM + surfaceM - 4);
        const { depthM } = grainSurface(bin(surfaceM, { heightsM, fromCentreM, depths: stated(7) }));
        expect(depthM.interval![0], `${heap}, ${fromCentreM} m`).toBeLessThan(5.1);
        expect(depthM.interval![1], `${heap}, ${fromCentreM} m`).toBeGreaterThan(4.9);
        expect(grainSurface(bin(surfaceM, { heightsM, fromCentreM, depths: stated(5) })).contradicted).toBe(false);
      }
    }
  });

  it('contradicts no stated depth that is right where air creeps through at rest, 0.1 mm/s up or down', () => {
    for (const creepPerM of [0.8, -0.8]) {
      let told = 0;
      for (const distanceM of [0.3, 0.6, 1, 1.4]) {
        for (let seed = 1; seed <= 5; seed++) {
          const grainAt = halfSpace(seed, DIFFUSIVITY, creepPerM);
          const found = grainSurface(
            bin(5, {
              heightsM: [0.5, 1.5, 2.5, 4.1 - distanceM, 5 - distanceM],
              tempC: (heightM, day) => grainAt(5 + FILM_M - heightM, day),
              outdoorC: (day) => grainAt(0, day) - 2,
              depths: stated(5),
            }),
          );
          if (found.depthM.value !== null) told++;
          expect(found.contradicted, `${distanceM} m, ${seed}`).toBe(false);
        }
      }
      // Of 20; over 10 of them before: a sensor that alone sees weather no longer tells of a surface that may lie beyond 1.5 m.
      expect(told).toBeGreaterThanOrEqual(10);
    }
  });

  it('is held against the depth that was stated for the rest, not against that before the bin was cored or topped up', () => {
    const depths = [
      { day: 0, depthM: 5.2 },
      { day: 12, depthM: 4.45 },
    ];
    const cored = { heightsM: [0.5, 1.5, 2.5, 3.3, 4.1], fromCentreM: 10 / 3 };
    expect(grainSurface(bin(4.45, { ...cored, depths }))).toMatchObject({
      statedM: 4.45,
      contradicted: false,
      cables: 1,
    });
    expect(grainSurface(bin(5.2, { ...cored, heightsM: [0.5, 1.5, 2.5, 3.5, 4.3], depths }))).toMatchObject({
      statedM: 4.45,
      contradicted: true,
    });
  });

  it('does not take a sensor in air for one in grain on the calm days on which it does not swing', () => {
    const made = bin(5, {
      heightsM: [0.5, 1.5, 2.5, 3.5, 4.5, 5.5],
      tempC: (heightM, day) => halfSpace(1)(Math.max(0, 5 + FILM_M - heightM), day),
      depths: stated(6.6),
    });
    const series = made.series.map((one) =>
      one.heightM < 5 ? one : { ...one, tempFlags: one.tempFlags.map((_, i) => (i % 40 < 20 ? FLAGS.headspace : 0)) },
    );
    const { depthM, contradicted } = grainSurface({ ...made, series });
    expect(depthM.interval![0]).toBeLessThan(5);
    expect(depthM.interval![1]).toBeGreaterThan(5);
    expect(contradicted).toBe(true);
  });

  it('is not told of a mean between the times before and after grain was drawn out without a word', () => {
    // 5 m until the 60th day, then 3 m: the sensors above swing with the air from then on.
    const grainAt = halfSpace(1);
    const made = bin(5, {
      heightsM: [0.4, 1.5, 2.6, 3.7, 4.8],
      tempC: (heightM, day) => grainAt(Math.max(0, (day < 60 ? 5 : 3) + FILM_M - heightM), day),
      depths: stated(5),
    });
    const series = made.series.map((one) =>
      one.heightM < 3 ? one : { ...one, tempFlags: one.tempFlags.map((_, i) => (i >= 240 ? FLAGS.headspace : 0)) },
    );
    const { depthM, contradicted } = grainSurface({ ...made, series });
    expect(contradicted).toBe(false);
    expect(depthM.why).toMatch(/^At rest too little of the weather/);
  });

  it('is withheld with why', () => {
    const whyOf = (more: Partial<Kept>) => grainSurface(bin(5, { depths: stated(5), ...more })).depthM.why;
    expect(whyOf({ fanOn: (day) => day % 10 === 0 })).toBe(
      'The fans never rested for two weeks while the bin was full.',
    );
    expect(whyOf({ fan: false })).toBe('No log of every fan tells when the grain stood at rest.');
    expect(whyOf({ days: 12, fanOn: () => false })).toBe('The readings of the full bin span less than two weeks.');
    expect(whyOf({ heightsM: [4.5] })).toMatch(/^It takes three sensors of one cable/);
    expect(whyOf({ weather: false })).toBe('No weather of the time at rest is known.');
    expect(whyOf({ fromCentreM: 4.5 })).toMatch(/hangs within 1.2 m \(4 ft\) of the wall/);
    expect(whyOf({ heightsM: [0.5, 1, 1.5] })).toMatch(
      /^At rest too little of the weather reached the highest sensors/,
    );
    // Read by hand once a week: not that the weather does not come in.
    const weekly = (heightM: number, day: number) =>
      Math.floor(day * 4) % 28 === 0 ? halfSpace(1)(5 + FILM_M - heightM, day) : null;
    expect(whyOf({ tempC: weekly })).toMatch(/read every other day or oftener/);
    // A log with a hole of a day in every ten.
    const list = spanList();
    for (let d = 0; d < 130; d++)
      pushSpan(list, START + d * DAY, START + (d + 1) * DAY, d % 10 ? FAN_OFF : FAN_UNKNOWN, 0);
    expect(grainSurface({ ...bin(5, { depths: stated(5) }), spans: toFanSpans(list) }).depthM.why).toBe(
      'The fan logs leave open whether the fans rested for two weeks while the bin was full.',
    );
    // Grain that warms by itself is no grain that only conducts.
    const grainAt = halfSpace(1);
    const hot = (heightM: number, day: number) =>
      grainAt(5 + FILM_M - heightM, day) + (heightM > 4 ? 6 * Math.sin(day) : 0);
    expect(whyOf({ tempC: hot })).toMatch(/^At rest the highest sensors do not follow the weather as grain does/);
  });

  it('does not take the weather that comes in through the wall for that from above', () => {
    // Heat in a cylinder, stepped in both directions: cables that hang as near to the wall as to the surface.
    for (const [diameterM, fromCentreM] of [
      [3, 1],
      [4, 1.33],
      [4, 0],
    ]) {
      const grainAt = cylinder({ diameterM, depthM: 3.5, fromCentreM, days: 130, seed: 4 });
      for (const distanceM of [1.2, 0.9, 0.4]) {
        const found = grainSurface({
          ...bin(3.5, {
            heightsM: [0.7, 2.7 - distanceM, 3.5 - distanceM],
            tempC: (heightM, day) => grainAt.tempC(heightM, day),
            outdoorC: grainAt.outdoorC,
            fanOn: () => false,
            fromCentreM,
            depths: stated(3.5),
            diameterM,
          }),
        });
        expect(found.contradicted, `${diameterM} m wide, ${fromCentreM} m from the centre`).toBe(false);
        if (fromCentreM > 0) expect(found.depthM.why).toMatch(/of the wall/);
        else if (found.depthM.value === null) expect(found.depthM.why).toMatch(/too near the wall/);
        else expect(Math.abs(found.depthM.value - 3.5)).toBeLessThan(0.25);
      }
    }
  });

  it('contradicts no depth that is right where much grain lies above the highest sensor, though warmth comes in from the side', () => {
    for (const fromCentreM of [3.5, 2.8]) {
      const grainAt = cylinder({ diameterM: 10, depthM: 6.5, fromCentreM, days: 130, seed: 7 });
      for (const topM of [4.1, 3.5, 2.9]) {
        const found = grainSurface(
          bin(6.5, {
            heightsM: [topM - 2.4, topM - 1.6, topM - 0.8, topM],
            tempC: grainAt.tempC,
            outdoorC: grainAt.outdoorC,
            fanOn: () => false,
            fromCentreM,
            depths: stated(6.5),
          }),
        );
        expect(found.contradicted, `${fromCentreM} m from the centre, ${topM} m up`).toBe(false);
        if (found.depthM.value === null) expect(found.depthM.why).toMatch(/too little of the weather/);
      }
    }
  });

  it('is told of a silo where only the lowest sensors and the highest work', () => {
    const found = grainSurface(bin(20, { heightsM: [0.5, 1, 19.5], depths: stated(20) }));
    expect(found.contradicted).toBe(false);
    expect(Math.abs(found.depthM.value! - 20)).toBeLessThan(0.15);
  });

  it('takes nothing else of the bin along where it breaks', () => {
    const whole = bin(5, { depths: stated(5) });
    // Heavier than any grain: the bed's own checks throw.
    const heavy = { ...whole.bin, grain: { ...whole.bin.grain, bulkDensityKgM3: 5000 } };
    expect(grainSurface({ ...whole, bin: heavy })).toMatchObject({
      depthM: { value: null, why: expect.stringMatching(/^It could not be worked out: .*dryDensityKgM3/) },
      statedM: 5,
      contradicted: false,
    });
  });

  it('needs no log where there is no fan', () => {
    expect(grainSurface(bin(5, { depths: stated(5), noFan: true })).depthM.value).not.toBeNull();
  });

  it('holds the truth of the sample’s bins, made by another bed', async () => {
    for (const name of ['sorrel-fork', 'sorrel-fork-2023'] as const) {
      const { season } = await loadedSample(name);
      const truth = JSON.parse(readFileSync(`${season.folder}/truth.json`, 'utf8')) as {
        bins: { id: string; grain: { depthM: number } }[];
      };
      const review = await reviewedSample(name);
      for (const { bin, surface } of review.bins) {
        const trueM = truth.bins.find(({ id }) => id === bin.id)!.grain.depthM;
        expect(surface?.depthM.value, bin.name).not.toBeNull();
        expect(surface?.contradicted).toBe(false);
        const [low, high] = surface!.depthM.interval!;
        expect(low, bin.name).toBeLessThan(trueM);
        expect(high, bin.name).toBeGreaterThan(trueM);
        expect(Math.abs(surface!.depthM.value! - trueM), bin.name).toBeLessThan(0.15);
      }
    }
  });
});
