import { CROPS } from '../../grain/crops.ts';
import { checked } from './fields.ts';
import { didYouMean } from './nearest.ts';
import { show } from './show.ts';

export const cropIds = (): string[] => CROPS.map((crop) => crop.id);

/** What is wrong with a crop that is not in the table. */
export function cropText(name: string): string {
  const known = cropIds();
  return `is ${show(name)}; it is no crop of the crop table (${known.join(', ')}).${didYouMean(name, known)}`;
}

export const crop = (description: string) =>
  checked(
    'SEASON_CROP',
    `one of ${cropIds().join(', ')}`,
    (name) => (cropIds().includes(name) ? { ok: true } : { ok: false, reason: cropText(name) }),
    { description, enum: cropIds() },
  );
