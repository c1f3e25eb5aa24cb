import { notebookOf, type PageInput } from '../../report/define.ts';
import { costByBin } from '../../report/figures/cost-by-bin.ts';
import type { Cell, Entry, Section, Table } from '../../report/page.ts';
import { section } from '../../report/section.ts';
import type { Units } from '../../report/units.ts';
import { byCost, cheapestTitle } from '../cheapest.ts';
import { counted, type KnownTotal, knownTotal, totalKey } from '../words.ts';
import type { ClientLine } from './client-line.ts';

/** A client whose report could not be made, and every problem of its files. */
export interface FailedClient {
  client: string;
  problems: readonly string[];
}

export interface ClientsInput extends PageInput {
  lines: readonly ClientLine[];
  failed: readonly FailedClient[];
}

/** Bins that the figure of costs takes. */
const MOST_BINS = 40;

/** The consultant's own summary across clients. It bears every client's name and goes to none of them. */
export const CLIENTS_NOTEBOOK = notebookOf<ClientsInput>(
  { id: 'overview', title: 'Clients', question: 'How did the clients’ seasons go, and where is a visit worth most?' },
  ({ lines, failed, units }) => {
    // Money of one currency adds up and compares; of two it does not.
    const currencies = [...new Set(lines.map(({ currency }) => currency))];
    const several = currencies.length > 1;
    return {
      answer: answerOf(lines, failed, units),
      keyNumbers: [
        ...(several ? [] : [totalKey('Cost of the fans', 'money', knownTotal(lines.map(({ cost }) => cost.total)))]),
        {
          label: 'Reports made',
          quantity: 'count',
          amount: lines.length,
          note: `of ${counted(lines.length + failed.length, 'client')}`,
        },
        { label: 'Bins', quantity: 'count', amount: lines.reduce((sum, { bins }) => sum + bins, 0) },
        {
          label: 'Findings in the logs to mend',
          quantity: 'count',
          amount: lines.reduce((sum, { logFindings }) => sum + logFindings, 0),
        },
      ],
      sections: [
        ...(failed.length === 0
          ? []
          : [
              section('failed', 'Not made', () => ({
                lead: `${counted(failed.length, 'report')} could not be made; the problems of each stand here, and nothing of it was written.`,
                entries: failed.map(({ client, problems }) => ({ term: client, text: '', details: problems })),
              })),
            ]),
        ...currencies.flatMap((currency) => {
          const of = lines.filter((line) => line.currency === currency);
          const own = units.withMoneyIn(currency);
          const tail = several ? `, ${currency}` : '';
          return [
            section(`clients${several ? `-${currency}` : ''}`, `Client by client${tail}`, () =>
              clientsSection(of, own),
            ),
            section(`bins${several ? `-${currency}` : ''}`, `Bin by bin${tail}`, () => binsSection(of, own)),
          ].map((one) => (several ? inCurrency(one, currency) : one));
        }),
        section('findings', 'What was found, and what to do', () => ({
          lead: 'The largest findings of each client, those with a saving whose interval stays above zero.',
          entries: lines.map(entryOf),
        })),
      ],
      warnings: lines.flatMap(({ client, failures }) => failures.map((text) => `${client}: ${text}`)),
      cautions: [],
      sources: [],
    };
  },
);

/** The section with the money of its tables in a currency, which their captions name. */
function inCurrency(of: Section, currency: string): Section {
  const table = (one: Table): Table => ({ ...one, currency, caption: `${one.caption}, money in ${currency}` });
  return { ...of, table: of.table === undefined ? undefined : table(of.table), tables: of.tables?.map(table) };
}

function answerOf(lines: readonly ClientLine[], failed: readonly FailedClient[], units: Units): string {
  if (lines.length === 0) return `Can’t tell: none of ${counted(failed.length, 'report')} could be made.`;
  const own = (line: ClientLine) => units.withMoneyIn(line.currency);
  const missing = failed.length === 0 ? '' : ` ${counted(failed.length, 'report')} could not be made.`;
  const currencies = [...new Set(lines.map(({ currency }) => currency))];
  const costs = currencies.flatMap((currency) =>
    costsSaid(
      lines.filter((line) => line.currency === currency),
      own,
      currencies.length > 1,
    ),
  );
  if (costs.length === 0)
    return `${counted(lines.length, 'report')} ${lines.length === 1 ? 'was' : 'were'} made; no client’s fans have a cost that can be told.${missing}`;
  return `${visitSaid(lines, own)} ${costs.join(' ')}${missing}`;
}

/** What fans cost at the clients of one currency, cheapest and dearest; no sentence where no cost is known. */
function costsSaid(lines: readonly ClientLine[], own: (line: ClientLine) => Units, several: boolean): string[] {
  const dear = lines
    .filter((line) => line.costPerGrain.value !== null)
    .sort((a, b) => Number(b.costPerGrain.value) - Number(a.costPerGrain.value));
  const [most, least] = [dear[0], dear.at(-1)];
  if (most === undefined || least === undefined) return [];
  const said = (line: ClientLine) => own(line).say('money per grain', line.costPerGrain);
  if (most === least) return [`The fans of ${most.client} cost ${said(most)}.`];
  return [
    said(least) === said(most)
      ? `Fans cost ${said(most)} at ${dear.length === 2 ? 'both' : `all ${dear.length}`}${several ? ` with ${most.currency}` : ''}.`
      : `Fans cost from ${said(least)} at ${least.client} to ${said(most)} at ${most.client}.`,
  ];
}

/** Where the largest clear saving is; money of one currency alone is held beside each other. */
function visitSaid(lines: readonly ClientLine[], own: (line: ClientLine) => Units): string {
  if (new Set(lines.map(({ currency }) => currency)).size > 1)
    return 'Can’t tell where a visit is worth most: the clients’ money is in several currencies.';
  const worth = lines.flatMap((line) => (line.worth === null ? [] : [{ line, worth: line.worth }]));
  worth.sort((a, b) => Number(b.worth.value) - Number(a.worth.value));
  const [first] = worth;
  return first === undefined
    ? 'No client’s numbers show a clear saving that a visit could bring.'
    : `A visit is worth most at ${first.line.client}, where one measure would save ${own(first.line).say('money', first.worth)} a year.`;
}

function cellOf({ total, of }: KnownTotal): Cell {
  if (total.value === null) return { value: null, why: total.why ?? 'Not known.' };
  return of === null ? total : { value: null, why: `Known of ${of} only.` };
}

function clientsSection(lines: readonly ClientLine[], units: Units) {
  const cost = knownTotal(lines.map(({ cost: of }) => of.total)).total;
  return {
    lead:
      cost.value === null
        ? 'What the fans cost can’t be told of any client.'
        : `The fans of ${counted(lines.length, 'client')} cost ${units.say('money', cost)} as far as it is known.`,
    table: {
      id: 'clients',
      caption: 'Clients side by side',
      columns: [
        { key: 'client', label: 'Client', quantity: null },
        { key: 'season', label: 'Season', quantity: null },
        { key: 'bins', label: 'Bins', quantity: 'count' },
        { key: 'grain', label: 'Grain', quantity: 'grain' },
        { key: 'hours', label: 'Fan hours', quantity: 'hours' },
        { key: 'energy', label: 'Energy', quantity: 'energy' },
        { key: 'cost', label: 'Cost', quantity: 'money' },
        {
          key: 'each',
          label: `Cost per ${units.system === 'us' ? 'bushel' : 'tonne'}`,
          quantity: 'money per grain',
          marked: true,
        },
        { key: 'over', label: 'Over-drying', quantity: 'money' },
      ],
      rows: lines.map((line) => ({
        client: line.client,
        season: line.season,
        bins: line.bins,
        grain: cellOf(line.grain),
        hours: cellOf(line.hours),
        energy: cellOf(line.energyKwh),
        cost: cellOf(line.cost),
        each: line.costPerGrain,
        over: cellOf(line.overdrying),
      })),
    } satisfies Table,
    notes: [
      'Cost per measure of grain is that of the bins of which both are known. Goals, crops and harvest moistures differ: a dear client is not a bad manager.',
    ],
  };
}

function binsSection(lines: readonly ClientLine[], units: Units) {
  const bins = lines.flatMap(({ client, ranked }) =>
    ranked.map((bin) => ({ ...bin, client, name: `${client}, ${bin.name}`, cost: bin.perPoint })),
  );
  const priced = byCost(bins) as typeof bins;
  const title = cheapestTitle(priced, 'bought its points cheapest');
  return {
    lead:
      title === null
        ? 'No bin has a cost per point: none was dried at a price that is known, with points that can be told from none.'
        : `${title}: ${units.say('money per grain point', priced[0].cost)}.`,
    table: {
      id: 'ranked',
      caption: 'Bins run to dry, cheapest point first',
      columns: [
        { key: 'client', label: 'Client', quantity: null },
        { key: 'bin', label: 'Bin', quantity: null },
        { key: 'crop', label: 'Crop', quantity: null },
        { key: 'points', label: 'Points removed', quantity: 'points' },
        {
          key: 'cost',
          label: `Cost per ${units.system === 'us' ? 'bushel' : 'tonne'}-point`,
          quantity: 'money per grain point',
        },
      ],
      rows: priced.map((bin) => ({
        client: bin.client,
        bin: bin.name.slice(bin.client.length + 2),
        crop: bin.crop,
        points: bin.points,
        cost: bin.cost,
      })),
      empty: 'no bin has this cost.',
    } satisfies Table,
    figures:
      title === null || priced.length < 2
        ? []
        : [
            costByBin(
              {
                id: 'ranked',
                title,
                quantity: 'money per grain point',
                bins: priced.slice(0, MOST_BINS),
                reasonsAbove: true,
              },
              units,
            ),
          ],
    notes: priced.length > MOST_BINS ? [`The figure shows the ${MOST_BINS} cheapest of ${priced.length} bins.`] : [],
  };
}

function entryOf(line: ClientLine): Entry {
  const mend = line.logFindings === 0 ? [] : [`${counted(line.logFindings, 'finding')} in the logs to mend.`];
  const model = line.trusted === null ? [] : [`Models trusted: ${line.trusted} of ${counted(line.bins, 'bin')}.`];
  return {
    term: line.farm === null ? line.client : `${line.client}: ${line.farm}, ${line.season}`,
    text: line.findings.length === 0 ? 'No saving has an interval that stays above zero.' : '',
    details: [
      ...line.findings.slice(0, 3),
      ...(line.todo.length === 0 ? [] : [`To do: ${line.todo.slice(0, 2).join(' ')}`]),
      ...mend,
      ...model,
    ],
  };
}
