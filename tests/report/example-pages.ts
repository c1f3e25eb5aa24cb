import binOrRule from '../../notebooks/bin-or-rule.ts';
import binsCompared from '../../notebooks/bins-compared.ts';
import condition from '../../notebooks/condition.ts';
import dataQuality from '../../notebooks/data-quality.ts';
import fanEnergy from '../../notebooks/fan-energy.ts';
import fronts from '../../notebooks/fronts.ts';
import methods from '../../notebooks/methods.ts';
import moisture from '../../notebooks/moisture.ts';
import overview from '../../notebooks/overview.ts';
import strategies from '../../notebooks/strategies.ts';
import type { NotebookInput } from '../../src/notebook.ts';

export const NOTEBOOKS = [
  overview,
  fanEnergy,
  moisture,
  fronts,
  binsCompared,
  strategies,
  binOrRule,
  condition,
  dataQuality,
  methods,
];

export function examplePages(input: NotebookInput) {
  return NOTEBOOKS.map((notebook) => notebook.page(input));
}
