import { specificVolumeM3Kg } from '../../air/volume.ts';
import type { FanShares } from './fan-shares.ts';
import type { WeatherHours } from './hours-of-weather.ts';

/** The air that a fan takes in, hour by hour. */
export interface AirByHour {
  /** m3 per kg dry air, [hours]: a fan moves a volume, and cold air is the denser */
  volumeM3Kg: Float64Array;
  /** mean of the hours in which the fan ran, or of all where it never did */
  meanVolumeM3Kg: number;
}

export function airByHour({ hours }: Pick<WeatherHours, 'hours'>, { on }: Pick<FanShares, 'on'>): AirByHour {
  const volumeM3Kg = on.map((_, hour) =>
    specificVolumeM3Kg(hours.tempC[hour], hours.humidityRatio[hour], hours.pressurePa),
  );
  const ran = on.some((share) => share > 0);
  let sum = 0;
  let weight = 0;
  volumeM3Kg.forEach((volume, hour) => {
    const share = ran ? on[hour] : 1;
    sum += share * volume;
    weight += share;
  });
  return { volumeM3Kg, meanVolumeM3Kg: sum / weight };
}
