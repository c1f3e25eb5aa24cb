import type { Formula } from '../../base/formula.ts';
import type { Entry } from '../../report/page.ts';
import type { Units } from '../../report/units.ts';
import { counted } from '../words.ts';
import { equationText, greekText } from './equation-text.ts';
import { agreementOf, groupsOf, type PublishedCheck } from './published-check.ts';
import type { PublishedRecord } from './published-record.ts';
import { sourceText } from './source-text.ts';

// A difference between percentages is told in points.
const OF_DIFFERENCES: Readonly<Record<string, string>> = { '% wb': 'points', '%': 'points' };

/** How well a formula agrees with the record: a line for each unit and provenance. */
function recordLines(checks: readonly PublishedCheck[], units: Units): string[] {
  if (checks.length === 0) return ['Record: no published value is held against it.'];
  const kinds = groupsOf(checks, (check) => `${check.unit} ${check.provenance}`);
  return [...kinds.values()].map((of) => {
    const { rows, answered, agree, marked, medianMisfit, worstMisfit } = agreementOf(of);
    const { provenance } = of[0];
    const unit = OF_DIFFERENCES[of[0].unit] ?? of[0].unit;
    const kind = { seen: 'published', memory: 'recalled', computed: 'hand-reckoned' }[provenance];
    const parts = [`${agree} of ${counted(rows, `${kind} value`)} reproduced within what is printed`];
    if (marked > 0) parts.push(`${marked} marked with the reason in the tables of the record`);
    if (answered < rows) parts.push(`${rows - answered} without an answer`);
    if (medianMisfit !== null && worstMisfit !== null) {
      const said = (misfit: number) => units.number('misfit', misfit);
      parts.push(
        answered === 1
          ? `off by ${said(worstMisfit)} ${unit}`
          : `differences ${said(medianMisfit)} ${unit} in the median, ${said(worstMisfit)} at most`,
      );
    }
    return `Record: ${parts.join('; ')}.`;
  });
}

/**
 * A formula with its equations, symbols, sources and record.
 *
 * @param record  all of it; the formula's own rows are taken
 * @throws RangeError for a source that is not in the bibliography
 */
export function formulaEntry(formula: Formula, record: PublishedRecord, units: Units): Entry {
  const sources = formula.sources.map(sourceText).join('. ');
  return {
    id: `formula-${formula.id}`,
    term: formula.title,
    text: '',
    code: formula.equations.map(equationText),
    details: [
      greekText(formula.rule),
      ...(sources === '' ? [] : [`Source: ${sources}.`]),
      ...(record.failure === null
        ? recordLines(
            record.checks.filter((check) => check.formulaId === formula.id),
            units,
          )
        : ['Record: it could not be read.']),
    ],
  };
}
