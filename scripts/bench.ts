import { Command } from 'commander';
import { benchPhysics } from './bench/bench-physics.ts';
import { benchReview } from './bench/bench-review.ts';

const BENCHES: Readonly<Record<string, () => Promise<void> | void>> = {
  physics: benchPhysics,
  review: benchReview,
};

const program = new Command('bench')
  .description('Timings as ratios measured in one run, never part of a test.')
  .argument('[what...]', `which: ${Object.keys(BENCHES).join(', ')} (default: all)`)
  .parse();
for (const what of program.args.length > 0 ? program.args : Object.keys(BENCHES)) {
  const bench = BENCHES[what];
  if (bench === undefined) {
    process.stderr.write(`There is no bench "${what}"; there are ${Object.keys(BENCHES).join(', ')}.\n`);
    process.exitCode = 2;
  } else await bench();
}
