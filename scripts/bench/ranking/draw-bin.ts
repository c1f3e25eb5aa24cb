import { MOST_RATE_FACTOR } from '../../../src/simulation/bed/medium-of.ts';
import { randomStream } from '../../sample/random.ts';

export type RankedCrop = 'corn' | 'soybean' | 'wheat';

/** A drawn bin with its truth and what a fitted model would know of it. Moistures wet basis, fractions. */
export interface DrawnBin {
  seed: number;
  crop: RankedCrop;
  goal: 'dry' | 'cool';
  /** UTC of the filling's end, ms; the season's length, days */
  startMs: number;
  days: number;
  depthM: number;
  floorAreaM2: number;
  bulkKgM3: number;
  moistureWb: number;
  tempC: number;
  /** true mean airflow, m3/(m2 s), and the core's over the mean */
  airM3M2S: number;
  coreAir: number;
  warmingK: number;
  powerW: number;
  targetWb: number;
  targetC: number;
  /** heat and water of respiration over those of the crop's storage rule */
  breath: number;
  /** money per kWh by day and at night, and per kW by day */
  tariff: { day: number; night: number; demand: number };
  /** what the fit is taken to leave: airflow over the truth, moisture and temperature less the truth, drying rate over the published */
  believed: {
    airFactor: number;
    coreFactor: number;
    breathFactor: number;
    moistureWb: number;
    tempK: number;
    rateFactor: number;
  };
}

const CFM_BU = 0.000471947 / 0.0352391; // m3/(s m3) for 1 cfm per bushel of 1.2445 ft3
const HOUR_MS = 3_600_000;

/**
 * What fits to the logs of drawn seasons leave, as standard errors: `bench -- ranking-fits`, 32 bins of seeds 10126 to 10165. The drying
 * rate is the generator's as a fit of the kit's bed tells it, over the kit's published one: medians of 10 bins of corn, 13 of soybeans, 9 of wheat.
 */
export const LEFT = { air: 0.068, moistureWb: 0.0015, rate: 0.44 };
const FITTED_RATE: Readonly<Record<RankedCrop, number>> = { corn: 7.4, soybean: 4.3, wheat: 3.6 };

const RANGES: Readonly<Record<RankedCrop, { bulk: number; start: readonly [number, number]; target: number }>> = {
  corn: { bulk: 721, start: [0.17, 0.2], target: 0.15 },
  soybean: { bulk: 772, start: [0.145, 0.17], target: 0.13 },
  wheat: { bulk: 772, start: [0.15, 0.175], target: 0.135 },
};

/** Bin number `seed` of the bench: two in ten are to be cooled, the others dried. */
export function drawBin(seed: number): DrawnBin {
  const random = randomStream(seed, 'ranking bin');
  const breath = randomStream(seed, 'ranking breath');
  const rate = randomStream(seed, 'ranking rate');
  const between = (low: number, high: number) => low + (high - low) * random.uniform();
  const crop = (['corn', 'soybean', 'wheat'] as const)[random.integer(0, 2)];
  const { bulk, start, target } = RANGES[crop];
  const goal = random.uniform() < 0.2 ? 'cool' : 'dry';
  const depthM = between(3, 6.5);
  const cfmBu = goal === 'dry' ? between(0.75, 1.5) : between(0.08, 0.3);
  const year = 2000 + random.integer(0, 9);
  const wheat = crop === 'wheat';
  return {
    seed,
    crop,
    goal,
    startMs: Date.UTC(year, wheat ? 7 : 8, wheat ? 1 : 20) + random.integer(0, 30) * 24 * HOUR_MS + 6 * HOUR_MS,
    days: goal === 'dry' ? 90 : 110,
    depthM,
    floorAreaM2: between(40, 130),
    bulkKgM3: bulk * between(0.98, 1.04),
    moistureWb: goal === 'dry' ? between(...start) : target - 0.002,
    tempC: between(12, 24),
    airM3M2S: cfmBu * CFM_BU * depthM,
    coreAir: between(0.7, 1),
    warmingK: goal === 'dry' ? between(1.2, 2.8) : between(0.4, 1.2),
    powerW: between(4000, 15_000),
    targetWb: target,
    targetC: between(2, 6),
    tariff:
      random.uniform() < 0.5
        ? { day: 0.11, night: 0.11, demand: 0 }
        : { day: 0.125, night: 0.08, demand: between(2, 9) },
    believed: {
      airFactor: Math.exp(LEFT.air * random.normal()),
      coreFactor: Math.exp(0.05 * random.normal()),
      moistureWb: LEFT.moistureWb * random.normal(),
      tempK: 0.3 * random.normal(),
      rateFactor: Math.min(MOST_RATE_FACTOR, FITTED_RATE[crop] * Math.exp(LEFT.rate * rate.normal())),
      breathFactor: Math.exp(0.3 * breath.normal()),
    },
    // Grain of one damage and another breathes up to some ten times more or less than a rule of it says.
    breath: 0.1 * 15 ** breath.uniform(),
  };
}
