/** A thin-layer rate as one first-order constant: dM/dt = -k (M - Me). */
export interface ThinLayer {
  id: string;
  name: string;
  /** 1/s, of the grain temperature, degC; null: no limit, grain and leaving air in balance */
  rate1S: ((tempC: number) => number) | null;
  sourceKey: string | null;
  /** how sure it is, a sentence */
  honesty: string;
}

const LN2 = Math.LN2;

/**
 * Page's k and n of corn by Misra and Brooker. The kernel, no checks.
 * k = exp(-7.1735 + 1.2793 ln(1.8 T + 32) + 0.1378 v), n = 0.0811 ln(RH) + 0.0078 M0; t in h, RH and M0 in percent.
 *
 * @param tempC  degC; fitted 2.2 to 71
 * @source       misra-brooker-1980, memory
 */
export function misraBrookerPage(tempC: number, rhPct: number, moistureDbPct: number, velocityMS: number) {
  const k = Math.exp(-7.1735 + 1.2793 * Math.log(1.8 * tempC + 32) + 0.1378 * velocityMS);
  return { k, n: 0.0811 * Math.log(rhPct) + 0.0078 * moistureDbPct };
}

/** Coldest that Misra and Brooker fitted, degC. */
const COLDEST_C = 2.2;

/** Of Page's curve the first-order rate with the same half-time: a bed asks how fast the grain follows, not how it begins. */
function cornRate1S(tempC: number): number {
  // Natural-air drying: 65 % humidity, 25 % dry basis, 0.1 m/s. In colder grain the fall of its logarithm at the end goes on.
  const at = (t: number) => {
    const { k, n } = misraBrookerPage(t, 65, 25, 0.1);
    return LN2 / (LN2 / k) ** (1 / n) / 3600;
  };
  if (tempC >= COLDEST_C) return at(tempC);
  const perK = Math.log(at(COLDEST_C + 0.01) / at(COLDEST_C)) / 0.01;
  return at(COLDEST_C) * Math.exp(perK * (tempC - COLDEST_C));
}

/** k = a exp(-b / T), T in K. */
const arrhenius = (a: number, b: number) => (tempC: number) => a * Math.exp(-b / (tempC + 273.15));

const BORROWED = 'Borrowed: no rate for this crop near outdoor temperatures was read.';

const THIN_LAYERS: readonly ThinLayer[] = [
  {
    id: 'corn',
    name: 'corn, Misra and Brooker',
    rate1S: cornRate1S,
    sourceKey: 'misra-brooker-1980',
    honesty: 'From memory; another equation for cold corn is about twice as fast.',
  },
  {
    id: 'wheat',
    name: 'wheat, O’Callaghan, Menzies and Bailey',
    rate1S: arrhenius(2000, 5094),
    sourceKey: 'ocallaghan-1971',
    honesty: 'From memory.',
  },
  {
    id: 'barley',
    name: 'barley, O’Callaghan, Menzies and Bailey',
    rate1S: arrhenius(139.3, 4426),
    sourceKey: 'ocallaghan-1971',
    honesty: 'From memory.',
  },
  {
    id: 'near-equilibrium',
    name: 'no limit: leaving air in balance with each layer',
    rate1S: null,
    sourceKey: 'thompson-1972',
    honesty: 'Too fast in the cold and at high airflow.',
  },
];

const OF_CROP: Readonly<Record<string, string>> = {
  corn: 'corn',
  wheat: 'wheat',
  'soft-wheat': 'wheat',
  durum: 'wheat',
  barley: 'barley',
  oats: 'barley',
};

/**
 * The thin-layer rate of a crop, or the one named.
 *
 * @param name  id of one of `THIN_LAYERS`; left out: the crop's own, else corn's as the slower of those known
 * @throws      RangeError that lists the ids
 */
export function thinLayerOf(crop: string, name?: string): ThinLayer {
  const id = name ?? OF_CROP[crop] ?? 'corn';
  const found = THIN_LAYERS.find((one) => one.id === id);
  if (found === undefined) {
    throw new RangeError(`no thin-layer rate "${id}"; there are ${THIN_LAYERS.map((one) => one.id).join(', ')}`);
  }
  return name === undefined && OF_CROP[crop] === undefined
    ? { ...found, honesty: `${BORROWED} ${found.honesty}` }
    : found;
}
