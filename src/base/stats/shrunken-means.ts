import { mean, sum } from 'simple-statistics';

export interface ShrunkenMean {
  mean: number;
  sd: number;
}

/**
 * What several places measured alike are, each drawn towards the mean of all as far as their scatter is no more than that of the measuring: the
 * highest of many readings is as high partly by chance. Parametric empirical Bayes with equal errors (Morris 1983, J. Am. Stat. Assoc. 78, 47–55;
 * its formulas from memory, held by draws in the test). Of fewer than four the readings stand as they are.
 *
 * @param values   any unit
 * @param errorSd  of one reading, independent of the others; same unit
 */
export function shrunkenMeans(values: readonly number[], errorSd: number): ShrunkenMean[] {
  const k = values.length;
  if (k < 4) return values.map((value) => ({ mean: value, sd: errorSd }));
  const middle = mean([...values]);
  const scatter = sum(values.map((value) => (value - middle) ** 2));
  const drawn = Math.min((k - 3) / (k - 1), scatter > 0 ? ((k - 3) * errorSd ** 2) / scatter : 1);
  const ofDrawn = (2 * drawn ** 2) / (k - 3);
  return values.map((value) => ({
    mean: value + drawn * (middle - value),
    sd: Math.sqrt(errorSd ** 2 * (1 - ((k - 1) / k) * drawn) + ofDrawn * (value - middle) ** 2),
  }));
}
