import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { PLAIN, type Scenario } from './scenario.ts';

const AIRFLOWS = [0.05, 0.1, 0.2, 0.35, 0.5, 0.8, 1.0, 1.2];

/** How a fan is run, by hours from the fan's first start and of the day (hour 0 is noon); `onShare` of the time. */
export interface Running {
  name: string;
  onShare: number;
  onAt: (hour: number, draw: (from: number, to: number) => number) => boolean;
}

export const CONTINUOUS: Running = { name: 'continuous', onShare: 1, onAt: () => true };
/** From ten in the evening to six in the morning. */
export const NIGHT_ONLY: Running = {
  name: 'night-only',
  onShare: 1 / 3,
  onAt: (hour) => hour % 24 >= 10 && hour % 24 < 18,
};

/** On and off by the half-day's chance, as a humidity limit switches it: rests of up to two and a half days. */
export function choppy(seed: number): Running {
  const random = xoroshiro128plus(seed);
  let last = false;
  let off = 0;
  const states = Array.from({ length: 4000 }, () => {
    last = off >= 10 || uniformFloat64(random) < (last ? 0.75 : 0.35);
    off = last ? 0 : off + 1;
    return last;
  });
  return { name: 'choppy', onShare: 0.5, onAt: (hour) => states[Math.floor(hour / 6)] };
}

/** A season drawn from a seed: airflow, weather, cables of different speeds, logger. */
export function randomScenario(seed: number, running: Running): Scenario {
  const random = xoroshiro128plus(seed * 7919 + 17);
  const draw = (from: number, to: number) => from + (to - from) * uniformFloat64(random);
  const normal = () => Math.sqrt(-2 * Math.log(1 - draw(0, 1))) * Math.cos(2 * Math.PI * draw(0, 1));
  const cfmPerBushel = AIRFLOWS[seed % AIRFLOWS.length];
  const rulePart = draw(0.6, 1);
  const transitH = (15 / cfmPerBushel) * rulePart;
  const clockH = (draw(1.2, 2.5) * transitH + 20) / running.onShare;
  const fanFromH = 20 + Math.floor(draw(0, 24));
  const endH = fanFromH + clockH;
  const meanC = draw(-2, 10);
  const grainC = meanC + draw(7, 16);
  const trend = draw(-0.02, 0) * running.onShare;
  const spell = { k: draw(0, 3), hours: 24 * draw(4, 9), phase: draw(0, 6) };
  return {
    ...PLAIN,
    cfmPerBushel,
    rulePart,
    fanFromH,
    hours: Math.ceil(endH + 60),
    untilH: endH,
    onAt: (hour) => hour < endH && running.onAt(hour, draw),
    grainC: () => grainC,
    airC: (hour) =>
      meanC +
      trend * Math.max(0, hour - fanFromH) +
      spell.k * Math.sin((2 * Math.PI * hour) / spell.hours + spell.phase),
    dailyK: draw(2, 8),
    cableSpeeds: [1, draw(0.8, 1.2), draw(0.6, 1)],
    layers: Math.round(draw(40, 100)),
    logEveryH: [1, 2, 3, 4, 6][Math.floor(draw(0, 5))],
    noiseK: draw(0, 0.3),
    quantumK: draw(0, 1) < 0.5 ? 5 / 9 : 0.1,
    normal,
  };
}
