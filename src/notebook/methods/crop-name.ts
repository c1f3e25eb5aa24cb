import { CROPS } from '../../grain/crops.ts';
import { capital } from '../words.ts';

/** The trade's name of a crop; the tables hold some that the crop table does not. */
export function cropName(id: string): string {
  return CROPS.find((crop) => crop.id === id)?.name ?? capital(id.replaceAll('-', ' '));
}
