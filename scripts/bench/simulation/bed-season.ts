import { humidityRatio, relativeHumidityOfRatio } from '../../../src/air/humidity-ratio.ts';
import { specificVolumeM3Kg } from '../../../src/air/volume.ts';
import { type Bed, newBed } from '../../../src/simulation/bed/bed.ts';
import type { Medium } from '../../../src/simulation/bed/medium.ts';
import { passAir } from '../../../src/simulation/bed/pass-air.ts';
import { setLevel } from '../../../src/simulation/bed/set-level.ts';
import type { RunSpec } from '../../../src/simulation/run/run-spec.ts';

/** A bed and how it is filled; hourly air with days, weeks and a fall in it goes through it. */
export const SEASON = {
  layers: 20,
  hours: 2000,
  depthM: 5.5,
  seconds: 3600,
  startC: 15,
  startDb: 0.25,
  pressurePa: 98_000,
};

const day = (hour: number) => Math.sin((2 * Math.PI * hour) / 24);
/** degC and kg/kg of each hour, [hours] */
export const AIR_C = Float64Array.from(
  { length: SEASON.hours },
  (_, h) => 10 - (10 * h) / SEASON.hours + 6 * day(h) + 3 * Math.sin((2 * Math.PI * h) / 131),
);
export const AIR_RATIO = AIR_C.map((tempC, h) =>
  humidityRatio(tempC, Math.min(0.98, 0.7 - 0.2 * day(h) + 0.1 * Math.sin(h / 97)), SEASON.pressurePa),
);

const MEAN_VOLUME_M3_KG =
  AIR_C.reduce((sum, tempC, h) => sum + specificVolumeM3Kg(tempC, AIR_RATIO[h], SEASON.pressurePa), 0) / SEASON.hours;

/** A bed for `runBedSeason`, which fills it. */
export function benchBed(medium: Medium): Bed {
  const { depthM, layers, pressurePa } = SEASON;
  return newBed({ medium, depthM, layers, pressurePa });
}

/** The bench's season as a run, air of so many kg/m2 an hour at the season's mean, without prices. */
export function benchRun(medium: Medium, dryAirKgM2: number): RunSpec {
  const { depthM, layers, pressurePa, hours, startC, startDb, seconds } = SEASON;
  const blower = {
    airM3M2S: (dryAirKgM2 / seconds) * MEAN_VOLUME_M3_KG,
    warmingK: 0,
    powerW: 4000,
    heaterK: 0,
    heaterW: 0,
    heaterFuelPerHour: 0,
  };
  return {
    bed: { medium, depthM, layers, pressurePa },
    floorAreaM2: 60,
    hours: {
      startMs: 0,
      tempC: AIR_C,
      rh: AIR_C.map((tempC, h) => Math.min(1, relativeHumidityOfRatio(tempC, AIR_RATIO[h], pressurePa))),
      humidityRatio: AIR_RATIO,
      pressurePa,
      localHour: Uint8Array.from({ length: hours }, (_, h) => h % 24),
      localMonth: new Uint8Array(hours).fill(10),
      localDay: Uint16Array.from({ length: hours }, (_, h) => Math.floor(h / 24)),
      pricePerKwh: new Float64Array(hours).fill(Number.NaN),
      demand: [],
    },
    levels: [{ hour: 0, depthM, tempC: startC, moistureDb: startDb, blower }],
    endHour: hours,
    goal: 'dry',
    targetWb: 0.15,
    targetC: null,
  };
}

/** The bench's season through a bed filled anew. */
export function runBedSeason(bed: Bed, dryAirKgM2: number): void {
  const { hours, seconds, depthM, startC, startDb } = SEASON;
  setLevel(bed, 0, startC, startDb);
  setLevel(bed, depthM, startC, startDb);
  for (let hour = 0; hour < hours; hour++) passAir(bed, dryAirKgM2, seconds, AIR_C[hour], AIR_RATIO[hour]);
}
