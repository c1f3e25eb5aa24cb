import { fileURLToPath } from 'node:url';
import { Command } from 'commander';
import { leave } from './command-line.ts';

new Command('demo')
  .description(
    'Review data-samples/sorrel-fork, the invented farm, into its review/: pages, workbook, year-end report, and into its sweep/ what every rule would have cost in the other years on file; some minutes, for the bins’ beds are fitted.',
  )
  .addHelpText(
    'after',
    '\nExit status: 0 whole; 2 wrong command line; 3 written, but a bin, page or section broke; 4 a fault of the kit.\n\nExample: npm run demo',
  )
  .allowExcessArguments(false)
  .exitOverride(leave)
  .parse();

// Loaded once the command line is known to be right, as it takes seconds.
const { reviewCommand } = await import('./review/command.ts');
/** Reviews the invented farm that comes with the kit, its season before beside it, its rules run in the years on file. */
const sampleOf = (name: string) => fileURLToPath(new URL(`../data-samples/${name}`, import.meta.url));
process.exitCode = await reviewCommand(sampleOf('sorrel-fork'), {
  out: null,
  models: true,
  workbook: true,
  sweep: true,
  previous: sampleOf('sorrel-fork-2023'),
});
