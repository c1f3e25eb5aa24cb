import { type Estimate, estimate, withheld } from '../../base/estimate.ts';
import { fanFlowM3S, pressureRangePa } from '../../bin/fan-curve.ts';
import { operatingPoint } from '../../bin/operating-point.ts';
import { resistanceCurveOf } from '../../bin/resistance-curves.ts';
import type { Bin, Season } from '../../season/season.ts';
import { binsOnFan } from '../energy/bins-on-fan.ts';
import type { PressureStage } from './airflow-by-pressure.ts';
import { packingRange } from './packing-range.ts';

/** A stated fan curve against the fan as it hangs there, 90 %: inlet, wear, speed, air's density. Working assumption. */
const CURVE_SHARE = 0.12;

/**
 * A cross-check by the stated curves of the fans: their airflow at the pressure that was logged; without a logged pressure,
 * where curves and bed balance.
 *
 * @param fanSet  which fans run, `F1+F2`
 */
export function airflowByCurve(
  bin: Bin,
  season: Season,
  stage: PressureStage | null,
  depthM: number | null,
  fanSet: string,
): { flowM3S: Estimate; from: 'logged pressure' | 'operating point' | null } {
  const none = (why: string) => ({ flowM3S: withheld(why), from: null });
  const ids = (stage?.fanSet ?? fanSet).split('+').filter((id) => id !== '');
  const running = ids.length === 0 ? bin.fanIds : ids;
  if (running.some((id) => binsOnFan(season, id) > 1))
    return none('A fan of the bin blows into other bins too; which part of its air comes here no curve tells.');
  const known = running.map((id) => season.fans.find((fan) => fan.id === id)?.curve ?? null);
  const fans = known.filter((curve) => curve !== null);
  if (fans.length === 0 || fans.length < known.length)
    return none('No curve of static pressure and airflow is stated for its fans.');
  if (stage !== null) {
    const { pressurePa } = stage;
    if (fans.some((curve) => pressurePa < pressureRangePa(curve)[0] || pressurePa > pressureRangePa(curve)[1]))
      return none(`The fan curve does not reach the logged pressure of ${Math.round(pressurePa)} Pa.`);
    const value = fans.reduce((sum, curve) => sum + fanFlowM3S(curve, pressurePa), 0);
    return { flowM3S: estimate(value, value * (1 - CURVE_SHARE), value * (1 + CURVE_SHARE)), from: 'logged pressure' };
  }
  if (depthM === null) return none('The depth of the grain is not known.');
  try {
    const curve = resistanceCurveOf(bin.grain.crop);
    const floorAreaM2 = (Math.PI / 4) * bin.diameterM ** 2;
    const at = (factor: number) => operatingPoint(fans, { curve, floorAreaM2, depthM, factor });
    const [middle, tight, loose] = [bin.airflowFactor, ...[...packingRange(bin)].reverse()].map(at);
    if (!middle.ok) return none(middle.why);
    const low = tight.ok ? tight.flowM3S : middle.flowM3S * 0.8;
    const high = loose.ok ? loose.flowM3S : middle.flowM3S * 1.2;
    const value = middle.flowM3S;
    return {
      flowM3S: estimate(
        value,
        value - Math.hypot(value - low, CURVE_SHARE * value),
        value + Math.hypot(high - value, CURVE_SHARE * value),
      ),
      from: 'operating point',
    };
  } catch (error) {
    if (error instanceof RangeError) return none(`The operating point could not be found: ${error.message}`);
    throw error;
  }
}
