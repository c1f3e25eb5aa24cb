import type { Heater } from '../bin/fan.ts';
import type { Bin, Season } from './season.ts';

/** The heaters of a bin's fans; empty where none has one. */
export function statedHeaters({ fans }: Pick<Season, 'fans'>, { fanIds }: Pick<Bin, 'fanIds'>): Heater[] {
  return fans.flatMap(({ id, heater }) => (heater !== null && fanIds.includes(id) ? [heater] : []));
}
