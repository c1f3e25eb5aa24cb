import { expect, it } from 'vitest';
import { binFronts } from '../../../src/analysis/fronts/bin-fronts.ts';
import { HOUR_MS, inventedBin, START_MS, seriesOf, spansOf } from './invented-bin.ts';

it('of two falls of the air the steeper one is told where the first came back', () => {
  // By hand: the fan runs from 24 h on. What comes up at 0.2 m an hour falls from 26 to 22 C in 12 h, is back at 25 C by 24 h and
  // falls to 20 C by 34 h. Ahead 26 C, behind the steepest change 20 C, half-way 23 C: at 28 h, later by the way up. The first
  // fall went through 23 C too, at 9 h, but was back above it from 16 h on.
  const knots: [hour: number, tempC: number][] = [
    [0, 26],
    [12, 22],
    [24, 25],
    [34, 20],
  ];
  const tempOf = (hour: number) => {
    if (hour <= 0) return 26;
    const i = knots.findIndex(([end]) => end >= hour);
    if (i < 0) return 20;
    const [[a, from], [b, to]] = [knots[i - 1], knots[i]];
    return from + ((hour - a) / (b - a)) * (to - from);
  };
  const hours = Array.from({ length: 160 }, (_, hour) => hour);
  const times = hours.map((hour) => START_MS + hour * HOUR_MS);
  const heightsM = [0.5, 1.5, 2.5, 3.5];
  const none = { timeMs: new Float64Array(0), tempC: new Float64Array(0) };
  const { campaigns } = binFronts({
    bin: inventedBin(heightsM),
    sensors: heightsM.map((heightM, i) =>
      seriesOf(
        'C1',
        i + 1,
        heightM,
        times,
        hours.map((hour) => tempOf(hour - 24 - heightM / 0.2)),
      ),
    ),
    fan: spansOf(
      Uint8Array.from({ length: 160 }, (_, hour) => (hour >= 24 && hour < 100 ? 1 : 0)),
      1,
    ),
    plenum: { timeMs: Float64Array.from(times), tempC: Float64Array.from(hours, (hour) => tempOf(hour - 24)) },
    weather: none,
  });
  expect(campaigns[0].kind).toBe('cooling');
  heightsM.forEach((heightM, i) => {
    const { fanHours } = campaigns[0].arrivals[i];
    expect(Math.abs((fanHours ?? Number.NaN) - (28 + heightM / 0.2)), `sensor ${i + 1}`).toBeLessThan(1.5);
  });
});
