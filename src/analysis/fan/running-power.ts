import { type EnergySource, FAN_ON, type FanSpans } from '../types.ts';
import type { SampledSource } from './sampled-sources.ts';
import { middle } from './usual-interval.ts';

/**
 * Power for every on span that has none yet: the log's usual, the meter's usual, else the nameplate's.
 *
 * @param metered  the energy meter's advance a second while the fan runs, W; NaN where it does not show it
 * @returns        also how, for a sentence, and the formula of a log's own power, a whole sentence
 */
export function runningPower(
  spans: FanSpans,
  sources: readonly SampledSource[],
  metered: number,
  nominal: { powerW: number; how: string },
): { spans: FanSpans; from: EnergySource; how: string; formula: string | null } {
  const withOwn = sources.find((source) => source.powerFrom !== null);
  const own = spans.powerW.filter((power, k) => spans.state[k] === FAN_ON && !Number.isNaN(power));
  const usual = middle(own);
  const fill = !Number.isNaN(usual) ? usual : !Number.isNaN(metered) ? metered : nominal.powerW;
  const powerW = spans.powerW.map((power, k) => (spans.state[k] === FAN_ON && Number.isNaN(power) ? fill : power));
  const from: EnergySource = withOwn?.powerFrom ?? (Number.isNaN(metered) ? 'nameplate' : 'meter');
  const words =
    from === 'nameplate'
      ? nominal.how
      : from === 'meter'
        ? 'at the usual power by the meter'
        : `from ${withOwn?.label}`;
  return { spans: { ...spans, powerW }, from, how: words, formula: withOwn?.powerHow ?? null };
}
