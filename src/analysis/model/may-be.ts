import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import { spreadNormals } from '../../base/stats/spread-normals.ts';
import type { BinLog } from './bin-log.ts';
import type { Fit } from './fit-bin.ts';
import type { FitParameters } from './fit-parameters.ts';
import type { FittedValues, MayBe } from './fitted-values.ts';
import { betweenCablesSd } from './grain-between.ts';
import type { PaperMoistures } from './paper-moistures.ts';
import { normalOf, residualSlopes } from './standard-errors.ts';

/** How many are drawn. */
export const DRAWN = 11;
/** Air of the part that has least, where a bed has several: about a standard error of what a fit leaves, relative. */
export const SHORT_REL_SD = 0.15;
/** Beside the fit's own: air between the cables, grain between them, air of the part that has least. */
const BESIDE = 3;

/**
 * Bins that go with the log, spread over what it leaves open: the isotherms that come near, each as often as it weighs, and with each the
 * values and their errors together as the residuals' slopes give them. Runs of a strategy in all of them tell how far it can be told.
 *
 * @param finals     by isotherm, the best first; weights that need not come to 1
 * @param fittedOf   values of a fit as a run needs them
 * @param placeSd    standard error of the bin's airflow over that at its cables, relative
 * @returns          [DRAWN]
 */
export function mayBes<Final extends { fit: Fit; weight: number; model: Parameters<typeof residualSlopes>[0] }>(
  log: BinLog,
  finals: readonly Final[],
  parameters: FitParameters,
  papers: PaperMoistures,
  fittedOf: (final: Final, fit: Fit) => FittedValues,
  placeSd: number,
): MayBe[] {
  const { list } = parameters;
  const points = spreadNormals(DRAWN, list.length + BESIDE);
  const betweenSd = unseenSd(log, papers);
  let next = 0;
  return timesOf(finals.map(({ weight }) => weight)).flatMap((times, k) => {
    const final = finals[k];
    const own = points.slice(next, next + times);
    next += times;
    if (own.length === 0) return [];
    const move = spreadOf(residualSlopes(final.model, final.fit, parameters));
    return own.map((point) => {
      const moved = move(point.slice(0, list.length));
      const values = final.fit.values.map((value, i) =>
        Math.min(list[i].high, Math.max(list[i].low, value + moved[i])),
      );
      const [place, between, short] = point.slice(list.length);
      return {
        fitted: fittedOf(final, final.model.fitAt(values, final.fit.cost)),
        doubt: {
          airFactor: Math.exp(placeSd * place),
          moistureWb: betweenSd * between,
          rateFactor: 1,
          shortFactor: Math.exp(SHORT_REL_SD * short),
        },
      };
    });
  });
}

/** How often each comes among `DRAWN`: by its weight, none more than one off. */
function timesOf(weights: readonly number[]): number[] {
  const all = weights.reduce((sum, one) => sum + one, 0);
  let sum = 0;
  let given = 0;
  return weights.map((weight) => {
    sum += weight;
    const upTo = Math.round((DRAWN * sum) / all);
    const times = upTo - given;
    given = upTo;
    return times;
  });
}

/** From independent standard normals to values that lie off together as a fit's do. */
function spreadOf(slopes: readonly Float64Array[]): (point: readonly number[]) => number[] {
  const { realEigenvalues, eigenvectorMatrix } = new EigenvalueDecomposition(normalOf(slopes), {
    assumeSymmetric: true,
  });
  return (point) => {
    // None is under 1: what was expected of each value before is among the residuals.
    const along = point.map((one, i) => one / Math.sqrt(realEigenvalues[i]));
    return eigenvectorMatrix.mmul(Matrix.columnVector(along)).to1DArray();
  };
}

/** What the mean of the bin may hold more than the grain at its cables, where tickets tell of the whole bin less than without them. */
function unseenSd(log: BinLog, { start }: PaperMoistures): number {
  const between = betweenCablesSd(log);
  return start === null ? between : (between * start.sd) / Math.hypot(between, start.sd);
}
