import type { GrainSurface } from './surface-types.ts';

const FT_M = 0.3048;

/** Metres and feet: a page shows the one of its reader. */
const heightSaid = (metres: number): string => `${metres.toFixed(1)} m (${(metres / FT_M).toFixed(1)} ft)`;

/** How far the stated depth lies from what the temperatures say, a whole sentence; null where they leave room for it. */
export function contradictionSaid(surface: GrainSurface | undefined): string | null {
  if (surface === undefined) return null;
  const { depthM, statedM, contradicted } = surface;
  const { value, interval } = depthM;
  if (!contradicted || statedM === null || value === null || interval === null) return null;
  const [low, high] = interval;
  return `While the fans rested, the weather came into the grain as if its surface lay at ${heightSaid(value)}, between ${heightSaid(low)} and ${heightSaid(high)}, not at the stated ${heightSaid(statedM)}.`;
}
