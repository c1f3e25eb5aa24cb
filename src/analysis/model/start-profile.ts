import { median } from '../../base/stats/quantile.ts';
import type { Isotherm } from '../../grain/isotherm.ts';
import { isothermHumidity, isothermMoistureDb } from '../../grain/isotherm-equations.ts';
import { dryFromWet } from '../../grain/moisture-basis.ts';
import { AIR_MOVING, type SensorReadings } from '../moisture/sensor-readings.ts';
import type { BinLog } from './bin-log.ts';
import type { CableLog } from './cable-logs.ts';

/** Humidities that a cable's sensor shows; beyond those that the isotherms were fitted to, because cables go on there too. */
export const CABLE_RH = [0.05, 0.985] as const;

/** Temperature and moisture by height, [heights], rising; at least one. */
export interface Profile {
  heightM: Float64Array;
  tempC: Float64Array;
  moistureDb: Float64Array;
}

/** By what the cables' moistures are corrected and turned into the grain's. */
export interface StartChoice {
  /** of the grain */
  isotherm: Isotherm;
  /** by which the cables make moisture of humidity */
  cableIsotherm: Isotherm;
  /** what the cables read too much, fraction, wet basis */
  moistureBiasWb: number;
  /** what each sensor reads too much beside, [cables][sensors]; none when left out */
  offsetsWb?: readonly Float64Array[];
  /** what the grain held more than cables told that were read in moving air alone, fraction, wet basis; 0 when left out */
  aboveAirWb?: number;
}

/** What a sensor showed at the start; NaN where it showed nothing. */
export interface StartReading {
  heightM: number;
  tempC: number;
  moistureWb: number;
  /** the moisture is of moving air alone */
  moving: boolean;
}

/** The readings of the start, by cable and sensor. */
export function startReadings(cables: readonly CableLog[], window: readonly [number, number]): StartReading[][] {
  return cables.map(({ sensors }) =>
    sensors.map(({ heightM, temperature, moisture }) => ({
      heightM,
      tempC: middleOf(temperature, window),
      moistureWb: moisture === null ? Number.NaN : middleOf(moisture, window),
      moving: moisture !== null && readIn(moisture, window).every((i) => moisture.air[i] === AIR_MOVING),
    })),
  );
}

/**
 * How the grain lay at the start, along each cable. A cable tells the moisture that its own isotherm makes of the humidity between the
 * kernels; the grain's isotherm makes another of it.
 *
 * @returns  by cable, in the order of the log's
 */
export function startProfiles(
  log: BinLog,
  { isotherm, cableIsotherm, moistureBiasWb, offsetsWb, aboveAirWb = 0 }: StartChoice,
): Profile[] {
  const { startReads, startWb } = log;
  const told = startReads.map((sensors, cable) =>
    sensors.map(({ heightM, tempC, moistureWb, moving }, s) => {
      const wb = moistureWb - moistureBiasWb - (offsetsWb?.[cable][s] ?? 0) + (moving ? aboveAirWb : 0);
      return { heightM, tempC, moistureDb: grainMoistureDb(wb, tempC, cableIsotherm, isotherm) };
    }),
  );
  const all = told.flat();
  const usualC = median(all.map((one) => one.tempC).filter((value) => !Number.isNaN(value)));
  const moistures = all.map((one) => one.moistureDb).filter((value) => !Number.isNaN(value));
  const usualDb = moistures.length > 0 ? median(moistures) : dryFromWet(startWb - moistureBiasWb);
  return told.map((rows) => ({
    heightM: Float64Array.from(rows, (row) => row.heightM),
    tempC: bridged(
      rows.map((row) => row.tempC),
      usualC,
    ),
    moistureDb: bridged(
      rows.map((row) => row.moistureDb),
      usualDb,
    ),
  }));
}

/** Moisture of grain in whose air a cable tells `moistureWb`; NaN for NaN. */
function grainMoistureDb(moistureWb: number, tempC: number, cable: Isotherm, grain: Isotherm): number {
  if (Number.isNaN(moistureWb + tempC)) return Number.NaN;
  if (cable.name === grain.name) return dryFromWet(moistureWb);
  const rh = isothermHumidity(cable.equation, cable.a, cable.b, cable.c, tempC, dryFromWet(moistureWb));
  const held = Math.min(CABLE_RH[1], Math.max(CABLE_RH[0], rh));
  return isothermMoistureDb(grain.equation, grain.a, grain.b, grain.c, tempC, held);
}

/** Median of a stretch, of the readings before any fan ran where there are such: in moving air a cable shows that air, not the grain. */
function middleOf(readings: SensorReadings, window: readonly [number, number]): number {
  const within = readIn(readings, window);
  const still = within.filter((i) => readings.air[i] !== AIR_MOVING);
  const told = still.length > 0 ? still : within;
  return told.length === 0 ? Number.NaN : median(told.map((i) => readings.value[i]));
}

/** Places of the readings of a stretch. */
function readIn({ timeMs }: SensorReadings, [fromMs, toMs]: readonly [number, number]): number[] {
  return Array.from(timeMs.keys()).filter((i) => timeMs[i] >= fromMs && timeMs[i] < toMs);
}

/** NaN from the neighbours along the cable, the usual where none is told. */
function bridged(values: readonly number[], usual: number): Float64Array {
  const known = values.map((value, i) => ({ value, i })).filter(({ value }) => !Number.isNaN(value));
  return Float64Array.from(values, (value, i) => {
    if (!Number.isNaN(value)) return value;
    if (known.length === 0) return usual;
    const below = known.filter((one) => one.i < i).at(-1);
    const above = known.find((one) => one.i > i);
    if (below === undefined || above === undefined) return (below ?? above)!.value;
    return below.value + ((above.value - below.value) * (i - below.i)) / (above.i - below.i);
  });
}

/** Value at a height: straight between the heights, as at the outermost beyond them. */
export function valueAtHeight(heightM: Float64Array, values: Float64Array, atM: number): number {
  let above = 0;
  while (above < heightM.length && heightM[above] < atM) above += 1;
  if (above === 0) return values[0];
  if (above === heightM.length) return values[above - 1];
  const part = (atM - heightM[above - 1]) / (heightM[above] - heightM[above - 1]);
  return values[above - 1] + part * (values[above] - values[above - 1]);
}
