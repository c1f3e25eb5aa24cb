import type { BinReview } from '../analysis/types.ts';
import type { Cell, SectionBody } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import { changeSaid, counted, known } from './words.ts';

/** Bins filled or emptied in steps: points by stage and their balance; null where there is none. */
export function stagesSection(bins: readonly BinReview[], units: Units): SectionBody | null {
  const told = bins.flatMap((one) => (one.moisture.stages ? [{ one, stages: one.moisture.stages }] : []));
  if (told.length === 0) return null;
  const lead = told
    .map(({ one, stages }) => {
      const all = known(stages.perFullBushel);
      return all === null
        ? `${one.bin.name} had ${counted(stages.stages.length, 'stage')}; their balance can’t be told.`
        : `${one.bin.name} had ${counted(stages.stages.length, 'stage')}, in which each bushel of the full bin ${changeSaid(all, units)}.`;
    })
    .join(' ');
  return {
    lead,
    table: {
      id: 'stages',
      caption: 'Stages between which grain came or went; points of the grain in place',
      columns: [
        { key: 'bin', label: 'Bin', quantity: null },
        { key: 'from', label: 'From', quantity: 'day' },
        { key: 'depth', label: 'Depth', quantity: 'length', known: 'stated' },
        { key: 'share', label: 'Of the full depth', quantity: 'share', known: 'from stated' },
        { key: 'hours', label: 'Fan hours', quantity: 'hours' },
        { key: 'points', label: 'Points removed', quantity: 'points' },
        { key: 'mixed', label: 'Mean fell before it, by other grain', quantity: 'points' },
      ],
      rows: told.flatMap(({ one, stages }) =>
        stages.stages.map(
          (stage): Record<string, Cell> => ({
            bin: one.bin.name,
            from: stage.span.fromMs,
            depth: stage.depthM,
            share: stage.share,
            hours: stage.fanHours,
            points: stage.points,
            mixed: stage.mixed ?? { value: null, why: 'Nothing lay there before.' },
          }),
        ),
      ),
    },
    notes: [
      'Each stage is told by the sensors in the grain that lay there all through it. Where grain comes or goes the mean moves by mixing: that is no drying and is not counted. The points removed of a bin begin when it was full; those of the filling stand here alone.',
      ...told.flatMap(({ one, stages }) => stages.notes.map((note) => `${one.bin.name}: ${note}`)),
    ],
  };
}
