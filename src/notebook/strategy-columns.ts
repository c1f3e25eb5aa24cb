import type { RunColumn } from '../analysis/what-if/what-if-types.ts';
import { listed } from '../base/listed.ts';
import type { Played } from './strategy-words.ts';

/** Columns of air so much alike are told as even. */
const EVEN = 0.03;

/** Where the bin that was run is short of air: it comes to its target last. */
export function columnNotes({ whatIf: { columns } }: Pick<Played, 'whatIf'>): string[] {
  if (columns.length < 2) return [];
  const [short, rest] = columns;
  if (rest.airShare - short.airShare < EVEN) return ['By the model the air is even across the bin.'];
  return [
    `Run as two parts side by side: ${percent(short)} of the floor gets ${part(short)} of the bin’s mean airflow (${whose(short)}), the rest ${part(rest)}. The target is reached when the wettest layer of both is near enough.`,
  ];
}

const percent = ({ areaShare }: RunColumn) => `${Math.round(100 * areaShare)} %`;

const part = ({ airShare }: RunColumn) => airShare.toFixed(2);

function whose({ cables }: RunColumn): string {
  if (cables.length === 0) return 'a core in which no cable hangs: stated, common practice, not measured here';
  return `${cables.length === 1 ? 'cable' : 'cables'} ${listed(cables)}, fitted`;
}
