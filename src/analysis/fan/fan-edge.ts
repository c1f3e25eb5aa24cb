import { FAN_ON, type FanSpans } from '../types.ts';
import { isEdge } from './edge-windows.ts';

/** A start or stop of one fan, somewhere within its window. */
export interface Edge {
  fan: number;
  /** span that begins there */
  k: number;
  fromMs: number;
  toMs: number;
  /** true: anywhere within the window alike; false: a meter placed it in the middle, give or take a step */
  sampled: boolean;
}

/** A fan's starts (`on`) or stops, rising. */
export function edgesOf(spans: FanSpans, fan: number, on: boolean): Edge[] {
  const edges: Edge[] = [];
  for (let k = 1; k < spans.state.length; k++) {
    if (!isEdge(spans, k) || (spans.state[k] === FAN_ON) !== on) continue;
    const ms = spans.startMs[k];
    const fromMs = spans.startFromMs?.[k] ?? ms;
    const toMs = spans.startToMs?.[k] ?? ms;
    edges.push({ fan, k, fromMs, toMs, sampled: toMs === ms && fromMs < ms });
  }
  return edges;
}

export const middleOf = ({ fromMs, toMs }: Edge) => (fromMs + toMs) / 2;
export const widthOf = ({ fromMs, toMs }: Edge) => toMs - fromMs;
