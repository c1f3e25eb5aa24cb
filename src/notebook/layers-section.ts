import type { GrainLayer, LayerName } from '../analysis/moisture/layer-types.ts';
import type { BinReview } from '../analysis/types.ts';
import type { Estimate } from '../base/estimate.ts';
import type { Cell, SectionBody, Table } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import { capital, known } from './words.ts';

const NAMES: readonly LayerName[] = ['bottom', 'middle', 'top'];
/** Thirds of a bin that differ by less than this, surely, make no load stand out. */
const WORTH_TELLING = 0.5;

/** Bottom, middle and top third of each bin, and what the first and the mixed loads would be. */
export function layersSection(bins: readonly BinReview[], units: Units): SectionBody {
  return {
    lead: leadOf(bins, units),
    table: layersTable(bins, 'end'),
    tables: [{ ...layersTable(bins, 'start'), folded: 'on screen' }],
    notes: [
      'Thirds of the depth, each about a third of the dry matter. Over a centre sump grain flows as a funnel (common practice): the core comes first, from the floor to the surface, then the top slides in, and the bottom along the wall comes last. A load drawn that way may be as wet as the wettest third or the core; only the whole bin, or a bin turned over, is “all mixed”.',
      'Of the interval of a third, what all sensors share cancels in “wettest less driest”.',
    ],
  };
}

function leadOf(bins: readonly BinReview[], units: Units): string {
  const clear = bins
    .flatMap((one) => {
      const { layers } = one.moisture;
      const spread = layers === undefined ? null : known(layers.spread);
      const { wettest, driest } = layers?.unload ?? {};
      if (spread === null || !wettest || !driest || (spread.interval?.[0] ?? 0) < WORTH_TELLING) return [];
      return [{ name: one.bin.name, spread, wettest, driest }];
    })
    .sort((a, b) => b.spread.value - a.spread.value);
  if (clear.length === 0) {
    const told = bins.filter((one) => one.moisture.layers?.spread.value != null).length;
    return told === 0
      ? 'Can’t tell the layers of any bin: the notes of the table say why.'
      : 'In no bin did the bottom, middle and top third surely differ by more than half a point at the end.';
  }
  const said = clear.map(
    ({ name, spread, wettest, driest }) =>
      `in ${name}, the ${wettest.name} third by ${units.say('points', spread)} over the ${driest.name}`,
  );
  // Each part has a comma of its own.
  return `At the end the wettest third stood out: ${said.join('; ')}.`;
}

function layersTable(bins: readonly BinReview[], moment: 'start' | 'end'): Table {
  const none = (one: BinReview) => ({ value: null, why: one.moisture.why ?? 'No sensor tells of the layers.' });
  const cell = (one: BinReview, layer: GrainLayer | undefined): Cell => layer?.moisture ?? none(one);
  const of = (one: BinReview, pick: Estimate | undefined): Cell => pick ?? none(one);
  return {
    id: moment === 'end' ? 'layers' : 'layers-start',
    caption: moment === 'end' ? 'Layers at the end, and what an unload would bring' : 'The layers at the start',
    columns: [
      { key: 'bin', label: 'Bin', quantity: null },
      ...NAMES.map((name) => ({
        key: name,
        label: `${capital(name)} third`,
        quantity: 'moisture' as const,
      })),
      ...(moment === 'end'
        ? [
            { key: 'spread', label: 'Wettest less driest', quantity: 'points' as const },
            { key: 'centre', label: 'Core, flows first', quantity: 'moisture' as const },
            { key: 'mixed', label: 'All mixed', quantity: 'moisture' as const },
          ]
        : []),
    ],
    rows: bins.map((one) => {
      const { layers } = one.moisture;
      return {
        bin: one.bin.name,
        ...Object.fromEntries(
          NAMES.map((name) => [
            name,
            cell(
              one,
              layers?.[moment].find((l) => l.name === name),
            ),
          ]),
        ),
        ...(moment === 'end'
          ? {
              spread: of(one, layers?.spread),
              centre: of(one, layers?.unload.centre),
              mixed: of(one, layers?.unload.mixed),
            }
          : {}),
      };
    }),
    empty: 'there is no bin in season.yaml.',
  };
}
