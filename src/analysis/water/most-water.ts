import type { Fan } from '../../bin/fan.ts';
import { resistanceCurve } from '../airflow/airflow-by-pressure.ts';
import { HEATER_REL_SD } from '../energy/heater-use.ts';
import { nominalPower } from '../fan/nominal-power.ts';
import type { BinReview } from '../types.ts';
import { unloggedHours } from '../unit-costs/unlogged-time.ts';
import { mostAirflowM3S } from './most-airflow.ts';

/** Heavier than the air of any plenum, kg/m3. */
const DENSE_AIR_KG_M3 = 1.3;
/**
 * Water that a kilogram of unheated air takes up at the most, kg: leaving hot grain of 35 C at a humidity of 80 % it holds 0.029, and
 * at harvest comes in with 0.008 or more (psychrometric tables). Fall air takes up 0.002 to 0.005. Own judgement.
 */
export const MOST_TAKEN_UP = 0.02;
/** Heat that a kilogram of water takes to leave grain, at the least: of free water at 80 C (steam tables, from memory), J/kg. */
const LEAST_LATENT_J_KG = 2.3e6;
/** Output of a heater over the stated one, at the most. */
const MOST_OUTPUT = 1 + 2 * HEATER_REL_SD;

/**
 * Water that a bin's fans could carry off at the very most in all the time that their log leaves open, kg; a heater burns while its
 * fan runs, and all of its heat takes up water.
 *
 * @param fans  the bin's, as stated
 * @returns     null where that has no bound: no resistance or depth known, a log that leaves out days
 */
export function mostWaterKg(review: BinReview, fans: readonly Fan[]): number | null {
  const { bin, fan, moisture } = review;
  const hours = fan.hours.interval?.[1] ?? fan.hours.value;
  const depthM = Math.min(...bin.grain.depthSteps.map((step) => step.depthM).filter((depth) => depth > 0));
  const curve = resistanceCurve(bin.grain.crop);
  const unlogged = unloggedHours(fan.spans, moisture);
  if (hours === null || curve === null || unlogged === null || !Number.isFinite(depthM)) return null;
  if (fans.length === 0) return null;
  const powerW = fans.reduce((sum, stated) => {
    const own = fan.fans.find(({ fanId }) => fanId === stated.id);
    const ran = own !== undefined && own.onHours > 0 ? (1000 * own.energyKwh) / own.onHours : 0;
    return sum + Math.max(ran, nominalPower(stated).powerW);
  }, 0);
  const flowM3S = mostAirflowM3S(curve, powerW, (Math.PI / 4) * bin.diameterM ** 2, depthM);
  const heatW = MOST_OUTPUT * fans.reduce((sum, { heater }) => sum + (heater?.outputW ?? 0), 0);
  return (hours + unlogged) * 3600 * (flowM3S * DENSE_AIR_KG_M3 * MOST_TAKEN_UP + heatW / LEAST_LATENT_J_KG);
}
