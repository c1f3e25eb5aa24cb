import { describe, expect, it } from 'vitest';
import type { BinReview, SeasonReview } from '../../src/analysis/types.ts';
import { estimate, withheld } from '../../src/base/estimate.ts';
import { allFindings } from '../../src/notebook/all-findings.ts';
import { contradictedBins } from '../../src/notebook/contradicted.ts';
import { Units } from '../../src/report/units.ts';
import type { LoadedSeason } from '../../src/season/loaded.ts';

const units = new Units('us', 'USD', 'America/Chicago');
const moment = (name: 'start' | 'end', points: number, agree: boolean | null, expected = 0) => ({
  moment: name,
  difference: estimate(points, points - 0.5, points + 0.5),
  expected: { value: expected, interval: [0, 0], why: null },
  agree,
});
const bin = (start: ReturnType<typeof moment> | null, end: ReturnType<typeof moment> | null, from = 'sensors') =>
  ({
    bin: { name: 'Lane', grain: { unloadedMs: null } },
    grain: { notes: [] },
    moisture: {
      start: { from },
      end: { from },
      why: null,
      tickets: { start, end, sharedBias: withheld('-'), drift: withheld('-'), likely: [], why: null },
    },
  }) as unknown as BinReview;

describe('bins whose sensors the scale tickets contradict', () => {
  it('are warned of, with by how much, at each moment', () => {
    const [warned, ...more] = contradictedBins([bin(moment('start', 3.2, false), moment('end', -2.1, false))], units);
    expect(more).toEqual([]);
    expect(warned).toContain(
      'Lane: the sensors read 3.2 points (2.7 to 3.7) wetter at the start and 2.1 points (1.6 to 2.6) drier at the end than the scale tickets,',
    );
    expect(warned).toContain('costs per point');
  });

  it('are warned of where the tickets tell both moments because they contradict', () => {
    const one = bin(moment('start', 23.6, false), null, 'tickets');
    const [warned] = contradictedBins([{ ...one, moisture: { ...one.moisture, ticketsAlone: true } }], units);
    expect(warned).toContain('23.6 points (23.1 to 24.1) wetter at the start than the scale tickets');
    expect(warned).toContain('points are those of the tickets alone; what is told by day, by height or by cable leans');
  });

  it('are warned of in other words where the change is withheld for it', () => {
    const one = bin(moment('start', 6.8, false), null);
    const moisture = { ...one.moisture, why: 'Contradicted.', overdryingLossBushels: withheld('Contradicted.') };
    const [warned] = contradictedBins([{ ...one, moisture }], units);
    expect(warned).toContain('Its points, costs per point and over-drying are not told: see Moisture');
  });

  it('are warned of where the loads weigh other than depth and test weight tell', () => {
    const one = bin(null, null);
    const notes = [
      'The scale tickets are not used for the weight: their 9 loads weigh 33 % less than depth and test weight tell',
    ];
    const [warned] = contradictedBins([{ ...one, grain: { ...one.grain, notes, contradicted: true } }], units);
    expect(warned).toMatch(/^Lane: The scale tickets .* 33 % less .* stand on depth and test weight: check these/);
    expect(contradictedBins([{ ...one, grain: { ...one.grain, notes } }], units)).toEqual([]);
  });

  it('are warned of where the temperatures at rest speak against the stated depth, and it is a finding to act on', () => {
    const one = bin(null, null);
    const surface = { depthM: estimate(3.5, 3.2, 3.8), statedM: 4.6, cables: 2, contradicted: true };
    const doubted = (from: 'tickets' | 'volume', contradicted = true) =>
      ({ ...one, grain: { ...one.grain, from }, surface: { ...surface, contradicted } }) as BinReview;
    const [byVolume] = contradictedBins([doubted('volume')], units);
    expect(byVolume).toContain('as if its surface lay at 3.5 m (11.5 ft), between 3.2 m (10.5 ft) and 3.8 m (12.5 ft)');
    expect(byVolume).toContain('Its bushels, what is told for each, its water and airflow stand on the stated depth');
    expect(contradictedBins([doubted('tickets')], units)[0]).not.toContain('bushels');
    expect(contradictedBins([doubted('volume', false)], units)).toEqual([]);

    const found = (contradicted: boolean) =>
      allFindings(
        { load: { findings: [] }, season: { bins: [] } } as unknown as LoadedSeason,
        { bins: [doubted('volume', contradicted)], fans: [] } as unknown as SeasonReview,
      );
    expect(found(true)).toMatchObject([{ kind: 'contradicted', where: 'depth of the grain' }]);
    expect(found(true)[0].advice).toContain('without going in');
    expect(found(false)).toEqual([]);

    // A year-end review comes when the grain is out: nobody is sent up a ladder to an empty bin.
    const of = (review: BinReview) =>
      allFindings(
        { load: { findings: [] }, season: { bins: [] } } as unknown as LoadedSeason,
        { bins: [review], fans: [] } as unknown as SeasonReview,
      )[0].advice;
    const lane = doubted('volume');
    const empty = of({ ...lane, bin: { ...lane.bin, grain: { ...lane.bin.grain, unloadedMs: 1 } } });
    expect(empty).toContain('The grain is out by now');
    expect(empty).not.toContain('hatch');
    expect(empty).toContain('bushels');
    expect(of(doubted('tickets'))).not.toContain('bushels');
  });

  it('are none where they agree, where nobody can tell, and where nothing leans on sensors', () => {
    expect(contradictedBins([bin(moment('start', 0.2, true), moment('end', 0.9, null))], units)).toEqual([]);
    expect(contradictedBins([bin(moment('start', 3.2, false), null, 'tickets')], units)).toEqual([]);
    expect(contradictedBins([bin(null, null)], units)).toEqual([]);
    // 0.6 beyond what the fans made, within half as much again of the interval's half-width.
    expect(contradictedBins([bin(moment('start', -1.4, false, -2), null)], units)).toEqual([]);
    expect(contradictedBins([bin(moment('start', 0, false, -2), null)], units)[0]).toContain(
      '2.0 points (1.5 to 2.5) wetter',
    );
  });
});
