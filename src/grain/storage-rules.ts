import { assertRange } from '../base/errors.ts';
import { type CornStorageOptions, cornStorageHours, USUAL_LOSS } from './corn-storage.ts';
import { canolaStorageHours, wheatStorageHours } from './germination-storage.ts';

/** A rule for how long grain may be held at one temperature and moisture. */
export interface StorageRule {
  crop: string;
  name: string;
  /** what has happened to the grain when the time is over */
  criterion: string;
  /** how far the rule is data, and how far it is only a rule */
  honesty: string;
  sourceKeys: readonly string[];
  /** temperatures (degC) and moistures (fraction, wet basis) for which the rule speaks, both ends included */
  tempRangeC: readonly [low: number, high: number];
  moistureRangeWb: readonly [low: number, high: number];
  /** dry matter lost when the time is over, fraction; null where the rule counts germination */
  lossAtEnd: number | null;
  /** h. @throws RangeError outside the rule's temperatures (degC) and moistures (fraction, wet basis) */
  hours(tempC: number, moistureWb: number): number;
}

const CORN_LOSS = '0.5 % of the dry matter lost';
const CORN_RANGES = { tempRangeC: [-30, 40], moistureRangeWb: [0.13, 0.35], lossAtEnd: USUAL_LOSS } as const;
/** Of corn some points wetter. */
const shifted = (points: number) => ({
  ...CORN_RANGES,
  moistureRangeWb: [(13 - points) / 100, (35 - points) / 100] as const,
});
const WHEAT_RANGES = { tempRangeC: [0, 40], moistureRangeWb: [0.12, 0.24], lossAtEnd: null } as const;
const CANOLA_RANGES = { tempRangeC: [0, 40], moistureRangeWb: [0.06, 0.17], lossAtEnd: null } as const;

const corn = (name: string, form: 'low-temperature' | 'carried-down', honesty: string): StorageRule => ({
  crop: 'corn',
  name,
  criterion: CORN_LOSS,
  honesty,
  sourceKeys: ['steele-1969', 'thompson-1972', ...(form === 'low-temperature' ? ['saul-1970'] : [])],
  ...CORN_RANGES,
  hours: (tempC, moistureWb) => cornStorageHours(tempC, moistureWb, { form }),
});

/** Corn some points wetter. Moistures are refused by the crop's own, not by those of the corn that it is taken as. */
function asWetterCorn(points: number, options: CornStorageOptions = {}): StorageRule['hours'] {
  return (tempC, moistureWb) => {
    assertRange('moistureWb', moistureWb, (13 - points) / 100, (35 - points) / 100);
    // A hair of rounding must not carry an end out of the corn's own range.
    return cornStorageHours(tempC, Math.min(Math.max(moistureWb + points / 100, 0.13), 0.35), options);
  };
}

const soybean = (points: number, whose: string, sourceKey: string): StorageRule => ({
  crop: 'soybean',
  name: `corn moved ${points} points`,
  criterion: `time that corn ${points} points wetter takes to lose 0.5 % of its dry matter`,
  honesty: `A shift, not data: ${whose} takes soybeans as corn ${points} points wetter. Two measured times were 1.5 to 3 times as long.`,
  sourceKeys: ['steele-1969', 'thompson-1972', 'saul-1970', sourceKey],
  ...shifted(points),
  hours: asWetterCorn(points),
});

// The shorter of the two forms for cold corn: the published table for all cereals lies below either, nearer to this one.
const cereal = (crop: string, also = '', sourceKeys: readonly string[] = []): StorageRule => ({
  crop,
  name: 'as corn, carried-down form',
  criterion: 'time that corn takes to lose 0.5 % of its dry matter',
  honesty: `A rule, not data: NDSU gives one rounded table for all cereals, from half to twice the time of this equation, in the middle an eighth shorter.${also}`,
  sourceKeys: ['steele-1969', 'thompson-1972', 'ndsu-2019-drying', ...sourceKeys],
  ...CORN_RANGES,
  hours: (tempC, moistureWb) => cornStorageHours(tempC, moistureWb, { form: 'carried-down' }),
});

const wheat = (crop: string): StorageRule => ({
  crop,
  name: 'germination 95 %',
  criterion: 'germination down to 95 %',
  honesty:
    'One equation for all wheats; measured times of one cultivar (to 90 %) were from 28 % shorter to 8 % longer.',
  sourceKeys: ['fraser-muir-1981'],
  ...WHEAT_RANGES,
  hours: wheatStorageHours,
});

/** The rules, each crop's default first. */
export const STORAGE_RULES: readonly StorageRule[] = [
  corn(
    'low-temperature form',
    'low-temperature',
    'Reproduces the published Minnesota table to its digits below 21 °C (70 °F).',
  ),
  corn('carried-down form', 'carried-down', 'Shorter times below 60 degF, half at 30 degF; in published use too.'),
  soybean(2, 'Minnesota', 'umn-2014-wet-soybeans'),
  soybean(3, 'NDSU', 'ndsu-2019-drying'),
  wheat('wheat'),
  wheat('soft-wheat'),
  wheat('durum'),
  cereal('sorghum'),
  cereal(
    'barley',
    ' Malting barley that has to germinate keeps shorter: three published times at 14 % are 39 to 74 % of the rule.',
    ['ndsu-2009-wheat-barley'],
  ),
  cereal('oats'),
  {
    crop: 'sunflower',
    name: 'corn moved 5 points',
    criterion: 'time that corn 5 points wetter takes to lose 0.5 % of its dry matter',
    honesty:
      'A shift, not data: growers are told to take oil sunflower as cereal 5 points wetter. Of two times that the source states one is a tenth shorter, one an eighth longer.',
    sourceKeys: ['steele-1969', 'thompson-1972', 'nsa-sunflower-storage'],
    ...shifted(5),
    hours: asWetterCorn(5, { form: 'carried-down' }),
  },
  {
    crop: 'canola',
    name: 'germination',
    criterion: 'germination begins to fall',
    honesty: 'From memory, held against nothing.',
    sourceKeys: ['kreyger-1972'],
    ...CANOLA_RANGES,
    hours: canolaStorageHours,
  },
  {
    crop: 'rapeseed',
    name: 'germination',
    criterion: 'germination begins to fall',
    honesty: 'The rule for canola, from memory, held against nothing.',
    sourceKeys: ['kreyger-1972'],
    ...CANOLA_RANGES,
    hours: canolaStorageHours,
  },
];

/**
 * The rule of a crop, its default when no name is given.
 *
 * @throws RangeError that lists the crops or the crop's rules
 */
export function storageRuleOf(crop: string, name?: string): StorageRule {
  const known = STORAGE_RULES.filter((rule) => rule.crop === crop);
  if (known.length === 0) {
    const crops = [...new Set(STORAGE_RULES.map((rule) => rule.crop))];
    throw new RangeError(`no storage rule for crop "${crop}"; there are rules for ${crops.join(', ')}`);
  }
  const found = name === undefined ? known[0] : known.find((rule) => rule.name === name);
  if (found === undefined) {
    throw new RangeError(
      `no storage rule "${name}" for ${crop}; there are ${known.map((rule) => rule.name).join(', ')}`,
    );
  }
  return found;
}
