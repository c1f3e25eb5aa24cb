import { type Estimate, withheld } from '../../base/estimate.ts';
import { cfmPerBushel } from '../../bin/specific-airflow.ts';

/** No airflow is shown that may be off by more than this share of the true one. */
const MOST_OFF = 0.2;

/**
 * An airflow whose 90 % interval leaves room for an error of more than 20 % is not shown; the reason tells the interval and what
 * makes it wide.
 *
 * @param range     m3/s
 * @param parts     relative standard errors by cause
 * @param volumeM3  of the grain
 */
export function sureEnough(
  range: Estimate,
  parts: readonly { cause: string; relSd: number }[],
  volumeM3: number,
): Estimate {
  const { value, interval } = range;
  if (value === null || interval === null) return range;
  const [low, high] = interval;
  if (low >= value / (1 + MOST_OFF) && high <= value / (1 - MOST_OFF)) return range;
  const most = parts.reduce((worst, one) => (one.relSd > worst.relSd ? one : worst));
  const perBushel = interval.map((flow) => said(cfmPerBushel(flow, volumeM3)));
  return withheld(
    `Fronts leave ${said(low)} to ${said(high)} m³/s open (${perBushel.join(' to ')} cfm/bu): any one number could be more than ${100 * MOST_OFF} % off. The largest doubt: ${most.cause}.`,
  );
}

const said = (value: number) => String(Number(value.toPrecision(2)));
