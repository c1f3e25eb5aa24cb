import { groupedCount } from '../../base/grouped-count.ts';
import { cfmPerBushel } from '../../bin/specific-airflow.ts';

/**
 * `650 to 1,500 L/s (0.77 to 1.7 cfm/bu)`: a reason tells both, for a page shows the units of its reader.
 *
 * @param volumeM3  of the grain
 */
export function flowRangeSaid(intervalM3S: readonly [number, number], volumeM3: number): string {
  const perBushel = intervalM3S.map((flow) => said(cfmPerBushel(flow, volumeM3)));
  const litres = intervalM3S.map((flow) => groupedCount(Number((1000 * flow).toPrecision(2))));
  return `${litres.join(' to ')} L/s (${perBushel.join(' to ')} cfm/bu)`;
}

const said = (value: number) => String(Number(value.toPrecision(2)));
