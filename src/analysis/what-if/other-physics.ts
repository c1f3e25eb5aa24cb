import { isothermsOf } from '../../grain/isotherm.ts';
import { type MediumOptions, MOST_RATE_FACTOR, mediumOf } from '../../simulation/bed/medium-of.ts';
import { thinLayerOf } from '../../simulation/bed/thin-layer.ts';
import type { RunSpec } from '../../simulation/run/run-spec.ts';

/** What stands in a bed for the one thing that was changed. */
export type PhysicsPart = 'as fitted' | 'layers' | 'steps' | 'isotherm' | 'rate';

/** A bin's season with one part of the bed's physics changed and nothing fitted anew. */
export interface OtherPhysics {
  part: PhysicsPart;
  /** what was taken, `40 layers` */
  title: string;
  spec: RunSpec;
}

/** No limit of rate, and a cold grain's other published rate. */
const FREE = 'near-equilibrium';
const FASTER = 2;

/** The season as fitted, then with half as deep layers, half as long steps, each other published isotherm of the crop, and other drying rates. */
export function otherPhysics(spec: RunSpec): OtherPhysics[] {
  const { medium, layers } = spec.bed;
  const { crop, dryDensityKgM3, isotherm, rateFactor, heatFactor, respirationFactor, moistureShiftDb } = medium;
  const fitted = { isotherm, rateFactor, heatFactor, respirationFactor, moistureShiftDb };
  const withMedium = (options: MediumOptions): RunSpec => ({
    ...spec,
    bed: { ...spec.bed, medium: mediumOf(crop, dryDensityKgM3, { ...fitted, ...options }) },
  });
  return [
    {
      part: 'as fitted',
      title: `${layers} layers, ${isotherm}, ${Number(rateFactor.toPrecision(2))} times the rate of ${medium.thinLayer}`,
      spec,
    },
    { part: 'layers', title: `${2 * layers} layers`, spec: halved(spec) },
    { part: 'steps', title: 'steps of half an hour', spec: { ...spec, stepsAnHour: 2 * (spec.stepsAnHour ?? 1) } },
    ...isothermsOf(crop)
      .filter(({ name }) => name !== isotherm)
      .map(({ name }) => ({ part: 'isotherm' as const, title: name, spec: withMedium({ isotherm: name }) })),
    { part: 'rate', title: 'the published rate as it stands', spec: withMedium({ rateFactor: 1 }) },
    {
      part: 'rate',
      title: 'twice the fitted rate',
      spec: withMedium({ rateFactor: Math.min(MOST_RATE_FACTOR, FASTER * rateFactor) }),
    },
    { part: 'rate', title: thinLayerOf(crop, FREE).name, spec: withMedium({ thinLayer: FREE }) },
  ];
}

/** The same bed in layers half as deep. */
function halved(spec: RunSpec): RunSpec {
  const { bed, start } = spec;
  const twice = (of: Float64Array) => Float64Array.from({ length: 2 * of.length }, (_, i) => of[i >> 1]);
  return {
    ...spec,
    bed: { ...bed, layers: 2 * bed.layers },
    ...(start === undefined ? {} : { start: { tempC: twice(start.tempC), moistureDb: twice(start.moistureDb) } }),
  };
}
