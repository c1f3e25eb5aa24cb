import type { Column, Table } from '../../report/page.ts';
import type { Units } from '../../report/units.ts';
import { capital } from '../words.ts';
import { unitsText } from './equation-text.ts';
import { agreementOf, DOMAINS, type Domain, groupsOf, type PublishedCheck } from './published-check.ts';

const NO_ANSWER = 'The source leaves out what its number comes from, so the kit has no answer to hold against it.';

const NUMBERS: readonly Column[] = [
  { key: 'rows', label: 'Compared', quantity: 'count' },
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
    folded: 'on screen',
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
      { key: 'rows', label: 'Compared', quantity: 'count' },
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

/** Rows that the kit is not expected to give, those of one group and reason together; the reason as it stands in the reference file. */
export function markedTable(checks: readonly PublishedCheck[], units: Units): Table {
  const marked = checks.filter((check) => check.misfit !== '');
  const oursOf = ({ ours }: PublishedCheck) => (ours === null ? 'no answer' : `kit ${units.number('number', ours)}`);
  const caseOf = (check: PublishedCheck) =>
    `${[check.at, check.printed].filter((part) => part !== '').join(': ')} (${oursOf(check)})`;
  return {
    id: 'marked',
    caption: 'Values that the kit does not reproduce, with the reason',
    columns: [
      { key: 'name', label: 'Of', quantity: null },
      { key: 'rows', label: 'Compared', quantity: 'count' },
      { key: 'cases', label: 'Printed, and what the kit gives', quantity: null },
      { key: 'why', label: 'Why', quantity: null },
    ],
    rows: [...groupsOf(marked, (check) => `${check.group} ${check.unit} ${check.misfit}`).values()].map((of) => ({
      name: of[0].unit === '' ? of[0].group : `${of[0].group}, ${of[0].unit}`,
      rows: of.length,
      cases: of.map(caseOf).join('; '),
      why: capital(unitsText(of[0].misfit)),
    })),
    folded: 'on screen',
  };
}

/** Where the values were read. */
export function recordSourcesTable(checks: readonly PublishedCheck[]): Table {
  const known = { seen: 'read at the source', memory: 'recalled', computed: 'reckoned by hand' };
  return {
    id: 'record-sources',
    caption: 'Where the values of the record come from',
    columns: [
      { key: 'source', label: 'Source', quantity: null },
      { key: 'of', label: 'Of', quantity: null },
      { key: 'rows', label: 'Compared', quantity: 'count' },
      { key: 'known', label: 'How known', quantity: null },
    ],
    rows: [...groupsOf(checks, (check) => `${check.source} ${check.provenance}`).values()].map((of) => ({
      source: of[0].source,
      of: [...new Set(of.map((check) => DOMAINS[check.domain]))].join('; '),
      rows: of.length,
      known: known[of[0].provenance],
    })),
    folded: 'on screen',
  };
}
