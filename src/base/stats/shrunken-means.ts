import { mean, median, medianAbsoluteDeviation, probit, sum } from 'simple-statistics';

export interface ShrunkenMean {
  mean: number;
  sd: number;
}

/** By chance one of all places stands so far from the middle in one group of a hundred: farther off it is a place of its own. */
const CHANCE = 0.01;
/** A standard deviation over the median absolute deviation, of normal errors. */
const SD_OF_MAD = 1.4826;

/**
 * What several places measured alike are, each drawn towards the mean of all as far as their scatter is no more than that of the measuring: the
 * highest of many readings is as high partly by chance. Parametric empirical Bayes with equal errors (Morris 1983, J. Am. Stat. Assoc. 78, 47–55;
 * its formulas from memory, held by draws in the test). It takes places of one kind: one that stands farther off than chance brings any of
 * them, a wet pocket in even grain, is left as it reads, as are all of fewer than four.
 *
 * @param values   any unit
 * @param errorSd  of one reading, independent of the others; same unit
 */
export function shrunkenMeans(values: readonly number[], errorSd: number): ShrunkenMean[] {
  const asRead = (value: number) => ({ mean: value, sd: errorSd });
  if (values.length < 4) return values.map(asRead);
  const centre = median([...values]);
  const spread = Math.max(errorSd, SD_OF_MAD * medianAbsoluteDeviation([...values]));
  const within = probit(1 - CHANCE / 2 / values.length) * spread;
  const alike = values.filter((value) => Math.abs(value - centre) <= within);
  const k = alike.length;
  if (k < 4) return values.map(asRead);
  const middle = mean(alike);
  const scatter = sum(alike.map((value) => (value - middle) ** 2));
  const drawn = Math.min((k - 3) / (k - 1), scatter > 0 ? ((k - 3) * errorSd ** 2) / scatter : 1);
  const ofDrawn = (2 * drawn ** 2) / (k - 3);
  return values.map((value) =>
    Math.abs(value - centre) > within
      ? asRead(value)
      : {
          mean: value + drawn * (middle - value),
          sd: Math.sqrt(errorSd ** 2 * (1 - ((k - 1) / k) * drawn) + ofDrawn * (value - middle) ** 2),
        },
  );
}
