import type { Bin } from '../../season/season.ts';
import type { BinAirflow } from '../types.ts';

/** By what power of the resistance the airflow falls at a given pressure, over the airflows of farm bins (asae-d272-3: 0.6 to 0.8). */
const POWER = 0.7;

/** What it most likely means that airflow by pressure and by fronts part; empty where their intervals overlap. */
export function likelyAirflow(
  bin: Bin,
  { byPressure, byFront, agree, byFanCurve, fanCurveFrom }: BinAirflow,
): string[] {
  if (agree !== false || byPressure.value === null || byFront.value === null) return [];
  const factor = bin.airflowFactor * (byPressure.value / byFront.value) ** (1 / POWER);
  const said =
    byPressure.value > byFront.value
      ? [
          `The pressure alone would drive more air than the fronts show. Most likely the grain resists more than assumed, by packing, fines or a damp layer: a factor of about ${factor.toFixed(1)} in place of ${bin.airflowFactor} would bring the two together. A depth stated too low or a pressure sensor that reads high would do it too.`,
        ]
      : [
          `The fronts moved faster than the pressure allows. Most likely the grain lies looser than assumed, or the air found channels past the cables: a factor of about ${factor.toFixed(1)} in place of ${bin.airflowFactor} would bring the two together. A depth stated too high or a pressure sensor that reads low would do it too.`,
        ];
  if (fanCurveFrom === 'logged pressure' && byFanCurve.interval !== null) {
    const [low, high] = byFanCurve.interval;
    if (byFront.interval![1] < low)
      said.push(
        'The fan curve says more than the fronts too: look for air that leaves duct, door or plenum without passing the grain.',
      );
    else if (byFront.interval![0] <= high) said.push('The fan curve sides with the fronts.');
  }
  return said;
}
