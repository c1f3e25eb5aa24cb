import type { Zone } from '../../base/zone.ts';
import { DEMAND_MS } from '../../money/demand.ts';
import type { PowerSpans } from '../../money/energy-cost.ts';
import { localMoment } from '../../money/local-time.ts';
import type { DemandRule } from '../../money/tariff.ts';
import { whenHolds } from '../../money/when-holds.ts';
import { cutAtStretches } from '../fan/cut-at-stretches.ts';
import { FAN_ON, type FanSeason, type Span } from '../types.ts';

/**
 * A fan's power with the hours of which a meter tells how many, but not when, run outside a demand rule's time as far as they go, or
 * within it, where other fans draw most, else in one run: the least that the rule can have seen of it, and the most. Under a rule that
 * always holds the least is that of hours spread evenly.
 *
 * @param beside  what other fans draw in the quarter hour of a moment, ms UTC; any measure
 * @returns  spans in any order
 */
export function placedHours(
  { spans: logged, spread }: Pick<FanSeason, 'spans' | 'spread'>,
  rule: DemandRule,
  zone: Zone,
  where: 'outside' | 'inside',
  beside: (ms: number) => number = () => 0,
): PowerSpans {
  if (spread === undefined || spread.length === 0 || (rule.when === null && where === 'outside')) return logged;
  const spans = cutAtStretches(logged, spread);
  const pieces: (Span & { powerW: number })[] = [];
  const inStretch = new Map<Span, { onMs: number; joule: number }>(spread.map((one) => [one, { onMs: 0, joule: 0 }]));
  for (let k = 0; k < spans.state.length; k++) {
    if (spans.state[k] !== FAN_ON) continue;
    const [fromMs, toMs, powerW] = [spans.startMs[k], spans.endMs[k], spans.powerW[k]];
    const stretch = spread.find((one) => fromMs >= one.fromMs && toMs <= one.toMs);
    if (stretch === undefined) pieces.push({ fromMs, toMs, powerW });
    else {
      const sum = inStretch.get(stretch)!;
      sum.onMs += toMs - fromMs;
      sum.joule += (powerW * (toMs - fromMs)) / 1000;
    }
  }
  for (const [stretch, { onMs, joule }] of inStretch) {
    const quarters = quartersOf(stretch);
    const held = (of: Span) =>
      whenHolds(rule.when, localMoment(zone, Math.floor(of.fromMs / DEMAND_MS) * DEMAND_MS)) ? 1 : 0;
    const first = (a: Span, b: Span) =>
      where === 'outside' ? held(a) - held(b) : held(b) - held(a) || beside(b.fromMs) - beside(a.fromMs);
    let leftMs = onMs;
    for (const quarter of quarters.sort(first)) {
      if (leftMs <= 0) break;
      const toMs = Math.min(quarter.toMs, quarter.fromMs + leftMs);
      pieces.push({ fromMs: quarter.fromMs, toMs, powerW: (joule / onMs) * 1000 });
      leftMs -= toMs - quarter.fromMs;
    }
  }
  return {
    startMs: Float64Array.from(pieces, ({ fromMs }) => fromMs),
    endMs: Float64Array.from(pieces, ({ toMs }) => toMs),
    powerW: Float64Array.from(pieces, ({ powerW }) => powerW),
  };
}

/** A stretch cut at full quarter hours. */
function quartersOf({ fromMs, toMs }: Span): Span[] {
  const out: Span[] = [];
  for (let at = fromMs; at < toMs; ) {
    const next = Math.min(toMs, (Math.floor(at / DEMAND_MS) + 1) * DEMAND_MS);
    out.push({ fromMs: at, toMs: next });
    at = next;
  }
  return out;
}
