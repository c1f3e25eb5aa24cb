import type * as z from 'zod';
import type { SensorErrors } from '../season.ts';
import { map } from './fields.ts';
import { isotherm, readIsotherm } from './isotherm.ts';
import { type Limits, quantity, siOrNull } from './quantity.ts';

const DEGREES: Limits = { min: 0, max: 20, words: 'it must lie between 0 and 20 degC (36 degF)' };
const POINTS: Limits = { min: 0, max: 0.2, words: 'it must lie between 0 % and 20 % (points of moisture)' };

const ACCURACY = 'fixed error of each sensor, a limit that 95 % keep';
const NOISE = 'error of each reading, a limit that 95 % keep';
const BIAS = 'error shared by all sensors of a bin, a limit that 95 % keep';

export const sensorsSchema = (currency: string) =>
  map(
    {
      temperature: map(
        {
          accuracy: quantity('temperature difference', currency, ACCURACY, DEGREES).optional(),
          noise: quantity('temperature difference', currency, NOISE, DEGREES).optional(),
          bias: quantity('temperature difference', currency, BIAS, DEGREES).optional(),
        },
        'errors of temperature',
      ).optional(),
      moisture: map(
        {
          accuracy: quantity('moisture', currency, `${ACCURACY}; in points`, POINTS).optional(),
          noise: quantity('moisture', currency, `${NOISE}; in points`, POINTS).optional(),
          bias: quantity('moisture', currency, `${BIAS}; in points`, POINTS).optional(),
          isotherm: isotherm('by which the cable turned humidity into moisture; else the crop’s default').optional(),
        },
        'errors of moisture',
      ).optional(),
    },
    'limits of the sensors’ errors, used for every stated interval',
  );

type SensorsText = z.infer<ReturnType<typeof sensorsSchema>>;

export function toSensorErrors(text: SensorsText | undefined, currency: string): SensorErrors {
  const kelvin = (value: string | undefined) => siOrNull('temperature difference', value, currency);
  const points = (value: string | undefined) => siOrNull('moisture', value, currency);
  const { temperature, moisture } = text ?? {};
  return {
    temperature: {
      accuracyK: kelvin(temperature?.accuracy),
      noiseK: kelvin(temperature?.noise),
      biasK: kelvin(temperature?.bias),
    },
    moisture: {
      accuracyWb: points(moisture?.accuracy),
      noiseWb: points(moisture?.noise),
      biasWb: points(moisture?.bias),
      isotherm: moisture?.isotherm === undefined ? null : readIsotherm(moisture.isotherm),
    },
  };
}
