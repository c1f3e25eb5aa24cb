import type { FanSpans, RunSource, Span } from '../types.ts';
import type { FanMeters } from './fan-meters.ts';
import { LONG_MS, type MeterIntervals } from './meter.ts';
import { type PlacedEdges, placeEdges } from './meter-edges.ts';
import { type MeterRate, meterRuns } from './meter-runs.ts';
import { contradictions, overlay } from './overlay.ts';
import { resolveByTotals } from './resolve-by-totals.ts';
import { isCoarse } from './running-rate.ts';
import type { SampledSource } from './sampled-sources.ts';
import { fanHoursBetween, spanList, toFanSpans, unknownHoursBetween } from './spans.ts';
import { middle } from './usual-interval.ts';

const HOUR_MS = 3_600_000;
const RUN_TIME_RATE: MeterRate = { perSecond: 1, slack: 0.02 };

/** When a fan ran, by all of its logs together. */
export interface FanRuns {
  /** power only where a sampled log told it */
  spans: FanSpans;
  runsFrom: RunSource | null;
  /** standard error of a start or stop that samples told, ms; 0 where a meter placed them */
  edgeMs: number;
  /** ms UTC of the best log's starts and stops that a meter read with it has judged */
  judgedMs: ReadonlySet<number>;
  /** true: an energy meter placed starts and stops */
  byEnergyMeter: boolean;
  /** stretches whose hours are known but not when in them they were */
  spread: Span[];
  /** those of them whose hours an energy meter told, by its pace; a run-time meter counts them itself */
  byPace: Span[];
  /** whole sentences */
  how: string[];
  notes: string[];
}

/**
 * A fan's runs by the best log there is; what it leaves unknown the next ones fill.
 *
 * @param sources  its sampled columns, best first
 */
export function fanRuns(sources: readonly SampledSource[], meters: FanMeters): FanRuns {
  const { energy, runTime, metered, perSecond, paceHow } = meters;
  const notes: string[] = [];
  const how: string[] = [];
  const byMeter = runTime.advance.length > 0 ? 'run_hours' : energy.advance.length > 0 ? 'meter' : null;
  const runsFrom: RunSource | null = sources.length > 0 ? sources[0].name : byMeter;
  const byRunTime = meterRuns(runTime, RUN_TIME_RATE, runsFrom === 'run_hours');
  const energyRate = { perSecond, slack: 0.06 };
  const byEnergy = meterRuns(energy, energyRate, runsFrom === 'meter');
  const counted: Span[] = [...byRunTime.spread];
  const byPace: Span[] = [...byEnergy.spread];
  let spans: FanSpans = toFanSpans(spanList());
  let edgeMs = 0;
  let edgesFrom: string | null = null;
  let judgedMs: ReadonlySet<number> = new Set();
  if (sources.length > 0) {
    how.push(sources[0].how);
    notes.push(...sources[0].notes);
    const set = placed(sources[0], runTime, energy, energyRate);
    if (set !== null) how.push(`Starts and stops are placed between samples by the ${set.by}.`);
    edgesFrom = set?.by ?? null;
    judgedMs = set?.judgedMs ?? judgedMs;
    spans = set?.spans ?? sources[0].spans;
    edgeMs = set === null ? sources[0].intervalMs / Math.sqrt(12) : 0;
    for (const other of sources.slice(1)) spans = overlay(spans, other.spans);
    // A meter read once a day says full of a day that lacks an hour: it contradicts nothing.
    const dense = middle(energy.endMs.map((end, i) => end - energy.startMs[i])) <= LONG_MS;
    const died = dense ? contradictions(spans, byEnergy.spans, Math.max(HOUR_MS, 3 * sources[0].intervalMs)) : [];
    if (died.length > 0) {
      const before = fanHoursBetween(spans);
      spans = overlay(spans, byEnergy.spans, died);
      notes.push(
        `The ${sources[0].label} said off for ${round(fanHoursBetween(spans) - before)} h while the energy meter ran at running power: that sensor died or was cut off, and the meter is taken instead.`,
      );
    }
  }
  const unknownBefore = unknownHoursBetween(spans);
  for (const [meter, runs, pace, spread] of [
    [runTime, byRunTime, 1, counted],
    [energy, byEnergy, perSecond, byPace],
  ] as const) {
    if (meter.advance.length === 0) continue;
    if (sources.length > 0) spans = resolveByTotals(spans, meter, pace, spread);
    spans = overlay(spans, runs.spans);
  }
  if (runsFrom === 'run_hours') how.push('Hours from the run-time meter.');
  if (runsFrom === 'meter') {
    how.push(`On when the energy meter advances at running power (${paceHow}).`);
    if (Number.isNaN(metered) && byPace.length > 0) {
      notes.push(
        'The meter is read too seldom to show the power of the running fan: the energy stands, the hours hang on the nameplate and may be a fifth off.',
      );
    }
    if (!isCoarse(energy, perSecond)) edgeMs = 0;
  }
  const resolved = unknownBefore - unknownHoursBetween(spans);
  if (resolved > 0.05) how.push(`A meter tells ${round(resolved)} h that the other log is silent about.`);
  const byEnergyMeter = runsFrom === 'meter' || edgesFrom === 'energy meter';
  return { spans, runsFrom, edgeMs, judgedMs, byEnergyMeter, spread: [...counted, ...byPace], byPace, how, notes };
}

/** Starts and stops of the best sampled log, set within their sampling interval by a meter read with it; null without one. */
function placed(
  source: SampledSource,
  runTime: MeterIntervals,
  energy: MeterIntervals,
  rate: MeterRate,
): (PlacedEdges & { by: string }) | null {
  for (const [meter, pace, name] of [
    [runTime, RUN_TIME_RATE, 'run-time meter'],
    [energy, rate, 'energy meter'],
  ] as const) {
    if (meter.advance.length === 0) continue;
    const usual = middle(meter.endMs.map((end, i) => end - meter.startMs[i]));
    if (usual > Math.min(LONG_MS, 1.5 * source.intervalMs)) continue;
    const edges = placeEdges(source.spans, meter, pace);
    if (edges !== null) return { ...edges, by: name };
  }
  return null;
}

function round(value: number): string {
  return String(Number(value.toFixed(1)));
}
