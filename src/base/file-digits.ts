/** Figures that numbers leave the kit with: far below any interval, above the noise of the last bit. */
const FIGURES = 7;

/**
 * A number as files for programs carry it. Pages and tables round from here too, so that rounding a number of
 * `summary.json` gives the digits of the page.
 */
export function fileDigits(value: number): number {
  return Number(value.toPrecision(FIGURES));
}
