import { POROSITY_RANGES } from './bulk.ts';
import { CONDUCTIVITY_LINES } from './conductivity.ts';
import { AS_WHEAT, CROPS } from './crops.ts';
import { ISOTHERM_CROPS } from './isotherm.ts';
import { SPECIFIC_HEAT_LINES } from './specific-heat.ts';
import { STORAGE_RULES } from './storage-rules.ts';

/** A property that the kit does not know of a crop, and why it is left out rather than guessed. */
export interface MissingProperty {
  crop: string;
  property: 'isotherm' | 'specific heat' | 'conductivity' | 'porosity' | 'storage time';
  why: string;
}

const orWheats = (crops: readonly string[]) => [
  ...crops,
  ...Object.keys(AS_WHEAT).filter((id) => crops.includes(AS_WHEAT[id])),
];

const KNOWN: Readonly<Record<MissingProperty['property'], { crops: readonly string[]; why: string }>> = {
  isotherm: { crops: ISOTHERM_CROPS, why: 'No published constants were at hand.' },
  'specific heat': {
    crops: orWheats(SPECIFIC_HEAT_LINES.map((one) => one.crop)),
    why: 'No published relation was at hand; those of the other crops span 20 % to either side (specificHeatSpreadJKgK).',
  },
  conductivity: {
    crops: orWheats(Object.keys(CONDUCTIVITY_LINES)),
    why: 'No published relation was at hand; grain at large insulates at about R-1 an inch, 0.144 W/(m K) (Oklahoma State, 2021).',
  },
  porosity: { crops: Object.keys(POROSITY_RANGES), why: 'Neither a porosity nor a kernel density was at hand.' },
  'storage time': {
    crops: STORAGE_RULES.map((rule) => rule.crop),
    why: 'No published storage time was at hand, and under hulls, with the milling yield at stake, the rule for corn is no guide.',
  },
};

/** What the kit does not know, crop by crop in the order of the crop table. Worked out from the tables, so that it cannot lag. */
export const MISSING_PROPERTIES: readonly MissingProperty[] = CROPS.flatMap(({ id }) =>
  (Object.keys(KNOWN) as MissingProperty['property'][])
    .filter((property) => !KNOWN[property].crops.includes(id))
    .map((property) => ({ crop: id, property, why: KNOWN[property].why })),
);
