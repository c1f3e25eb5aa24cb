import type { Campaign } from '../types.ts';
import { dayMean } from './day-mean.ts';
import type { FanPieces } from './fan-pieces.ts';
import { type CampaignSpan, firstToShow, signOf, TURNED_K } from './find-campaigns.ts';
import { byCable } from './front-finding.ts';
import { CLEARLY_K, HOUR_MS } from './front-limits.ts';
import { passedPart } from './turned-back.ts';

/** Fronts that pass a sensor sooner after each other than this, h, are not told apart. */
const APART_H = 12;
/** Of the sensors each of the fronts passed more than this part. */
const PASSED_PART = 0.5;

/**
 * The falls of the air within one cooling campaign (rises within a warming one), each as a campaign of its own: after the first
 * the day's mean came back by TURNED_K or more and then went CLEARLY_K beyond where it had been.
 *
 * @param airC  [pieces], entering air
 * @returns     [falls], in time order, together as long as the campaign; the campaign alone where the air fell once
 */
export function fallsWithin(pieces: FanPieces, airC: Float64Array, one: CampaignSpan): CampaignSpan[] {
  const sign = signOf(one.kind);
  const dayC = dayMean(pieces, airC);
  const starts = [one.first];
  let farthest = one.first;
  let back = one.first;
  for (let i = one.first; i <= one.last; i++) {
    const beyondK = sign * (dayC[i] - dayC[farthest]);
    if (sign * (dayC[i] - dayC[back]) < 0 || back < farthest) back = i;
    if (!(beyondK > 0)) continue;
    const came = sign * (dayC[farthest] - dayC[back]);
    if (came < TURNED_K) {
      farthest = i;
      back = i;
      continue;
    }
    if (beyondK < CLEARLY_K) continue;
    let from = back;
    while (from < i && sign * (dayC[from] - dayC[farthest]) < 0) from += 1;
    const beforeC = dayC[farthest];
    starts.push(firstToShow(pieces, from, (piece) => sign * (airC[piece] - beforeC)));
    farthest = i;
    back = i;
  }
  return starts.map((first, k) => {
    const last = k + 1 < starts.length ? starts[k + 1] - 1 : one.last;
    return { ...one, first, last, span: { fromMs: pieces.fromMs[first], toMs: pieces.toMs[last] } };
  });
}

/**
 * True where the sensors saw each fall go by as a front of its own: it passed more than half of them, each later one came to the
 * sensor nearest to where the air enters on most cables, and to no sensor sooner than APART_H after the one before.
 */
export function eachWentBy(campaigns: readonly Campaign[], air: 'up' | 'down'): boolean {
  return campaigns.every((one, index) => {
    if (!(passedPart(one) > PASSED_PART)) return false;
    if (index === 0) return true;
    const before = campaigns[index - 1].arrivals;
    const tooSoon = one.arrivals.some((each, i) => {
      const [now, then] = [each.arrivedMs, before[i].arrivedMs];
      return now !== null && then !== null && now - then < APART_H * HOUR_MS;
    });
    return !tooSoon && enteredMost(one, air);
  });
}

function enteredMost({ arrivals }: Campaign, air: 'up' | 'down'): boolean {
  const cables = [...byCable(arrivals.filter(({ unseen }) => unseen !== true)).values()];
  const nearest = cables.map((of) => of.reduce((a, b) => (b.heightM < a.heightM === (air === 'up') ? b : a)));
  return nearest.filter(({ arrivedMs }) => arrivedMs !== null).length > nearest.length / 2;
}
