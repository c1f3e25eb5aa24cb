import { describe, expect, it } from 'vitest';
import { binFronts } from '../../../src/analysis/fronts/bin-fronts.ts';
import { conduct } from '../../../src/simulation/bed/conduct.ts';
import { passAir } from '../../../src/simulation/bed/pass-air.ts';
import { HOUR_MS, inventedBin, START_MS, seriesOf, spansOf } from '../../analysis/fronts/invented-bin.ts';
import { trueArrival } from '../../analysis/fronts/true-arrival.ts';
import { filledBed, ratioOf } from './filled-bed.ts';

const DEPTH_M = 6.5;
const LAYERS = 65;
const HEIGHTS_M = [0.95, 1.95, 2.95, 3.95, 4.95, 5.95];
const START_H = 24;

interface Story {
  grainC: number;
  airC: (hour: number) => number;
  on: (hour: number) => boolean;
  hours: number;
  kgM2: number;
  air?: 'up' | 'down';
}

/** Cables of sensors in a simulated bin, an hour a reading; fan, plenum; then what the kit's front analysis says of it. */
function told({ grainC, airC, on, hours, kgM2, air = 'up' }: Story) {
  const bed = filledBed(grainC, 0.15, { depthM: DEPTH_M, layers: LAYERS, air });
  const tempC = HEIGHTS_M.map(() => new Float64Array(hours + 1));
  const runs = new Uint8Array(hours + 1);
  for (let hour = 0; hour <= hours; hour++) {
    HEIGHTS_M.forEach((m, i) => {
      tempC[i][hour] = bed.tempC[Math.floor(m / (DEPTH_M / LAYERS))];
    });
    runs[hour] = hour >= START_H && on(hour) ? 1 : 0;
    if (runs[hour] === 1) passAir(bed, kgM2, 3600, airC(hour), ratioOf(Math.min(airC(hour), 11), 0.7));
    else conduct(bed, 3600, { plenumC: Number.NaN, headspaceC: airC(hour), wallC: Number.NaN });
  }
  const times = Array.from(runs.keys(), (hour) => START_MS + hour * HOUR_MS);
  const log = { timeMs: Float64Array.from(times), tempC: Float64Array.from(times, (_, hour) => airC(hour)) };
  const none = { timeMs: new Float64Array(0), tempC: new Float64Array(0) };
  const { campaigns } = binFronts({
    bin: inventedBin(HEIGHTS_M, 1, air, DEPTH_M),
    sensors: HEIGHTS_M.map((m, i) => seriesOf('C1', i + 1, m, times, [...tempC[i]])),
    fan: spansOf(runs, 1),
    plenum: air === 'up' ? log : none,
    weather: air === 'up' ? none : log,
  });
  const [first] = campaigns;
  const sign = first.kind === 'cooling' ? -1 : 1;
  const truth = HEIGHTS_M.map((_, i) => trueArrival({ stepH: 1, on: runs, tempC }, i, START_H, hours, sign));
  return { campaigns, arrivals: first.arrivals.map(({ fanHours }) => fanHours), truth };
}

/** About 0.25 cfm/bu through this depth, kg/m2 in an hour. */
const KG_M2 = 100;

describe('the kit’s own front analysis on cables in a simulated bin', () => {
  const stories: (Partial<Story> & Pick<Story, 'grainC' | 'airC' | 'on'> & { name: string })[] = [
    { name: 'cooling, the fan always on', grainC: 24, airC: () => 10, on: () => true },
    { name: 'warming, the fan always on', grainC: 3, airC: () => 14, on: () => true },
    { name: 'cooling, air drawn down', grainC: 24, airC: () => 10, on: () => true, air: 'down' },
    {
      name: 'cooling, eight hours a night',
      grainC: 24,
      airC: () => 8,
      on: (hour: number) => hour % 24 < 8,
      hours: 500,
    },
    {
      name: 'cooling under a daily wave of 6 K',
      grainC: 26,
      airC: (hour) => 10 + 3 * Math.sin((2 * Math.PI * hour) / 24),
      on: () => true,
    },
  ];
  it.each(stories)(
    '$name: one campaign, arrivals within three fan hours of the definition on the bed’s own temperatures',
    (story) => {
      const { campaigns, arrivals, truth } = told({ hours: 260, kgM2: KG_M2, ...story });
      expect(campaigns.length).toBeGreaterThanOrEqual(1);
      const known = truth.filter((one) => one !== null);
      expect(known.length).toBeGreaterThanOrEqual(5);
      truth.forEach((hours, i) => {
        if (hours === null) return;
        expect(
          Math.abs((arrivals[i] ?? Number.NaN) - hours),
          `sensor ${i + 1}: ${arrivals[i]}, not ${hours}`,
        ).toBeLessThan(3);
      });
    },
  );
});
