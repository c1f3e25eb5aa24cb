import type { BinReview } from '../analysis/types.ts';
import { type Estimate, Z90 } from '../base/estimate.ts';
import { listed } from '../base/listed.ts';
import { waysByBin } from '../report/figures/ways-by-bin.ts';
import type { Cell, Figure, SectionBody, Table } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import { capital, known } from './words.ts';

/** Water that left every bin by sensors, by the air and by tickets, in one section. */
export function waterSection(bins: readonly BinReview[], units: Units): SectionBody {
  const figure = waterFigure(bins, units);
  return {
    lead: leadOf(bins, units),
    table: waterTable(bins),
    figures: figure === null ? [] : [figure],
    tables: [airTable(bins), partsTable(bins)],
    notes: [
      'By sensors: dry matter times the change of the mean moisture, dry basis. By the air: airflow times what the humidity of the air gained on its way, had from the last grain that it passes and from the balance of heat, joined by their errors. By tickets: the loads in and out, where they are the whole bin. Below zero: the grain took water up.',
      'By the air counts all running with grain in the bin; it is held against the sensors only for the time between their start and end.',
      ...bins.flatMap(({ bin, water }) => [...water.likely, ...water.notes].map((note) => `${bin.name}: ${note}`)),
    ],
  };
}

function leadOf(bins: readonly BinReview[], units: Units): string {
  const agreed = bins.filter((one) => one.water.agree === true && one.water.bySensors.value !== null);
  const parted = bins.filter((one) => one.water.agree === false).map((one) => one.bin.name);
  const most = [...agreed].sort(
    (a, b) => Math.abs(b.water.bySensors.value ?? 0) - Math.abs(a.water.bySensors.value ?? 0),
  )[0];
  const disagree = parted.length === 0 ? '' : `; the ways disagree in ${listed(parted)}`;
  if (most === undefined) {
    if (parted.length > 0)
      return `The ways to tell the water disagree in ${listed(parted)}; the notes say what that most likely means.`;
    return 'Can’t hold the water of any bin by one way against another; the notes of the table say why.';
  }
  const { bySensors, byAirBetween, byTickets } = most.water;
  const ways = [
    ...(known(byAirBetween) === null ? [] : ['air']),
    ...(known(bySensors) === null ? [] : ['sensors']),
    ...(known(byTickets) === null ? [] : ['tickets']),
  ];
  const size = { ...bySensors, value: Math.abs(bySensors.value ?? 0), interval: sized(bySensors) };
  const did = (bySensors.value ?? 0) >= 0 ? 'out of' : 'into';
  const others = agreed.length - 1;
  const rest = others === 0 ? '' : `, and in ${others} ${others === 1 ? 'other bin' : 'other bins'} too`;
  return `${capital(listed(ways))} agree on about ${units.say('water', size)} of water ${did} ${most.bin.name}${rest}${disagree}.`;
}

function sized({ value, interval }: Estimate): [number, number] | null {
  if (interval === null) return null;
  return (value ?? 0) >= 0 ? interval : [-interval[1], -interval[0]];
}

function waterTable(bins: readonly BinReview[]): Table {
  return {
    id: 'water',
    caption: 'Water out of the grain by independent ways',
    columns: [
      { key: 'bin', label: 'Bin', quantity: null },
      { key: 'sensors', label: 'By sensors', quantity: 'water' },
      { key: 'between', label: 'By air, same time', quantity: 'water' },
      { key: 'air', label: 'By air, all running', quantity: 'water' },
      { key: 'tickets', label: 'By tickets', quantity: 'water' },
      { key: 'agree', label: 'Agree', quantity: null },
    ],
    rows: bins.map(
      ({ bin, water }): Record<string, Cell> => ({
        bin: bin.name,
        sensors: water.bySensors,
        between: water.byAirBetween,
        air: water.byAir,
        tickets: water.byTickets,
        agree:
          water.agree === null
            ? { value: null, why: water.why ?? 'Fewer than two ways are known.' }
            : water.agree
              ? 'yes'
              : 'no',
      }),
    ),
    empty: 'there is no bin in season.yaml.',
  };
}

function waterFigure(bins: readonly BinReview[], units: Units): Figure | null {
  const shown = bins.map(({ bin, water }) => ({
    name: bin.name,
    ways: [
      { name: 'sensors', of: water.bySensors },
      { name: 'air', of: water.byAirBetween },
      { name: 'tickets', of: water.byTickets },
    ],
  }));
  const lacking = shown.filter(({ ways }) => ways.every(({ of }) => of.value === null)).map(({ name }) => name);
  if (lacking.length === shown.length) return null;
  const parted = bins.filter((one) => one.water.agree === false).map((one) => one.bin.name);
  const held = bins.filter((one) => one.water.agree !== null).length;
  return waysByBin(
    {
      id: 'water-ways',
      title:
        parted.length > 0
          ? `The ways to tell the water disagree in ${listed(parted)}`
          : held === 0
            ? 'Water out of the grain'
            : 'The ways to tell the water agree where two are known',
      quantity: 'water',
      bins: shown,
      notShown:
        lacking.length === 0
          ? null
          : `${listed(lacking)} not shown: no way tells the water; the notes of the table say why.`,
    },
    units,
  );
}

/** What the account of the air stands on. */
function airTable(bins: readonly BinReview[]): Table {
  const why = (one: BinReview) => one.water.byAir.why ?? 'Not known.';
  return {
    id: 'water-air',
    caption:
      'What the account of the air stands on: hours are measured, the two ways to the air’s gain are before they are joined, without the airflow’s error that they share',
    folded: 'on screen',
    columns: [
      { key: 'bin', label: 'Bin', quantity: null },
      { key: 'hours', label: 'Fan hours', quantity: 'hours', known: 'measured' },
      { key: 'covered', label: 'With both airs known', quantity: 'hours', known: 'measured' },
      { key: 'humidity', label: 'By humidities', quantity: 'water' },
      { key: 'heat', label: 'By balance of heat', quantity: 'water' },
      { key: 'weight', label: 'Weight of the heat', quantity: 'share', known: 'by both ranges' },
    ],
    rows: bins.map((one): Record<string, Cell> => {
      const { air } = one.water;
      const none = { value: null, why: why(one) };
      return {
        bin: one.bin.name,
        hours: air?.fanHours ?? none,
        covered: air?.coveredHours ?? none,
        humidity: air?.byHumidity ?? none,
        heat: air?.byHeat ?? none,
        weight: air?.heatShare ?? none,
      };
    }),
    empty: 'there is no bin in season.yaml.',
  };
}

/** What makes the water by air unsure. */
function partsTable(bins: readonly BinReview[]): Table {
  return {
    id: 'water-errors',
    caption:
      'What makes the water by air unsure: how far each cause alone would put it off, either way (nine times in ten by less)',
    folded: 'on screen',
    columns: [
      { key: 'bin', label: 'Bin', quantity: null },
      { key: 'cause', label: 'Cause', quantity: null },
      { key: 'off', label: 'Off by', quantity: 'water', known: '90 % limit' },
    ],
    rows: bins.flatMap(({ bin, water }) =>
      (water.air?.parts ?? []).map(({ cause, sdKg }) => ({ bin: bin.name, cause: capital(cause), off: Z90 * sdKg })),
    ),
    empty: 'the water by air is known of no bin.',
  };
}
