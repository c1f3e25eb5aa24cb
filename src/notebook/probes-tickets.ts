import type { MomentAgreement } from '../analysis/moisture/ticket-agreement-types.ts';
import type { BinReview } from '../analysis/types.ts';
import type { Cell, Table } from '../report/page.ts';

/** Sensors beside scale tickets, a row for each moment of a bin that has both. */
export function ticketsTable(bins: readonly BinReview[]): Table {
  const rows = bins.flatMap((one) => {
    const held = one.moisture.tickets;
    const moments = [held?.start, held?.end].filter((of): of is MomentAgreement => of !== null && of !== undefined);
    return moments.map(
      (of): Record<string, Cell> => ({
        bin: one.bin.name,
        moment: of.moment === 'start' ? 'Start' : 'End',
        sensors: of.sensors,
        tickets: of.tickets,
        loads: of.loads,
        difference: of.difference,
        fans: of.expected,
        agree: of.agree === null ? { value: null, why: of.why ?? 'Not told.' } : of.agree ? 'yes' : 'no',
      }),
    );
  });
  return {
    id: 'tickets',
    caption: 'Sensors beside scale tickets',
    columns: [
      { key: 'bin', label: 'Bin', quantity: null },
      { key: 'moment', label: 'Moment', quantity: null },
      { key: 'sensors', label: 'By sensors', quantity: 'moisture' },
      { key: 'tickets', label: 'By tickets', quantity: 'moisture' },
      { key: 'loads', label: 'Loads', quantity: 'count' },
      { key: 'difference', label: 'Sensors less tickets', quantity: 'points' },
      { key: 'fans', label: 'Of it by the fans in between', quantity: 'points' },
      { key: 'agree', label: 'Agree', quantity: null },
    ],
    rows,
    empty: 'no bin has both believable sensors and tickets with a moisture.',
  };
}
