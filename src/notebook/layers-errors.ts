import type { BinReview } from '../analysis/types.ts';
import type { Cell, SectionBody } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import { errorShares } from './moisture-tables.ts';

const FIXED = ['accuracy of the sensors', 'bias that the sensors share'];
const UNSEEN = [
  'spread between cables',
  'fronts between the heights of the sensors',
  'grain between and beyond the cables',
];
const READING = ['noise of the readings', 'drift of the sensors'];
const SOURCES_DIFFER = /, at the (start|end)$/;

/** Which errors cancel in the points removed and which do not, sized, bin by bin. */
export function errorsSection(bins: readonly BinReview[], units: Units): SectionBody {
  const told = bins.map((one) => ({ one, ...errorShares(one.moisture) }));
  const range = (values: readonly number[]) => {
    const known = values.filter((value) => value > 0);
    if (known.length === 0) return null;
    const [low, high] = [Math.min(...known), Math.max(...known)].map((value) => units.number('points, fine', value));
    return low === high ? low : `${low} to ${high}`;
  };
  const ofPoints = range(told.map((each) => each.points.half));
  const ofEnd = range(told.map((each) => each.end.half));
  return {
    lead:
      ofPoints === null || ofEnd === null
        ? 'No bin has intervals to be taken apart.'
        : `The points removed are unsure by ${ofPoints} points, the moisture at the end by ${ofEnd}: what a sensor reads wrong at both ends cancels in the difference.`,
    table: {
      id: 'what-cancels',
      caption: 'What cancels in the points removed and what stays, each alone, either way',
      columns: [
        { key: 'bin', label: 'Bin', quantity: null },
        {
          key: 'fixed',
          label: 'Cancels: fixed error of each sensor and bias of all',
          quantity: 'points, fine',
          known: '90 % limit',
        },
        { key: 'unseen', label: 'Stays: grain that no sensor sees', quantity: 'points, fine', known: '90 % limit' },
        { key: 'reading', label: 'Stays: noise and drift', quantity: 'points, fine', known: '90 % limit' },
        {
          key: 'rest',
          label: 'Stays: isotherm, moving air, hours not seen',
          quantity: 'points, fine',
          known: '90 % limit',
        },
        { key: 'all', label: 'Points removed, all together', quantity: 'points, fine', known: '90 % limit' },
        { key: 'end', label: 'Moisture at the end, all together', quantity: 'points, fine', known: '90 % limit' },
      ],
      rows: told.map(({ one, points, end }): Record<string, Cell> => {
        const why = one.moisture.pointsRemoved.why ?? 'There is no interval.';
        const none = { value: null, why };
        const mixed = points.parts.some((part) => SOURCES_DIFFER.test(part.cause));
        const group = (of: typeof points, causes: readonly string[] | null) => {
          const named = [...FIXED, ...UNSEEN, ...READING];
          return Math.hypot(
            ...of.parts
              .filter(({ cause }) => {
                const plain = cause.replace(SOURCES_DIFFER, '');
                return causes === null ? !named.includes(plain) : causes.includes(plain);
              })
              .map((part) => part.off),
          );
        };
        const stays = (causes: readonly string[] | null): Cell => (points.half > 0 ? group(points, causes) : none);
        return {
          bin: one.bin.name,
          fixed: mixed
            ? { value: null, why: 'Start and end come from different instruments here: nothing cancels.' }
            : end.half > 0
              ? group(end, FIXED)
              : none,
          unseen: stays(UNSEEN),
          reading: stays(READING),
          rest: mixed && points.half > 0 ? group(points, [...FIXED, ...restOf(points)]) : stays(null),
          all: points.half > 0 ? points.half : none,
          end: end.half > 0 ? end.half : none,
        };
      }),
      empty: 'there is no bin in season.yaml.',
    },
    notes: [
      'A sensor that reads half a point too wet does so at the start and at the end: the difference does not know it. It counts in the moisture itself, in over-drying, and against scale tickets. Each bin’s section below has the table cause by cause.',
    ],
  };
}

function restOf({ parts }: { parts: readonly { cause: string }[] }): string[] {
  return parts
    .map(({ cause }) => cause.replace(SOURCES_DIFFER, ''))
    .filter((cause) => ![...UNSEEN, ...READING].includes(cause));
}
