import type { Beside, BinBeside, SeasonsBeside } from '../../analysis/previous/beside-previous.ts';
import { type Estimate, turned } from '../../base/estimate.ts';
import { listed } from '../../base/listed.ts';
import type { Cell, SectionBody, Table } from '../../report/page.ts';
import type { Quantity } from '../../report/quantities.ts';
import type { Units } from '../../report/units.ts';
import type { LoadedSeason } from '../../season/loaded.ts';
import { perGrainOf } from '../per-grain.ts';
import { capital, counted, sentence } from '../words.ts';

const KINDS: Readonly<Record<Beside['kind'], { label: string; quantity: Quantity; noun: string }>> = {
  hours: { label: 'Fan hours', quantity: 'hours', noun: 'fan hours' },
  energyKwh: { label: 'Energy', quantity: 'energy', noun: 'energy' },
  cost: { label: 'Cost', quantity: 'money', noun: 'cost' },
  points: { label: 'Points removed', quantity: 'points', noun: 'points removed' },
  costPerPoint: { label: 'Cost per point', quantity: 'money per point', noun: 'cost per point' },
  perBushelPoint: {
    label: 'Cost per measure-point',
    quantity: 'money per grain point',
    noun: 'cost of a point in each measure of grain',
  },
};

/** This season beside the one before, bin by bin, each number with its interval and that of the change. */
export function besideSection(beside: SeasonsBeside, { season }: LoadedSeason, units: Units): SectionBody {
  const nameOf = (id: string) => season.bins.find((bin) => bin.id === id)?.name ?? id;
  if (beside.bins.length === 0) {
    return {
      lead: `Can’t set ${beside.before} beside ${beside.now}: no bin has the same id in both.`,
    };
  }
  const cropAt = (id: string) => season.bins.find((bin) => bin.id === id)?.grain.crop ?? 'corn';
  const shown = (bin: BinBeside, row: Beside, of: Estimate): Cell => {
    if (of.value === null) return { value: null, why: of.why ?? 'Not known.' };
    const each = row.kind === 'perBushelPoint' ? perGrainOf(cropAt(bin.id), of, units) : of;
    return { of: KINDS[row.kind].quantity, amount: each };
  };
  const table: Table = {
    id: 'beside',
    caption: `${beside.before} and ${beside.now}`,
    columns: [
      { key: 'bin', label: 'Bin', quantity: null },
      { key: 'what', label: 'What', quantity: null },
      { key: 'before', label: beside.before, quantity: 'own' },
      { key: 'now', label: beside.now, quantity: 'own' },
      { key: 'change', label: 'Change', quantity: 'own' },
      { key: 'unit', label: 'Unit', quantity: null },
      { key: 'clear', label: 'More than the intervals', quantity: null },
    ],
    rows: beside.bins.flatMap((bin) =>
      bin.rows.map((row) => ({
        bin: nameOf(bin.id),
        what:
          row.kind === 'perBushelPoint'
            ? `Cost per ${units.system === 'us' ? 'bushel' : 'tonne'}-point`
            : KINDS[row.kind].label,
        before: shown(bin, row, row.before),
        now: shown(bin, row, row.now),
        change: shown(bin, row, row.change),
        unit: units.unit(KINDS[row.kind].quantity),
        clear: row.clear === null ? 'can’t tell' : row.clear ? 'yes' : 'no',
      })),
    ),
  };
  return {
    lead: leadOf(beside, nameOf, units),
    table,
    notes: [
      'The two seasons’ errors are taken as independent, so that a change carries both; where sensors and their faults stayed the same it is surer than that.',
      'Weather, harvest moisture and what lay in the bin differ from year to year: a change is not the manager’s doing alone.',
      ...beside.bins.flatMap((bin) => bin.unlike.map((text) => `${nameOf(bin.id)}: ${text}`)),
      ...(beside.onlyNow.length === 0 ? [] : [`Not in the season before: ${listed(beside.onlyNow.map(nameOf))}.`]),
      ...(beside.onlyBefore.length === 0 ? [] : [`Only in the season before: ${listed(beside.onlyBefore)}.`]),
    ],
  };
}

/** How often the change is more than the intervals, and the cost of all bins together. */
function leadOf(beside: SeasonsBeside, nameOf: (id: string) => string, units: Units): string {
  const costs = beside.bins.map((bin) => ({ bin, row: bin.rows.find(({ kind }) => kind === 'cost') }));
  const said = costs.map(({ bin, row }) => {
    const name = nameOf(bin.id);
    if (row === undefined || row.change.value === null)
      return `what ${name} cost then and now can’t be compared: ${sentence(row?.change.why ?? 'not known').replace(/\.$/, '')}`;
    const { change } = row;
    const size = Number(change.value) < 0 ? turned(change) : change;
    if (row.clear === false)
      return `${name} cost ${units.say('money', row.now)} and ${units.say('money', row.before)} the season before, a difference of no more than the intervals`;
    return `${name} cost ${units.say('money', size)} ${Number(change.value) < 0 ? 'less' : 'more'} than in ${beside.before}`;
  });
  const rows = beside.bins.flatMap((bin) => bin.rows).filter(({ clear }) => clear !== null);
  const clear = rows.filter((row) => row.clear === true).length;
  const first = said.slice(0, 3);
  const text = `${listed(first)}${said.length > first.length ? `; ${counted(said.length - first.length, 'bin')} more in the table` : ''}.`;
  return `${capital(text)} Of ${counted(rows.length, 'number')} that can be compared ${clear} changed by more than ${clear === 1 ? 'its interval' : 'their intervals'}.`;
}
