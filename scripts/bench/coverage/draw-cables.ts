import type { Random } from '../../sample/random.ts';
import { between } from './chance.ts';
import type { CableDraw, ColumnDraw } from './plan.ts';

/** One to seven cables, in one or two circles, some with one in the middle, some with sensors at uneven heights or above the grain. */
export function drawCables(random: Random, count: number, radiusM: number, depthM: number): CableDraw[] {
  const uneven = random.uniform() < 0.4;
  const centre = count > 2 ? random.uniform() < 0.7 : random.uniform() < 0.5;
  const ring = between(random, 0.5, 0.75) * radiusM;
  const turn = between(random, 0, 360);
  const above = random.uniform() < 0.15;
  return Array.from({ length: count }, (_, c) => {
    const atCentre = centre && c === 0;
    const inner = count > 5 && (c === 1 || c === 2);
    const fromCentreM = atCentre ? 0 : count === 1 ? between(random, 0, 0.6) * radiusM : inner ? 0.35 * radiusM : ring;
    const heightsM: number[] = [];
    const gap = between(random, 0.8, 1.4);
    let z = between(random, 0.3, 0.9);
    while (z < depthM - 0.1 || (above && heightsM.length > 0 && heightsM[heightsM.length - 1] < depthM)) {
      heightsM.push(round(z, 2));
      z += uneven ? gap * between(random, 0.6, 1.4) : gap;
    }
    const bearingDeg = Math.round((turn + (360 * c) / count + between(random, -15, 15) + 360) % 360);
    return { id: `C${c + 1}`, fromCentreM: round(fromCentreM, 2), bearingDeg, heightsM };
  });
}

/**
 * The core, four pieces around it and six along the wall. Air: a core that gets less (or, seldom, more), a lean to one side,
 * and unevenness of its own in every piece.
 */
export function drawColumns(random: Random, radiusM: number): ColumnDraw[] {
  const core = between(random, 0.15, 0.4) * radiusM;
  const middle = (core + radiusM) / 2;
  const lack = weightedLack(random);
  const unevenness = between(random, 0.03, 0.12);
  const lean = between(random, 0, 0.1);
  const towards = between(random, 0, 2 * Math.PI);
  const rim = 0.05 * random.normal();
  return [
    { fromM: 0, toM: core, parts: 1 },
    { fromM: core, toM: middle, parts: 4 },
    { fromM: middle, toM: radiusM, parts: 6 },
  ].flatMap(({ fromM, toM, parts }) =>
    Array.from({ length: parts }, (_, part) => {
      const angle = (2 * Math.PI * (part + 0.5)) / parts;
      const side = parts === 1 ? 0 : ((lean * (fromM + toM)) / 2 / radiusM) * Math.cos(angle - towards);
      const ringOf = parts === 1 ? -lack : parts === 6 ? rim : 0;
      const air = Math.max(0.3, (1 + side + unevenness * random.normal()) * (1 + ringOf));
      return { fromM, toM, parts, part, air };
    }),
  );
}

function weightedLack(random: Random): number {
  return random.uniform() < 0.15 ? -between(random, 0, 0.1) : between(random, 0, 0.45);
}

/** The piece that a cable hangs in. */
export function columnOf(columns: readonly ColumnDraw[], cable: CableDraw): number {
  const found = columns.findIndex(
    ({ fromM, toM, parts, part }) =>
      cable.fromCentreM >= fromM && cable.fromCentreM < toM && Math.floor((cable.bearingDeg / 360) * parts) === part,
  );
  return found < 0 ? columns.length - 1 : found;
}

export const round = (value: number, digits: number): number => Number(value.toFixed(digits));
