import { describe, expect, it } from 'vitest';
import { relativeFlowByHour } from '../../../src/analysis/model/relative-flow.ts';
import { type BinReview, FAN_OFF, FAN_ON } from '../../../src/analysis/types.ts';
import type { LoadedSeason } from '../../../src/season/loaded.ts';
import { TableBuilder } from '../../../src/season/readers/table-builder.ts';

const H = 3_600_000;
const spansOf = (cuts: readonly number[], states: readonly number[]) => ({
  startMs: Float64Array.from(cuts.slice(0, -1), (hour) => hour * H),
  endMs: Float64Array.from(cuts.slice(1), (hour) => hour * H),
  state: Uint8Array.from(states),
  powerW: new Float64Array(states.length).fill(1000),
});
const loaded = { tables: { plenum: new TableBuilder('plenum').table() } } as unknown as LoadedSeason;
/** The first fan runs for twenty hours, the second from the tenth. */
const first = { fanId: 'F1', spans: spansOf([0, 20], [FAN_ON]) };
const second = { fanId: 'F2', spans: spansOf([0, 10, 20], [FAN_OFF, FAN_ON]) };
const reviewOf = (fans: readonly unknown[]) =>
  ({
    bin: { id: 'B1', airflowFactor: 1.5, grain: { crop: 'corn', depthSteps: [{ fromMs: 0, depthM: 5 }] } },
    fan: { fans, spans: first.spans },
    airflow: { fanSet: 'F1+F2' },
  }) as unknown as BinReview;

describe('airflow hour by hour over that of the fans that ran most', () => {
  it('is what one fan of two gives before the other joins: 0.5 to the power of 0.7, the kit’s assumption', () => {
    const relative = relativeFlowByHour(loaded, reviewOf([first, second]), 0, 20, 5);
    for (const hour of [0, 9]) expect(relative[hour]).toBeCloseTo(0.616, 3);
    for (const hour of [10, 19]) expect(relative[hour]).toBe(1);
  });

  it('is 1 throughout for one fan', () => {
    expect([...relativeFlowByHour(loaded, reviewOf([first]), 0, 3, 5)]).toEqual([1, 1, 1]);
  });
});
