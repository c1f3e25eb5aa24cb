import { describe, expect, it } from 'vitest';
import { hindsightCsv } from '../../../scripts/review/hindsight-csv.ts';
import type { BinWhatIf } from '../../../src/analysis/what-if/what-if-types.ts';
import { zoneOf } from '../../../src/base/zone.ts';
import { bestInHindsight } from '../../../src/simulation/hindsight/best-in-hindsight.ts';
import { runSeason } from '../../../src/simulation/run/run-season.ts';
import { scheduled } from '../../../src/simulation/strategies/scheduled.ts';
import { invented, smallBin } from '../../simulation/hindsight/small-bin.ts';

const HOUR_MS = 3_600_000;
/** The night of a change of clocks lies within: an hour is told twice, with another offset. */
const START_MS = Date.UTC(2024, 10, 1, 5);

describe('the hours of a schedule that burns fuel', () => {
  it('read back from the file and run again give the cost that the search claims', () => {
    const blower = { heaterK: 5, heaterW: 500, heaterFuelPerHour: 0.25 };
    const spec = smallBin({ ...invented(4, 4.1, 4), startMs: START_MS }, 0.178, 0.164, { blower });
    const found = bestInHindsight(spec);
    if (found === null) throw new Error('no schedule');
    const schedule = { startMs: START_MS, ways: found.ways, logged: new Float64Array(spec.endHour) };
    const csv = hindsightCsv([{ binId: 'B 1, north', schedule } as BinWhatIf], zoneOf('America/Chicago'));
    const rows = String(csv).trimEnd().split('\r\n').slice(1);
    expect(rows).toHaveLength(spec.endHour);
    const share = new Float64Array(spec.endHour);
    const heat = new Uint8Array(spec.endHour);
    for (const row of rows) {
      const [, from, way] = /^"B 1, north",([^,]+),0,([^,]+)$/.exec(row) ?? [];
      const hour = (Date.parse(from) - START_MS) / HOUR_MS;
      share[hour] = way === 'off' ? 0 : 1;
      heat[hour] = way === 'fan and heater' ? 1 : 0;
    }
    expect(heat).toContain(1);
    const { outcome } = runSeason(spec, scheduled('read-back', 'Read back', share, heat));
    expect(outcome.cost).toBeCloseTo(found.cost, 9);
    expect(outcome.heatCost).toBeGreaterThan(0);
    expect(outcome.reachedTarget).toBe(true);
    // Without its heat the same hours leave the grain too wet.
    expect(runSeason(spec, scheduled('fan', 'Fan alone', share)).outcome.reachedTarget).toBe(false);
  });
});
