import { describe, expect, it } from 'vitest';
import { binMoisture } from '../../../src/analysis/moisture/bin-moisture.ts';
import { layerHeightError } from '../../../src/analysis/moisture/layer-height-error.ts';
import { layerWeights } from '../../../src/analysis/moisture/layer-weights.ts';
import { FAN_OFF, FAN_ON } from '../../../src/analysis/types.ts';
import { sensorShares } from '../../../src/bin/shares.ts';
import { makeBin, makeCable, makeSeason, makeSeries, makeSpans } from './make-bin.ts';

describe('layerWeights', () => {
  const one = sensorShares(10, 6, [makeCable('C', 0, 1, 4)]);

  it('gives each sensor the part of the layer in its strip', () => {
    // Strips by hand: 0 to 2.5 m and 2.5 to 6 m. The middle third, 2 to 4 m, holds 0.5 m of the first and 1.5 m of the second.
    const { parts, coverage } = layerWeights(one, 6, 2, 4);
    expect(parts.map((part) => part.weight)).toEqual([0.25, 0.75]);
    expect(coverage).toBeCloseTo(1, 12);
  });

  it('leaves the floor of a cable without a sensor there to the others', () => {
    // Rings by hand: 0.09 of the floor (circle at 1.5 of 5 m) and 0.91; only C has a sensor in the top third.
    const two = sensorShares(10, 6, [makeCable('C', 0, 1, 5), makeCable('R', 3, 1, 3)]);
    const { parts, coverage } = layerWeights(two, 6, 4, 6);
    expect(coverage).toBeCloseTo(0.09, 12);
    expect(parts.map((part) => two[part.index].cable)).toEqual(['C']);
    expect(parts[0].weight).toBeCloseTo(1, 12);
  });

  it('shares a strip among sensors at one height', () => {
    const twin = sensorShares(10, 6, [makeCable('C', 0, 1, 1, 4)]);
    expect(layerWeights(twin, 6, 0, 2).parts.map((part) => part.weight)).toEqual([0.5, 0.5]);
  });
});

describe('layerHeightError', () => {
  it('is that of a step in a gap, by hand', () => {
    // Sensors 1, 3, 5 m of 6; 13, 15, 15 %; the middle third 2 to 4 m. Of the gap 1 to 3 m it sees 1 m: sharpness
    // 1 - 0.45/2 = 0.775, 0.775 * 2 * 1 * sqrt(1/6) = 0.6328 over 2 m = 0.3164. The gap 3 to 5 m has no step.
    expect(layerHeightError([1, 3, 5], [13, 15, 15], 6, 2, 4, 'up')).toBeCloseTo(0.3164, 4);
    // The whole of a gap: a layer 1 to 3 m: 0.775 * 2 * 2 / sqrt 12 / 2 = 0.4474.
    expect(layerHeightError([1, 3, 5], [13, 15, 15], 6, 1, 3, 'up')).toBeCloseTo(0.4474, 4);
  });
});

describe('binLayers', () => {
  const CENTRE = makeCable('C', 0, 1, 3, 5);
  const RING = makeCable('R', 3, 1, 3, 5);
  const spans = makeSpans([48, FAN_OFF], [200, FAN_ON], [72, FAN_OFF]);
  const series = (ends: readonly number[], cables = [CENTRE, RING]) =>
    cables.flatMap((cable) =>
      ends.map((end, i) => makeSeries(cable, i + 1, 0, 320, (hour) => (hour < 48 ? 0.18 : end))),
    );
  const input = {
    bin: makeBin([CENTRE, RING]),
    season: makeSeason(),
    series: series([0.13, 0.15, 0.18]),
    spans,
    fanHours: { value: 200, interval: null, why: null },
    tickets: [],
  };

  it('tells the thirds, the wettest and the mix', () => {
    const { layers, end } = binMoisture(input);
    // Strips 0-2, 2-4, 4-6 m are the thirds themselves.
    expect(layers!.end.map((layer) => layer.moisture.value)).toEqual([
      expect.closeTo(0.13, 9),
      expect.closeTo(0.15, 9),
      expect.closeTo(0.18, 9),
    ]);
    expect(layers!.end.map((layer) => layer.sensors)).toEqual([2, 2, 2]);
    expect(layers!.start.every((layer) => Math.abs(layer.moisture.value! - 0.18) < 1e-9)).toBe(true);
    expect(layers!.unload.wettest!.name).toBe('top');
    expect(layers!.unload.driest!.name).toBe('bottom');
    expect(layers!.spread.value).toBeCloseTo(5, 9);
    expect(layers!.unload.mixed.value).toBe(end.value);
    // The core's three thirds, dry basis 0.149425, 0.176471, 0.219512: mean 0.181803, wet 0.153835.
    expect(layers!.unload.centreCable).toBe('C');
    expect(layers!.unload.centre.value).toBeCloseTo(0.153835, 6);
  });

  it('a bias that all sensors share widens a third, not the difference of two', () => {
    const biased = (biasWb: number) =>
      binMoisture({
        ...input,
        season: makeSeason({
          sensors: {
            temperature: { accuracyK: null, noiseK: null, biasK: null },
            moisture: { accuracyWb: 0.005, noiseWb: 0.001, biasWb, isotherm: null },
          },
        }),
      }).layers!;
    const width = ([low, high]: readonly number[]) => high - low;
    // Limits of 3 points that 95 % keep: 2 * 1.645 * 3 / 1.96 = 5.04 points of width from the bias alone.
    const [small, large] = [biased(0.001), biased(0.03)];
    expect(width(large.end[0].moisture.interval!)).toBeGreaterThan(0.0504);
    expect(width(small.end[0].moisture.interval!)).toBeLessThan(0.0504);
    expect(large.spread.interval).toEqual(small.spread.interval);
  });

  it('withholds a third without a sensor, and a core without a cable', () => {
    const low = makeCable('R', 3, 1, 3);
    const { layers } = binMoisture({ ...input, bin: makeBin([low]), series: series([0.13, 0.15], [low]) });
    expect(layers!.end[2].moisture.value).toBeNull();
    expect(layers!.end[2].moisture.why).toContain('top third');
    expect(layers!.unload.centre.value).toBeNull();
    expect(layers!.unload.centre.why).toContain('centre');
    expect(layers!.spread.value).toBeCloseTo(2, 9);
  });

  it('tells no layer where the moment itself cannot be told', () => {
    const { layers } = binMoisture({ ...input, series: [] });
    expect(layers!.end).toEqual([]);
    expect(layers!.spread.value).toBeNull();
    expect(layers!.why).not.toBeNull();
  });
});
