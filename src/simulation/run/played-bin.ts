import { specificVolumeM3Kg } from '../../air/volume.ts';
import { type Bed, newBed } from '../bed/bed.ts';
import { conduct, type Surroundings } from '../bed/conduct.ts';
import { passAir } from '../bed/pass-air.ts';
import { setLevel } from '../bed/set-level.ts';
import { setState } from '../bed/set-state.ts';
import { spoil } from '../bed/spoil.ts';
import type { Blower } from './blower.ts';
import type { RunSpec } from './run-spec.ts';

/** Grain ages little within this, and its share of storage time costs as much as its passage of air. */
const SPOIL_HOURS = 6;
const HOUR_S = 3600;

/** A bin's season being played hour by hour: what runs and searches share. */
export interface PlayedBin {
  readonly spec: RunSpec;
  readonly bed: Bed;
  /** of the level reached */
  blower: Blower;
  /** levels reached so far, counted */
  level: number;
  readonly around: Surroundings;
}

/** The bin before its first hour. @throws RangeError on a bed or levels that cannot be */
export function playBin(spec: RunSpec): PlayedBin {
  const first = spec.levels[0];
  if (first === undefined || first.hour > 0) throw new RangeError('the first level must stand at hour 0');
  const bed = newBed(spec.bed);
  const around = { plenumC: Number.NaN, headspaceC: Number.NaN, wallC: Number.NaN };
  const bin: PlayedBin = { spec: ofOneShape(spec), bed, blower: first.blower, level: 0, around };
  reachLevels(bin, 0);
  if (spec.start !== undefined) setState(bed, spec.start.tempC, spec.start.moistureDb);
  return bin;
}

/** The same spec with its keys in one order: V8 compiles the hours' loop anew for every other. */
export function ofOneShape(spec: RunSpec): RunSpec {
  const { bed, floorAreaM2, hours, levels, start, endHour, fromHour = 0, headspaceK = 0, wallK = 0 } = spec;
  const { stepsAnHour = 1 } = spec;
  const { goal, targetWb, targetC } = spec;
  const { startMs, tempC, rh, humidityRatio, pressurePa, localHour, localMonth, localDay, pricePerKwh, demand } = hours;
  return {
    bed,
    floorAreaM2,
    hours: {
      startMs,
      tempC,
      rh,
      humidityRatio,
      pressurePa,
      localHour,
      localMonth,
      localDay,
      pricePerKwh,
      demand: demand.map(({ pricePerKw, ratchet, holds }) => ({ pricePerKw, ratchet, holds })),
    },
    levels: levels.map(({ hour, depthM, tempC: inC, moistureDb, blower }) => ({
      hour,
      depthM,
      tempC: inC,
      moistureDb,
      blower: ofOneShapeBlower(blower),
    })),
    start,
    endHour,
    fromHour,
    headspaceK,
    wallK,
    stepsAnHour,
    goal,
    targetWb,
    targetC,
  };
}

function ofOneShapeBlower(blower: Blower): Blower {
  const { airM3M2S, warmingK, powerW, heaterK, heaterW, heaterFuelPerHour } = blower;
  return { airM3M2S, warmingK, powerW, heaterK, heaterW, heaterFuelPerHour };
}

/** Fill or draw to the levels that stand from this hour on. Call before `playHour`. */
export function reachLevels(bin: PlayedBin, hour: number): void {
  const { levels } = bin.spec;
  while (bin.level < levels.length && levels[bin.level].hour <= hour) {
    const { depthM, tempC, moistureDb, blower } = levels[bin.level];
    setLevel(bin.bed, depthM, tempC, moistureDb);
    bin.blower = blower;
    bin.level += 1;
  }
}

/**
 * Play one hour: air for the share in which the fan runs, then what flows through the grain anyway. Air pushed up comes in at
 * the floor warmed by fan and heater; air drawn down comes in at the surface from the headspace, warmed by neither. With the
 * fan off the plenum is taken to stand as the outdoor air.
 *
 * @param share  of the hour in which the fan runs, 0 to 1
 * @param heat   whether the heater burns with it
 * @valid        the kernel: no checks, no allocation
 */
export function playHour(bin: PlayedBin, hour: number, share: number, heat: boolean): void {
  const { spec, bed, blower, around } = bin;
  const { hours, headspaceK = 0, wallK = 0, stepsAnHour = 1 } = spec;
  const outdoorC = hours.tempC[hour];
  const entryC = enteringC(spec, blower, hour, heat);
  around.plenumC = bed.down || share === 0 ? outdoorC : outdoorC + share * (entryC - outdoorC);
  around.headspaceC = outdoorC + headspaceK;
  around.wallC = outdoorC + wallK;
  const stepS = HOUR_S / stepsAnHour;
  const dryAirKgM2S = blower.airM3M2S / specificVolumeM3Kg(outdoorC, hours.humidityRatio[hour], hours.pressurePa);
  for (let step = 0; step < stepsAnHour; step++) {
    if (share > 0) {
      passAir(bed, dryAirKgM2S * stepS * share, stepS * share, entryC, hours.humidityRatio[hour]);
    }
    conduct(bed, stepS, around);
  }
  if (hour % SPOIL_HOURS === SPOIL_HOURS - 1) spoil(bed, SPOIL_HOURS);
}

/** Temperature of the air that comes into the grain, degC. */
export function enteringC({ hours, bed, headspaceK }: RunSpec, blower: Blower, hour: number, heat: boolean): number {
  const outdoorC = hours.tempC[hour];
  if (bed.air === 'down') return outdoorC + (headspaceK ?? 0);
  return outdoorC + blower.warmingK + (heat ? blower.heaterK : 0);
}
