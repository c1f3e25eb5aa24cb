import { type Estimate, estimate, withheld } from '../../base/estimate.ts';
import type { MomentMean } from '../types.ts';
import { meanMoisture } from './cable-points.ts';
import type { CableSpread } from './cable-spread.ts';
import { type ErrorPart, joinErrors } from './error-part.ts';
import { around, layerParts } from './layer-parts.ts';
import type { BinLayers, GrainLayer, LayerName } from './layer-types.ts';
import { layerWeights } from './layer-weights.ts';
import type { MomentName } from './moment-window.ts';
import type { ObservedMoisture } from './observed-moisture.ts';
import { BIAS } from './reading-parts.ts';
import { unloadMix } from './unload-mix.ts';

const NAMES: readonly LayerName[] = ['bottom', 'middle', 'top'];
/** The cables with a sensor in a layer must stand for this share of the floor. */
const LEAST_COVERAGE = 1 / 3;

/**
 * Moisture of the bottom, middle and top third at the start and the end, by the sensors that tell the bin's mean then.
 *
 * @param pooled  spread between cables in the season's other bins
 * @param end     the bin's mean at the end
 */
export function binLayers(observed: ObservedMoisture, pooled: CableSpread | null, end: MomentMean): BinLayers {
  const { moments } = observed;
  const start = layersAt(observed, 'start', pooled);
  const last = layersAt(observed, 'end', pooled);
  const told = last.filter((one) => one.layer.moisture.value !== null);
  told.sort((a, b) => Number(b.layer.moisture.value) - Number(a.layer.moisture.value));
  const why = moments.end === null ? (moments.endWhy ?? 'No sensor tells of the end.') : null;
  return {
    start: start.map((one) => one.layer),
    end: last.map((one) => one.layer),
    spread: spreadOf(told, why),
    unload: unloadMix(
      observed,
      pooled,
      end,
      told.map((one) => one.layer),
    ),
    why,
  };
}

interface Told {
  layer: GrainLayer;
  parts: readonly ErrorPart[];
}

function layersAt(observed: ObservedMoisture, moment: MomentName, pooled: CableSpread | null): Told[] {
  const depthM = observed.fill.depthM;
  if (depthM === null || observed.moments[moment] === null) return [];
  return NAMES.map((name, i) => layerAt(observed, moment, pooled, name, (depthM * i) / 3, (depthM * (i + 1)) / 3));
}

function layerAt(
  observed: ObservedMoisture,
  moment: MomentName,
  pooled: CableSpread | null,
  name: LayerName,
  fromM: number,
  toM: number,
): Told {
  const { rows } = observed.moments;
  const depthM = observed.fill.depthM!;
  const { parts: weights, coverage } = layerWeights(rows, depthM, fromM, toM);
  const inside = rows.filter((row) => row.heightM >= fromM && row.heightM <= toM).length;
  const base = { name, fromM, toM, sensors: inside };
  if (coverage < LEAST_COVERAGE) {
    const why =
      inside === 0
        ? `No sensor that was read then hangs in the ${name} third.`
        : `The cables with a sensor in the ${name} third stand for only ${Math.round(100 * coverage)} % of the floor.`;
    return { layer: { ...base, moisture: withheld(why) }, parts: [] };
  }
  const parts = layerParts(observed, moment, pooled, weights, fromM, toM);
  const value = meanMoisture(
    weights.map(({ index }) => rows[index][moment].value),
    weights.map(({ weight }) => weight),
  );
  return { layer: { ...base, moisture: around(value, parts) }, parts };
}

function spreadOf(told: readonly Told[], why: string | null): Estimate {
  if (told.length < 2) return withheld(why ?? 'Fewer than two thirds of the depth have sensors that tell.');
  const wettest = told[0];
  const driest = told[told.length - 1];
  const points = 100 * (Number(wettest.layer.moisture.value) - Number(driest.layer.moisture.value));
  const parts = [...wettest.parts, ...driest.parts].filter((part) => part.cause !== BIAS);
  const { half90 } = joinErrors(parts);
  return estimate(points, Math.max(0, points - half90), points + half90);
}
