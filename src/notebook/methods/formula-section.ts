import type { Section } from '../../report/page.ts';
import { section } from '../../report/section.ts';
import type { Units } from '../../report/units.ts';
import { counted } from '../words.ts';
import { formulaEntry } from './formula-entries.ts';
import { FORMULAS } from './formulas.ts';
import type { PublishedRecord } from './published-record.ts';

/** Formulas with their equations, sources and record: those that the season used, or the others, folded. */
export function formulaSection(
  used: ReadonlySet<string>,
  which: 'used' | 'offered',
  record: PublishedRecord,
  units: Units,
): Section {
  const own = FORMULAS.filter((formula) => used.has(formula.id) === (which === 'used'));
  const entries = () => own.map((formula) => formulaEntry(formula, record, units));
  return which === 'used'
    ? section('equations', 'Equations that this review used', () => ({
        lead: `${own.length} of the ${counted(FORMULAS.length, 'equation')} of the kit went into this season’s numbers. Inside, the kit works in SI units and fractions.`,
        entries: entries(),
      }))
    : section('offered', 'Equations that the kit also offers', () => ({
        lead: 'No number of this season hangs on them; they are not printed.',
        printed: false,
        folded: `The other ${counted(own.length, 'equation')}`,
        entries: entries(),
      }));
}
