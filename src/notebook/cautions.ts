/** Said wherever a page could send somebody to a bin. */
const ALWAYS = [
  'Flowing grain holds a person in seconds and buries within a minute. No one enters a bin alone, or with any unloading or stirring equipment able to start; crusts and wall build-up collapse.',
  'Fans on a controller start without warning. Lock out and tag the disconnect before you reach into a fan, a plenum or a duct.',
  'Roofs and ladders: falls hurt people every year. Read cables and thermostats from the ground where you can.',
  'Electrical work is for licensed people.',
] as const;

const DUST = 'Dust and mould: wear a respirator fit for it (N95 or better) where grain is out of condition.';
const VENTS =
  'Near or below freezing, roof vents can ice over and a running fan can lift the roof: leave a hatch open, and stop fans in snow, freezing rain and fog.';
const FUMIGANT = 'Fumigated grain: no fan and no entry until the licensed applicator has cleared it.';
const PROBE =
  'The figures are estimates. Confirm them by probe and moisture meter before you sell, stop a fan or move grain.';
const WATER =
  'Water is never added to grain (unlawful in the US). Soybeans are conditioned by air alone, and a swelling bed can damage a bin.';

export const CAUTION_SOURCES = ['cfr-1910-147', 'cfr-1910-272'] as const;
export const WATER_SOURCES = ['federal-register-1994-water', 'unl-2022-conditioning'] as const;

/** The cautions of a page; `conditioning` when a bin was run to take up moisture. */
export function cautionsFor(conditioning = false): string[] {
  return [PROBE, ...ALWAYS, VENTS, DUST, FUMIGANT, ...(conditioning ? [WATER] : [])];
}
