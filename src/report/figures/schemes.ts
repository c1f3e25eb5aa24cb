import * as Plot from '@observablehq/plot';

/** `rgb(0, 32, 77)` of the library as `#00204d`. */
function hex(colour: string): string {
  if (colour.startsWith('#')) return colour;
  const parts = colour.match(/\d+/g) ?? [];
  return `#${parts
    .slice(0, 3)
    .map((part) => Number(part).toString(16).padStart(2, '0'))
    .join('')}`;
}

function ramp(scheme: 'cividis' | 'ylgnbu'): (share: number) => string {
  const scale = Plot.scale({ color: { type: 'linear', scheme, domain: [0, 1] } });
  return (share) => hex(scale.apply(share));
}

/** Perceptually even maps for data: cividis for temperature, yellow-green-blue (dry pale, wet dark) for moisture. */
export const SCHEMES = { cividis: ramp('cividis'), 'yellow-green-blue': ramp('ylgnbu') } as const;
export type SchemeName = keyof typeof SCHEMES;
