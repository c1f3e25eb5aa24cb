import type { PlacedSensor } from '../../bin/shares.ts';
import { dryFromWet, wetFromDry } from '../../grain/moisture-basis.ts';

/** One cable's own change. */
export interface CablePoints {
  cable: string;
  /** points, wet basis, positive when removed */
  points: number;
  /** share of the floor area */
  weight: number;
  fromCentreM: number;
}

/** A sensor's place with its moisture at both moments, wet basis, fractions. */
export interface SensorChange extends PlacedSensor {
  startWb: number;
  endWb: number;
}

/** Mean of moistures weighted by shares, averaged as dry basis and told as wet basis. */
export function meanMoisture(moistures: readonly number[], shares: readonly number[]): number {
  let water = 0;
  let total = 0;
  moistures.forEach((moisture, i) => {
    water += shares[i] * dryFromWet(moisture);
    total += shares[i];
  });
  return wetFromDry(water / total);
}

/** Points removed along each cable, by the height shares of its sensors. */
export function cablePoints(sensors: readonly SensorChange[]): CablePoints[] {
  return [...new Set(sensors.map((one) => one.cable))].map((cable) => {
    const own = sensors.filter((one) => one.cable === cable);
    const shares = own.map((one) => one.heightShare);
    const start = meanMoisture(
      own.map((one) => one.startWb),
      shares,
    );
    const end = meanMoisture(
      own.map((one) => one.endWb),
      shares,
    );
    return { cable, points: 100 * (start - end), weight: own[0].cableShare, fromCentreM: own[0].fromCentreM };
  });
}
