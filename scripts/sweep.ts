import { Command } from 'commander';
import { AS_LOGGED, IN_HINDSIGHT, SWEPT } from '../src/analysis/strategies/run-strategy.ts';
import { EXIT, leave, tellError, UsageError } from './command-line.ts';
import { type SweepText, sweepOptions } from './sweep/sweep-options.ts';
import { parameterLines } from './sweep/ways-of.ts';

const program = new Command('sweep')
  .description('Run strategies for the fans through a season’s fitted bins, in its weather and in that of other years.')
  .argument('<season-folder>', 'folder with season.yaml')
  .option('--years <list>', 'years, e.g. 1998-2023,2025; "season" for this one (default: it and all years on file)')
  .option('--strategies <list>', 'ids, each with parameters where they are not to be the usual ones (default: all)')
  .option('--no-hindsight', `leave out ${IN_HINDSIGHT}, the search that takes most of the time`)
  .option('--bins <list>', 'ids of bins (default: all)')
  .option('--vary <list>', 'also move one thing at a time: airflow, fill-date, start-moisture, or all')
  .option(
    '--by <list>',
    'days by which to tell the chance of being at the target, e.g. 11-15,12-01 (default: month ends of the season)',
  )
  .option('--out <dir>', 'folder to write (default: sweep/ in the season folder)')
  .option('--workers <n>', 'worker threads (default: one a core)')
  .option('--shard <i/n>', 'run the i-th of n shares alone, for another machine or job')
  .option('--merge <dir...>', 'join the shares that stand in these folders, run nothing')
  .addHelpText(
    'after',
    `
Strategies: ${SWEPT.join(', ')}.
A rule's parameters follow its id in words: "humidity-limit with rh 65 %", "night-hours with from 22 h and to 6 h". Each value has its unit
(degF goes too), ways of one rule stand side by side under these names. What may be set:
${parameterLines().join('\n')}
${AS_LOGGED} runs in this season's weather only. ${IN_HINDSIGHT} is the cheapest schedule found with the weather known, which
regret is told against; without it regret is told against the cheapest strategy that reached the target. A search plays at
most 4 million hours of the bed, about 15 s for each bin, year and variation on one core; all else takes 0.05 s.

A year is named after the local calendar year in which the run begins: 1998 begins on the bin's filling date of 1998.
Its own local dates, clock, weekdays and prices hold. A year with a gap of more than 6 hours in its weather is left out
and told with why.

Writes strategies.arrow (a row a run), sweep.json (percentile years, chances, spread, regret, what is left out), fits.jsonl
(the bins' fits, taken over while files and code are the same)
and finished.jsonl (what is done: the same command goes on after a stop; a changed input is run anew; runs that no sweep
asks for any more are dropped once it holds more than 50,000).
With --shard: shard-i-of-n.parquet and its manifest shard-i-of-n.json. Merged shares give the same bytes
as one run.

Exit status: 0 whole; 1 the season's files or the shards have problems (listed, nothing written);
2 wrong command line; 3 written, but a run broke; 4 a fault of the kit; 130 stopped, what is done is kept.

Examples:
  npm run sweep -- data-samples/sorrel-fork --years 2014-2023 --strategies always-on,humidity-limit
  npm run sweep -- my-season --strategies "humidity-limit, humidity-limit with rh 60 %, humidity-limit with rh 80 %"
  npm run sweep -- my-season --shard 2/8 --out /tmp/share-2
  npm run sweep -- my-season --merge /tmp/share-* --out my-season/sweep
  scripts/sweep/with-parallel.sh my-season 8 /tmp/shares    (all shares by GNU parallel, then merged)`,
  )
  .exitOverride(leave)
  .parse();

const tell = (line: string) => process.stderr.write(`${line}\n`);

async function main(): Promise<number> {
  const [folder] = program.args;
  const { out = null, merge, ...text } = program.opts<SweepText & { out?: string; merge?: string[] }>();
  // What is left out with --no-… is true where it is not named.
  const named = Object.entries(text).filter(([, value]) => value !== true);
  if (merge !== undefined && named.length > 0) {
    const names = named.map(([name, value]) => (value === false ? `--no-${name}` : `--${name}`));
    const message = `--merge runs nothing, so ${names.join(', ')} cannot go with it: the shards say what was run.`;
    throw new UsageError([{ code: 'SWEEP_OPTION', message }]);
  }
  const { mergeSweep, runSweep } = await import('./sweep/run-sweep.ts');
  const done =
    merge === undefined ? await runSweep(folder, out, sweepOptions(text), tell) : await mergeSweep(folder, out, merge);
  process.stdout.write(`${done.written}\n`);
  if (done.failures.length === 0) return EXIT.whole;
  tell(`${done.failures.length} runs broke; their rows say so:`);
  for (const failure of done.failures) tell(`  ${failure}`);
  return EXIT.partly;
}

// Ctrl-C, which a terminal may send twice through npm, and what a scheduler or a shutdown sends.
for (const signal of ['SIGINT', 'SIGTERM'] as const) {
  process.on(signal, () => {
    tell('\nStopped. What is done is kept; the same command goes on from there.');
    process.exit(130);
  });
}

process.exitCode = await main().catch((error: unknown) => tellError(error, tell));
