import { specificVolumeM3Kg } from '../../air/volume.ts';
import type { FanShares } from './fan-shares.ts';
import type { WeatherHours } from './hours-of-weather.ts';

/** The air that a fan takes in, hour by hour. */
export interface AirByHour {
  /** mean of the hours in which the fan ran, or of all where it never did, m3 per kg dry air */
  specificVolumeM3Kg: number;
  /** mass of a volume of air over that at the mean volume, [hours]: a fan moves a volume, and cold air is the denser */
  relativeMass: Float64Array;
}

export function airByHour({ hours }: Pick<WeatherHours, 'hours'>, { on }: Pick<FanShares, 'on'>): AirByHour {
  const volumes = on.map((_, hour) =>
    specificVolumeM3Kg(hours.tempC[hour], hours.humidityRatio[hour], hours.pressurePa),
  );
  const ran = on.some((share) => share > 0);
  let sum = 0;
  let weight = 0;
  volumes.forEach((volume, hour) => {
    const share = ran ? on[hour] : 1;
    sum += share * volume;
    weight += share;
  });
  const mean = sum / weight;
  return { specificVolumeM3Kg: mean, relativeMass: volumes.map((volume) => mean / volume) };
}
