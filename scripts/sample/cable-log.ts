import { type BinRun, STEP_MS } from './bin-run.ts';
import { DAY, fromLocal, HOUR, MINUTE } from './calendar.ts';
import { randomStream } from './random.ts';

/** One reading of one sensor as the logger holds it, before it is written: °F and % wet basis; null where nothing was logged. */
export interface Reading {
  ms: number;
  bin: string;
  cable: string;
  sensor: number;
  temp: number | null;
  moisture: number | null;
}

export const toF = (c: number): number => c * 1.8 + 32;
export const tenth = (value: number): number => Math.round(value * 10) / 10;

/** Errors of a season's cables: none of them is what season.yaml lets the kit assume (it states limits, not shapes). */
const ERRORS = {
  tempFixedC: 0.28,
  tempBinC: 0.2,
  tempDriftC: 0.25,
  tempNoiseC: 0.08,
  moistureFixed: 0.22,
  moistureBin: 0.25,
  moistureDrift: 0.12,
  moistureNoise: 0.06,
};

/** Everything that a bin's cables logged: fixed and shared errors, slow drift, noise, steps of 0.1. In time order, then by cable and sensor. */
export function cableReadings(run: BinRun, seed: number, endMs: number): Reading[] {
  const { plan } = run;
  const random = randomStream(seed, `cables ${plan.id}`);
  const binTemp = ERRORS.tempBinC * random.normal();
  const binMoisture = ERRORS.moistureBin * random.normal();
  const errors = run.sensors.map(() => ({
    temp: binTemp + ERRORS.tempFixedC * random.normal(),
    tempDrift: ERRORS.tempDriftC * random.normal(),
    moisture: binMoisture + ERRORS.moistureFixed * random.normal(),
    moistureDrift: ERRORS.moistureDrift * random.normal(),
  }));
  const out: Reading[] = [];
  const every = plan.everyHours * HOUR;
  const first = Math.ceil((run.startMs - plan.atMinute * MINUTE) / every) * every + plan.atMinute * MINUTE;
  for (let ms = first; ms < endMs; ms += every) {
    const step = Math.round((ms - run.startMs) / STEP_MS);
    if (step < 2 || step >= run.steps) continue;
    const year = (ms - run.startMs) / (365 * DAY);
    run.sensors.forEach((sensor, s) => {
      const e = errors[s];
      // The cable's sheath is some minutes behind the grain.
      const lagged = 0.6 * sensor.tempC[step] + 0.3 * sensor.tempC[step - 1] + 0.1 * sensor.tempC[step - 2];
      out.push({
        ms,
        bin: plan.id,
        cable: sensor.cable,
        sensor: sensor.sensor,
        temp: tenth(toF(lagged + e.temp + e.tempDrift * year + ERRORS.tempNoiseC * random.normal())),
        moisture: tenth(
          Math.max(
            4,
            sensor.moistureWb[step] + e.moisture + e.moistureDrift * year + ERRORS.moistureNoise * random.normal(),
          ),
        ),
      });
    });
  }
  return out;
}

export const within = (ms: number, from: string, to: string): boolean => ms >= fromLocal(from) && ms < fromLocal(to);
