import type { RunColumn } from '../analysis/what-if/what-if-types.ts';
import { listed } from '../base/listed.ts';
import type { Played } from './strategy-words.ts';

/** Columns of air so much alike are told as even. */
const EVEN = 0.03;

/** Where the bin that was run is short of air: it comes to its target last. */
export function columnNotes({ whatIf: { columns } }: Pick<Played, 'whatIf'>): string[] {
  if (columns.length < 2) return [];
  const told = columns.map(
    (one) => `${percent(one)} of the floor with ${part(one)} of the bin’s mean airflow (${whose(one)})`,
  );
  const even = columns[columns.length - 1].airShare - columns[0].airShare < EVEN;
  return [
    even
      ? 'By the model the air is even across the bin.'
      : `Run as parts side by side: ${listed(told)}. The target is reached when the wettest layer of all is near enough.`,
  ];
}

const percent = ({ areaShare }: RunColumn) => `${Math.round(100 * areaShare)} %`;

const part = ({ airShare }: RunColumn) => airShare.toFixed(2);

function whose({ cables, usual }: RunColumn): string {
  if (usual) return 'a core that no cable tells from the rest: common practice, not measured here';
  return `${cables.length === 1 ? 'cable' : 'cables'} ${listed(cables)}, fitted`;
}
