import { fromSi } from '../../src/base/units.ts';
import { cropOf } from '../../src/grain/crops.ts';
import type { Season } from '../../src/season/season.ts';

/** What season.yaml says in place of the kit's own assumptions, for "how this page was made". */
export function changedDefaults(season: Season): string[] {
  const out: string[] = [];
  const unit = season.showUnits === 'us' ? 'lb/bu' : 'kg/hL';
  const testWeight = (kgM3: number) => `${fromSi('bulk density', kgM3, unit).toFixed(1)} ${unit}`;
  for (const bin of season.bins) {
    if (bin.airflowFactor !== cropOf(bin.grain.crop).airflowFactor)
      out.push(`${bin.name}: airflow factor ${bin.airflowFactor}`);
    if (bin.grain.isotherm !== null) out.push(`${bin.name}: isotherm ${bin.grain.isotherm}`);
    if (bin.grain.bulkDensityFrom === 'stated') {
      out.push(`${bin.name}: test weight ${testWeight(bin.grain.bulkDensityKgM3)}`);
    }
  }
  for (const fan of season.fans) {
    if (fan.runningAboveA !== null) out.push(`fan ${fan.id}: running above ${fan.runningAboveA} A`);
    if (fan.load !== null) out.push(`fan ${fan.id}: load ${(100 * fan.load).toFixed(0)} %`);
    if (fan.motorEfficiency !== null) {
      out.push(`fan ${fan.id}: motor efficiency ${(100 * fan.motorEfficiency).toFixed(0)} %`);
    }
  }
  const { temperature, moisture } = season.sensors;
  const stated = [...Object.values(temperature), ...Object.values(moisture)].some((limit) => limit !== null);
  if (stated) out.push('sensor errors as stated in season.yaml');
  return out;
}
