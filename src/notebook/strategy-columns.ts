import type { RunColumn } from '../analysis/what-if/what-if-types.ts';
import { listed } from '../base/listed.ts';
import { aimsAtTemperature } from '../season/goal.ts';
import type { Played } from './strategy-words.ts';

/** Columns of air so much alike are told as even. */
const EVEN = 0.03;

/** Where the bin that was run is short of air: it comes to its target last. */
export function columnNotes({ review, whatIf: { columns } }: Pick<Played, 'review' | 'whatIf'>): string[] {
  if (columns.length < 2) return [];
  if (columns[columns.length - 1].airShare - columns[0].airShare < EVEN)
    return ['By the model the air is even across the bin.'];
  const told = columns.map((one, i) => {
    const of = i === 0 ? ' of the floor with' : ' with';
    return `${percent(one)}${of} ${one.airShare.toFixed(2)} times the bin’s mean airflow (${whose(one)})`;
  });
  const last = aimsAtTemperature(review.bin.goal) ? 'warmest' : 'wettest';
  return [
    `Run as parts side by side: ${listed(told)}. The target is reached only when the ${last} layer of all parts is near it too.`,
  ];
}

const percent = ({ areaShare }: RunColumn) => `${Math.round(100 * areaShare)} %`;

function whose({ cables, usual }: RunColumn): string {
  if (usual) return 'a core that no cable tells from the rest: common practice, not measured here';
  return `${cables.length === 1 ? 'cable' : 'cables'} ${listed([...cables].sort())}, fitted`;
}
