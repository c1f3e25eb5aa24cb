import type { Column, Table } from '../../report/page.ts';
import { capital } from '../words.ts';
import { agreementOf, DOMAINS, type Domain, groupsOf, misfitOf, type PublishedCheck } from './published-check.ts';

const NO_ANSWER = 'The source leaves out what its number comes from, so the kit has no answer to hold against it.';

const NUMBERS: readonly Column[] = [
  { key: 'rows', label: 'Values', quantity: 'count' },
  { key: 'agree', label: 'Reproduced', quantity: 'count' },
  { key: 'marked', label: 'Marked', quantity: 'count' },
  { key: 'median', label: 'Median difference', quantity: 'misfit' },
  { key: 'worst', label: 'Largest difference', quantity: 'misfit' },
  { key: 'unit', label: 'Printed unit', quantity: null },
];

function agreementRow(name: string, checks: readonly PublishedCheck[]) {
  const { rows, agree, marked, medianMisfit, worstMisfit } = agreementOf(checks);
  const missing = { value: null, why: NO_ANSWER };
  return {
    name,
    rows,
    agree,
    marked,
    median: medianMisfit ?? missing,
    worst: worstMisfit ?? missing,
    unit: checks[0].unit,
  };
}

/** Agreement by group and unit, in printed units. */
export function agreementTable(id: string, caption: string, checks: readonly PublishedCheck[]): Table {
  const groups = groupsOf(checks, (check) => `${check.group} ${check.unit} ${check.provenance}`);
  return {
    id,
    caption,
    columns: [{ key: 'name', label: 'What was held against the record', quantity: null }, ...NUMBERS],
    rows: [...groups.values()].map((of) => agreementRow(of[0].group, of)),
    empty: 'no published value is known here',
    folded: true,
  };
}

/** One line a room of the record: how many agree, how many are marked. Differences of several units have no sum. */
export function domainTable(checks: readonly PublishedCheck[]): Table {
  const count = (of: readonly PublishedCheck[]) => {
    const { rows, agree, marked, answered } = agreementOf(of);
    return { rows, agree, marked, unanswered: rows - answered };
  };
  return {
    id: 'domains',
    caption: 'Values read at their source, and whether the kit reproduces them',
    columns: [
      { key: 'name', label: 'Of', quantity: null },
      { key: 'rows', label: 'Values', quantity: 'count' },
      { key: 'agree', label: 'Reproduced', quantity: 'count' },
      { key: 'marked', label: 'Marked as not reproduced', quantity: 'count' },
      { key: 'unanswered', label: 'Without an answer', quantity: 'count' },
    ],
    rows: [...groupsOf(checks, (check) => check.domain)].map(([domain, of]) => ({
      name: DOMAINS[domain as Domain],
      ...count(of),
    })),
    total: { name: 'All', ...count(checks) },
  };
}

/** Rows that the kit is not expected to give, alike ones together, with the reason as it stands in the reference file. */
export function markedTable(checks: readonly PublishedCheck[]): Table {
  const marked = checks.filter((check) => check.misfit !== '');
  const missing = { value: null, why: NO_ANSWER };
  return {
    id: 'marked',
    caption: 'Values that the kit does not reproduce, with the reason',
    columns: [
      { key: 'name', label: 'Of', quantity: null },
      { key: 'printed', label: 'Printed', quantity: null },
      { key: 'ours', label: 'The kit', quantity: 'number' },
      { key: 'off', label: 'Difference', quantity: 'misfit' },
      { key: 'why', label: 'Why', quantity: null },
    ],
    rows: marked.map((check) => ({
      name: `${check.group}${check.at === '' ? '' : `: ${check.at}`}`,
      printed: `${check.printed} ${check.unit}`,
      ours: check.ours ?? missing,
      off: misfitOf(check) ?? missing,
      why: capital(check.misfit),
    })),
    folded: true,
  };
}

/** Where the values were read. */
export function recordSourcesTable(checks: readonly PublishedCheck[]): Table {
  return {
    id: 'record-sources',
    caption: 'Where the values of the record come from',
    columns: [
      { key: 'source', label: 'Source', quantity: null },
      { key: 'of', label: 'Of', quantity: null },
      { key: 'rows', label: 'Values', quantity: 'count' },
      { key: 'provenance', label: 'How known', quantity: null },
    ],
    rows: [...groupsOf(checks, (check) => `${check.source} ${check.domain} ${check.provenance}`).values()].map(
      (of) => ({
        source: of[0].source,
        of: DOMAINS[of[0].domain],
        rows: of.length,
        provenance: { seen: 'read at the source', memory: 'recalled', computed: 'reckoned by hand' }[of[0].provenance],
      }),
    ),
    folded: true,
  };
}
