import { USUAL_LIMITS } from '../../src/analysis/useful/useful-limits.ts';
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
      out.push(
        `${bin.name}: the grain holds the air back ${bin.airflowFactor} times as much as clean, loose grain (airflow factor)`,
      );
    if (bin.grain.isotherm !== null)
      out.push(`${bin.name}: moisture in balance with air by ${bin.grain.isotherm} (isotherm)`);
    if (bin.grain.bulkDensityFrom === 'stated') {
      out.push(`${bin.name}: test weight ${testWeight(bin.grain.bulkDensityKgM3)}`);
    }
  }
  for (const fan of season.fans) {
    if (fan.runningAboveA !== null) out.push(`Fan ${fan.id} counts as running above ${fan.runningAboveA} A`);
    if (fan.load !== null)
      out.push(`Fan ${fan.id} loads its motor to ${(100 * fan.load).toFixed(0)} % of the nameplate`);
    if (fan.motorEfficiency !== null) {
      out.push(
        `The motor of fan ${fan.id} turns ${(100 * fan.motorEfficiency).toFixed(0)} % of its power into work (motor efficiency)`,
      );
    }
  }
  const { temperature, moisture } = season.sensors;
  const degrees =
    season.showUnits === 'us'
      ? (deltaK: number) => `${round(1.8 * deltaK)} °F`
      : (deltaK: number) => `${round(deltaK)} °C`;
  const points = (fraction: number) => `${round(100 * fraction)} points`;
  out.push(...sensorWords('Temperature', temperature.accuracyK, temperature.noiseK, temperature.biasK, degrees));
  out.push(...sensorWords('Moisture', moisture.accuracyWb, moisture.noiseWb, moisture.biasWb, points));
  if (moisture.isotherm !== null) out.push(`Cables work moisture out by ${moisture.isotherm} (isotherm)`);
  const { moistureWb = null, temperatureK = null } = season.usefulHours ?? {};
  if (moistureWb !== null && moistureWb !== USUAL_LIMITS.moistureWb)
    out.push(`A fan hour counts as drying or rewetting from ${points(moistureWb)} on (useful_hours)`);
  if (temperatureK !== null && temperatureK !== USUAL_LIMITS.temperatureK)
    out.push(`A fan hour counts as cooling or warming from ${degrees(temperatureK)} on (useful_hours)`);
  return out;
}

/** Two digits and no dust of binary fractions. */
function round(value: number): number {
  return Number(value.toPrecision(2));
}

/** What season.yaml says of sensors of a kind, a line, or none. */
function sensorWords(
  kind: string,
  accuracy: number | null,
  noise: number | null,
  bias: number | null,
  said: (limit: number) => string,
): string[] {
  const parts = [
    ...(accuracy === null ? [] : [`each right to ${said(accuracy)}`]),
    ...(noise === null ? [] : [`each reading to ${said(noise)}`]),
    ...(bias === null ? [] : [`all of a bin off alike by up to ${said(bias)}`]),
  ];
  return parts.length === 0 ? [] : [`${kind} sensors, in 19 of 20 cases: ${parts.join(', ')}`];
}
