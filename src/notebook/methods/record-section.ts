import type { Section } from '../../report/page.ts';
import { section } from '../../report/section.ts';
import type { Units } from '../../report/units.ts';
import { counted } from '../words.ts';
import { agreementTable, domainTable, markedTable, recordSourcesTable } from './agreement-tables.ts';
import { DOMAINS, type Domain } from './published-check.ts';
import type { PublishedRecord } from './published-record.ts';

/** How well the equations agree with the published record, worked out as the page is made. */
export function recordSection({ checks, failure }: PublishedRecord, units: Units): Section {
  return section('record', 'How well the equations agree with the record', () => {
    if (failure !== null) throw new Error(failure);
    const seen = checks.filter((check) => check.provenance === 'seen');
    const unseen = checks.filter((check) => check.provenance !== 'seen');
    const distinct = new Set(checks.map((check) => `${check.source} ${check.at} ${check.printed}`)).size;
    const again = checks.length - distinct;
    return {
      lead: 'Each value was published by others and is held against the kit anew when this page is made. It counts as reproduced when the kit lies within half of its last printed digit, or within the tolerance that its row states.',
      table: domainTable(seen),
      tables: [
        ...(Object.keys(DOMAINS) as Domain[]).map((domain) =>
          agreementTable(
            `record-${domain}`,
            `${DOMAINS[domain]}: differences in printed units`,
            seen.filter((check) => check.domain === domain),
          ),
        ),
        agreementTable('record-unseen', 'Recalled or reckoned by hand, not read at a source', unseen),
        markedTable(checks, units),
        recordSourcesTable(checks),
      ],
      notes: [
        'The tables by group, of values that are not reproduced and of sources are not printed: they stand on the page and in tables/*.csv.',
        'Added to the printed digit: 0.01 point of moisture for the digits of the isotherms’ constants; 1 % of a static pressure and 2 % of a storage time for constants of three digits; 5 % of a fan power, whose packing and efficiency are assumed.',
        'A marked value is one that the kit is not expected to reproduce: another edition or equation stands behind it, it was rounded, or its source leaves out what it comes from. The differences in the tables count marked values too.',
        ...(again > 0
          ? [`${counted(again, 'row')} hold a published value once more, against another equation or edition.`]
          : []),
      ],
    };
  });
}
