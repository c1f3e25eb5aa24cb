import type { BinProbes } from '../analysis/probes/probe-types.ts';
import type { BinReview } from '../analysis/types.ts';
import { Z90 } from '../base/estimate.ts';
import type { Cell, Table } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import { momentEstimate } from './bin-table.ts';
import { asGrain } from './per-grain.ts';

/** Bins with hand samples. */
export function probed(bins: readonly BinReview[]): { one: BinReview; probes: BinProbes }[] {
  return bins.flatMap((one) => {
    const { probes } = one;
    return probes !== undefined && probes.pairs.length + probes.unmatched.length > 0 ? [{ one, probes }] : [];
  });
}

/** By how much the cables read wetter than the samples, and the numbers with that taken off beside those as read. */
export function offsetsTable(bins: readonly BinReview[], units: Units): Table {
  const rows = probed(bins).map(({ one, probes }): Record<string, Cell> => {
    const { moisture } = one;
    const why = probes.why ?? 'The end is not told by sensors, so there is nothing to correct.';
    const none = { value: null, why };
    const fixed = probes.corrected;
    return {
      bin: one.bin.name,
      samples: probes.bin.pairs,
      offset: probes.bin.offset,
      end: momentEstimate(moisture.end, moisture.why),
      endFixed: fixed?.end ?? none,
      pointsFixed: fixed?.pointsRemoved ?? none,
      lossFixed: fixed === null ? none : asGrain(fixed.overdryingLossBushels, one, units),
    };
  });
  return {
    id: 'probes',
    caption: 'Hand samples beside the cables, and the season’s numbers if the cables read as the samples do',
    columns: [
      { key: 'bin', label: 'Bin', quantity: null },
      { key: 'samples', label: 'Samples that count', quantity: 'count' },
      { key: 'offset', label: 'Cables less samples', quantity: 'points' },
      { key: 'end', label: 'Moisture out, as read', quantity: 'moisture' },
      { key: 'endFixed', label: 'Moisture out, corrected', quantity: 'moisture' },
      { key: 'pointsFixed', label: 'Points removed, corrected', quantity: 'points' },
      { key: 'lossFixed', label: 'Over-drying, corrected', quantity: 'grain' },
    ],
    rows,
    empty: 'no bin has hand samples.',
  };
}

/** The offset by ring of cables and by day. */
export function offsetPartsTable(bins: readonly BinReview[]): Table {
  return {
    id: 'probe-offsets',
    caption: 'Cables less samples, by the cables at one distance from the centre, by sensor and by day',
    folded: 'on screen',
    columns: [
      { key: 'bin', label: 'Bin', quantity: null },
      { key: 'of', label: 'Cables, or sensor', quantity: null },
      { key: 'day', label: 'Day', quantity: 'day' },
      { key: 'samples', label: 'Samples', quantity: 'count' },
      { key: 'cold', label: 'Of them under 4 °C (40 °F)', quantity: 'count' },
      { key: 'offset', label: 'Cables less samples', quantity: 'points' },
      { key: 'end', label: 'Moisture out, with this sensor corrected', quantity: 'moisture' },
    ],
    rows: probed(bins).flatMap(({ one: review, probes }) => [
      ...probes.rings.map(
        (ring): Record<string, Cell> => ({
          bin: review.bin.name,
          of: ring.cables.join(', '),
          day: { value: null, why: 'All days together.' },
          samples: ring.pairs,
          cold: coldOf(probes, ({ cables }) => cables.join() === ring.cables.join()),
          offset: ring.offset,
          end: NOT_ONE,
        }),
      ),
      ...probes.sensors.map(
        (one): Record<string, Cell> => ({
          bin: review.bin.name,
          of: `${one.cable} ${one.sensor}`,
          day: { value: null, why: 'All days together.' },
          samples: one.pairs,
          cold: coldOf(probes, ({ sensors }) => sensors.includes(`${one.cable} ${one.sensor}`)),
          offset: one.offset,
          end: one.corrected.end,
        }),
      ),
      ...probes.days.map(
        (day): Record<string, Cell> => ({
          bin: review.bin.name,
          of: 'all',
          day: day.dayMs,
          samples: day.pairs,
          cold: day.cold,
          offset: day.offset,
          end: NOT_ONE,
        }),
      ),
    ]),
    empty: 'no sample could be held against a cable in still air.',
  };
}

const NOT_ONE: Cell = { value: null, why: 'Corrected for all cables together: in the table above.' };

function coldOf({ pairs }: BinProbes, where: (pair: BinProbes['pairs'][number]) => boolean): number {
  return pairs.filter((pair) => pair.counted && pair.cold && where(pair)).length;
}

/** Every hand sample with what the cables said there. */
export function samplesTable(bins: readonly BinReview[]): Table {
  return {
    id: 'samples',
    caption: 'Every hand sample held against a cable',
    folded: 'on screen',
    columns: [
      { key: 'bin', label: 'Bin', quantity: null },
      { key: 'at', label: 'Taken', quantity: 'moment' },
      { key: 'height', label: 'Height', quantity: 'length', known: 'stated' },
      { key: 'out', label: 'From the centre', quantity: 'length', known: 'stated' },
      { key: 'sensors', label: 'Sensors', quantity: null },
      { key: 'temp', label: 'Temperature', quantity: 'temperature', known: 'measured' },
      { key: 'sample', label: 'By hand', quantity: 'moisture', known: 'measured' },
      { key: 'cables', label: 'By the cables', quantity: 'moisture', known: 'measured' },
      { key: 'offset', label: 'Cables less sample', quantity: 'points' },
      { key: 'counts', label: 'Counts', quantity: null },
    ],
    rows: probed(bins).flatMap(({ one, probes }) =>
      probes.pairs.map((pair): Record<string, Cell> => {
        const { reading } = pair;
        const half = Z90 * pair.sd;
        return {
          bin: one.bin.name,
          at: reading.timeMs,
          height: reading.heightM,
          out: orNot(reading.fromCentreM, 'Not given: held against all cables.'),
          sensors: pair.sensors.join(', '),
          temp: orNot(reading.tempC, 'Not given.'),
          sample: reading.moistureWb,
          cables: pair.cableWb,
          offset: { value: pair.offset, interval: [pair.offset - half, pair.offset + half], why: null },
          counts: pair.counted
            ? 'yes'
            : pair.air === 'moving'
              ? 'no, fan running'
              : pair.air === 'unknown'
                ? 'no, no fan log'
                : pair.far
                  ? 'no, far off'
                  : 'no, cold',
        };
      }),
    ),
    empty: 'no sample could be held against a cable.',
  };
}

function orNot(value: number, why: string): Cell {
  return Number.isNaN(value) ? { value: null, why } : value;
}
