import { fileURLToPath } from 'node:url';
import { reviewCommand } from './review/command.ts';

/** Reviews the invented farm that comes with the kit. */
const sample = fileURLToPath(new URL('../data-samples/sorrel-fork', import.meta.url));
process.exitCode = await reviewCommand(sample, { out: null, models: true, workbook: true });
