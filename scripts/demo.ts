import { fileURLToPath } from 'node:url';
import { reviewCommand } from './review/command.ts';

/** Reviews the invented farm that comes with the kit, its season before beside it. */
const sampleOf = (name: string) => fileURLToPath(new URL(`../data-samples/${name}`, import.meta.url));
process.exitCode = await reviewCommand(sampleOf('sorrel-fork'), {
  out: null,
  models: true,
  workbook: true,
  previous: sampleOf('sorrel-fork-2023'),
});
