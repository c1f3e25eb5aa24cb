import { describe, expect, it } from 'vitest';
import { binFronts } from '../../src/analysis/fronts/bin-fronts.ts';
import { frontsSummary } from '../../src/analysis/fronts/fronts-summary.ts';
import { seasonFront } from '../../src/analysis/fronts/season-front.ts';
import { arrivalFigures } from '../../src/notebook/front-figures.ts';
import { placedNotes } from '../../src/notebook/front-placed.ts';
import { arrivalTable } from '../../src/notebook/front-tables.ts';
import { Units } from '../../src/report/units.ts';
import { HOUR_MS, START_MS } from '../analysis/fronts/invented-bin.ts';
import { tell } from '../analysis/fronts/sharp-front.ts';
import { wholeBin } from '../report/example-bin.ts';

const units = new Units('us', 'USD', 'America/Chicago');

// The fourth sensor is silent from hour 40 to 89, the fan on from 24: in the hole the front comes, due after 40 fan hours.
const story = tell({ on: [[24, 144]] });
story.sensors[3].tempFlags.fill(8, 40, 90);
const review = { ...wholeBin(story.bin, 1, false), fronts: binFronts(story) };
const front = seasonFront(review);
const hole = [39, 90].map((hour) => START_MS + hour * HOUR_MS);

describe('an arrival in a hole of the log', () => {
  it('stands in the table with the hole in clock time and in fan hours', () => {
    const { columns, rows } = arrivalTable(front);
    expect(columns.map(({ key }) => key)).toContain('earliest');
    expect(rows[3]).toMatchObject({
      sensor: 'C1 4',
      earliest: hole[0],
      latest: hole[1],
      hours: { interval: [15, 66] },
    });
    expect(rows[2]).toMatchObject({ earliest: null, latest: null });
    const whole = { ...review, fronts: binFronts(tell({ on: [[24, 144]] })) };
    expect(arrivalTable(seasonFront(whole)).columns.map(({ key }) => key)).not.toContain('earliest');
  });
  it('is marked on the map, whose note says what the mark is', () => {
    const [map] = arrivalFigures([front], units);
    const svg = map.draw({ width: 900, narrow: false, idPrefix: 't' });
    expect(svg).toContain('>~40.0<');
    expect(svg).toMatch(/after about 40\.0.h of fan/);
    expect(svg).toContain('>30.0<');
    expect(map.subtitle).toContain('~: readings lack there');
    expect(placedNotes([front])).toEqual([expect.stringMatching(/^Arrivals marked ~/)]);
  });
  it('tells the same in the summary', () => {
    const { fronts } = frontsSummary(review, story.sensors, { name: 'UTC', offsetMs: () => 0 }, null);
    const placed = fronts.filter((one) => one.arrivedInterval !== null);
    expect(placed).toMatchObject([
      {
        sensor: 4,
        fanHoursInterval: [15, 66],
        arrivedInterval: hole.map((ms) => new Date(ms).toISOString()),
        why: null,
      },
    ]);
    expect(placed[0].fanHours).toBeCloseTo(40, 1);
    expect(fronts[2].fanHoursInterval).toEqual([24, 36]);
  });
});
