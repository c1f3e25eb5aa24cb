import type * as z from 'zod';
import type { UsefulHourLimits } from '../season.ts';
import { map } from './fields.ts';
import { type Limits, quantity, siOrNull } from './quantity.ts';

const POINTS: Limits = { above: 0, max: 0.05, words: 'it must lie above 0 % and at most at 5 % (points of moisture)' };
const DEGREES: Limits = { above: 0, max: 10, words: 'it must lie above 0 and at most at 10 degC (18 degF)' };

export const usefulHoursSchema = (currency: string) =>
  map(
    {
      moisture: quantity(
        'moisture',
        currency,
        'least distance, in points, between the moisture that grain takes in the air and that of the grain; 0.5 % when left out',
        POINTS,
      ).optional(),
      temperature: quantity(
        'temperature difference',
        currency,
        'least distance between the temperature that the air leads the grain to and that of the grain; 2 degF when left out',
        DEGREES,
      ).optional(),
    },
    'from where on an hour of the fan counts as drying, rewetting, cooling or warming',
  );

type UsefulHoursText = z.infer<ReturnType<typeof usefulHoursSchema>>;

export function toUsefulHours(text: UsefulHoursText | undefined, currency: string): UsefulHourLimits {
  return {
    moistureWb: siOrNull('moisture', text?.moisture, currency),
    temperatureK: siOrNull('temperature difference', text?.temperature, currency),
  };
}
