import { groupedCount } from '../../base/grouped-count.ts';
import { fromSi } from '../../base/units.ts';
import { wholeHours } from '../../base/whole-hours.ts';

export type ShowUnits = 'us' | 'si';

/** `41.2 °F` */
export function tempText(tempC: number, show: ShowUnits): string {
  return show === 'us' ? `${fromSi('temperature', tempC, 'degF').toFixed(1)} °F` : `${tempC.toFixed(1)} °C`;
}

/** `14.3 %` */
export function percentText(fraction: number): string {
  return `${(fraction * 100).toFixed(Math.abs(fraction) < 0.01 ? 2 : 1)} %`;
}

/** `inH2O` or `Pa` as people write them */
export function pressureText(pressurePa: number, show: ShowUnits): string {
  return show === 'us'
    ? `${fromSi('pressure', pressurePa, 'inH2O').toFixed(2)} in of water`
    : `${Math.round(pressurePa)} Pa`;
}

/** `21 days`, `30 hours` */
export function spanText(ms: number): string {
  const hours = ms / 3_600_000;
  return hours >= 72 ? `${Math.round(hours / 24)} days` : wholeHours(Math.max(1, hours));
}

/** `1 reading`, `12,300 readings` */
export function countText(count: number, one: string, many = `${one}s`): string {
  return `${groupedCount(count)} ${count === 1 ? one : many}`;
}
