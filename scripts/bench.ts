import { Command } from 'commander';
import { type SeedRange, seedRange } from './bench/seed-range.ts';
import { leave } from './command-line.ts';

// Loaded when asked for: what one bench brings into the process would weigh on another.
const BENCHES: Readonly<Record<string, (options: { seeds?: SeedRange }) => Promise<void> | void>> = {
  coverage: async ({ seeds }) => (await import('./bench/coverage/bench-coverage.ts')).benchCoverage(seeds),
  drawing: async () => (await import('./bench/bench-drawing.ts')).benchDrawing(),
  model: async ({ seeds }) => (await import('./bench/model/bench-model.ts')).benchModel(seeds),
  notebook: async () => (await import('./bench/bench-notebook.ts')).benchNotebook(),
  physics: async () => (await import('./bench/bench-physics.ts')).benchPhysics(),
  simulation: async () => (await import('./bench/simulation/bench-simulation.ts')).benchSimulation(),
  ranking: async () => (await import('./bench/ranking/bench-ranking.ts')).benchRanking(),
  'ranking-fits': async ({ seeds }) => (await import('./bench/ranking/bench-fits.ts')).benchFits(seeds),
  sweep: async () => (await import('./bench/sweep/bench-sweep.ts')).benchSweep(),
  review: async () => (await import('./bench/bench-review.ts')).benchReview(),
};

const program = new Command('bench')
  .description(
    'Timings as ratios measured in one run, and how often the 90 % intervals hold a known truth; never part of a test.',
  )
  .argument('[what...]', `which: ${Object.keys(BENCHES).join(', ')} (default: all)`)
  .option(
    '--seeds <from-to>',
    'of coverage, ranking-fits and model: the drawn seasons, e.g. 9401-9420, so that long runs can be done in parts',
    seedRange,
  )
  .addHelpText('after', '\nExit status: 0 done; 2 wrong command line.\n\nExample: npm run bench -- physics review')
  .exitOverride(leave)
  .parse();
for (const what of program.args.length > 0 ? program.args : Object.keys(BENCHES)) {
  const bench = BENCHES[what];
  if (bench === undefined) {
    process.stderr.write(`There is no bench "${what}"; there are ${Object.keys(BENCHES).join(', ')}.\n`);
    process.exitCode = 2;
  } else await bench(program.opts());
}
