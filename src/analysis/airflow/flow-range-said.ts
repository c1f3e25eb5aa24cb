import { cfmPerBushel } from '../../bin/specific-airflow.ts';

/**
 * `0.65 to 1.5 m³/s (0.77 to 1.7 cfm/bu)`: a reason tells both, for a page shows the units of its reader.
 *
 * @param volumeM3  of the grain
 */
export function flowRangeSaid(intervalM3S: readonly [number, number], volumeM3: number): string {
  const perBushel = intervalM3S.map((flow) => said(cfmPerBushel(flow, volumeM3)));
  return `${intervalM3S.map(said).join(' to ')} m³/s (${perBushel.join(' to ')} cfm/bu)`;
}

const said = (value: number) => String(Number(value.toPrecision(2)));
