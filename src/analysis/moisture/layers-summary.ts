import { z } from 'zod';
import { withheld } from '../../base/estimate.ts';
import { interval, number, why } from '../summary-cells.ts';
import { both, pair, plain, reason } from '../summary-numbers.ts';
import type { BinReview } from '../types.ts';
import type { GrainLayer } from './layer-types.ts';

const LAYER_SHAPE = z.strictObject({
  layer: z.enum(['bottom', 'middle', 'top']).describe('a third of the depth'),
  fromM: number.describe('as stated: height above the floor'),
  toM: number.describe('as stated'),
  moisturePct: number,
  moisturePctInterval: interval,
  sensors: z.int().describe('counted: sensors that hang in it'),
  why,
});

/** `layers` of a bin in `summary.json`. */
export const LAYERS_SHAPE = z.strictObject({
  start: z.array(LAYER_SHAPE),
  end: z.array(LAYER_SHAPE),
  wettest: z.enum(['bottom', 'middle', 'top']).nullable().describe('at the end'),
  spreadPoints: number.describe('wettest third less driest, at the end'),
  spreadPointsInterval: interval,
  centrePct: number.describe('the column in the centre at the end, which flows first to a centre sump'),
  centrePctInterval: interval,
  why,
});

const layerSummary = (layer: GrainLayer): z.infer<typeof LAYER_SHAPE> => ({
  layer: layer.name,
  fromM: plain(layer.fromM),
  toM: plain(layer.toM),
  moisturePct: plain(layer.moisture.value, 100),
  moisturePctInterval: pair(layer.moisture.interval, 100),
  sensors: layer.sensors,
  why: layer.moisture.why,
});

export function layersSummary({ moisture }: BinReview): z.infer<typeof LAYERS_SHAPE> {
  const { layers } = moisture;
  const none = withheld(moisture.why ?? 'The layers could not be worked out.');
  const spread = layers?.spread ?? none;
  const centre = layers?.unload.centre ?? none;
  return {
    start: (layers?.start ?? []).map(layerSummary),
    end: (layers?.end ?? []).map(layerSummary),
    wettest: layers?.unload.wettest?.name ?? null,
    ...both('spreadPoints', spread),
    centrePct: plain(centre.value, 100),
    centrePctInterval: pair(centre.interval, 100),
    why: reason(layers?.why ?? null, spread, centre),
  };
}
