import type { Estimate } from '../../base/estimate.ts';
import type { MomentAgreement, TicketsHeld } from './ticket-agreement-types.ts';

/** A difference that the fan hours in between make is told from this on, points. */
const WORTH_TELLING = 0.3;
/** No bias of a cable is that large, points: other grain, another unit or a column misread. */
const BEYOND_BIAS = 3;

/** What agreement and disagreement with the tickets most likely mean, whole sentences. */
export function ticketWords({ start, end, sharedBias, drift }: Omit<TicketsHeld, 'likely'>): string[] {
  const held = [start, end].filter((one): one is MomentAgreement => one !== null);
  const out = held.flatMap(momentWords);
  const apart = held.filter((one) => one.agree === false);
  if (apart.length > 0 && sharedBias.value !== null) {
    const most = Math.max(...apart.map((one) => Math.abs(one.difference.value! - one.expected.value)));
    out.push(
      most > BEYOND_BIAS
        ? 'So much is no bias of a cable: see whether the tickets belong to this bin, and which column and unit season.yaml names for the moisture of either.'
        : `Most likely all sensors of the bin read ${byPoints(sharedBias)}, as with an isotherm that does not fit this grain, or the meter of the tickets errs. Such a bias cancels in the points removed; in the moisture at the end and in over-drying it stays.`,
    );
  }
  if (drift.interval !== null && (drift.interval[0] > 0 || drift.interval[1] < 0)) {
    out.push(
      `No one bias explains both ends: from start to end sensors and tickets move apart by ${size(drift)}, and the points by tickets differ from those by sensors by as much.`,
    );
  }
  return out;
}

function momentWords(one: MomentAgreement): string[] {
  if (one.agree === null) return one.why === null ? [] : [one.why];
  const out: string[] = [];
  if (!one.agree)
    out.push(`At the ${one.moment} the sensors read ${byPoints(one.difference)} than the tickets: they do not agree.`);
  if (Math.abs(one.expected.value) >= WORTH_TELLING && one.fanHoursBetween !== null) {
    const order = one.moment === 'start' ? 'the loads and the readings' : 'the readings and the loads';
    out.push(
      `About ${Math.abs(one.expected.value).toFixed(1)} points (0.0 to ${Math.abs(2 * one.expected.value).toFixed(1)}) of the difference at the ${one.moment} are what the fans did between ${order}: they ran ${Math.round(one.fanHoursBetween)} h (${one.hoursLogged ? 'measured' : 'in part at the share of time that the log tells of'}) with the mean load in the bin, taken at the season’s rate.`,
    );
  }
  return out;
}

/** `0.6 point (0.2 to 1.0) drier`, without the sign. */
function byPoints(of: Estimate): string {
  return `${size(of)} ${of.value! < 0 ? 'drier' : 'wetter'}`;
}

function size({ value, interval }: Estimate): string {
  const sign = value! < 0 ? -1 : 1;
  const [low, high] = sign < 0 ? [-interval![1], -interval![0]] : interval!;
  return `${Math.abs(value!).toFixed(1)} points (${low.toFixed(1)} to ${high.toFixed(1)})`;
}
