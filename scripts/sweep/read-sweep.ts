import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { jobGroups } from '../../src/analysis/strategies/sweep-plan.ts';
import { sweepSummary } from '../../src/analysis/strategies/sweep-summary.ts';
import type { Swept } from '../../src/analysis/strategies/swept.ts';
import type { Season } from '../../src/season/season.ts';
import { codeHash } from './job-key.ts';
import { PLAN_SHAPE } from './manifest.ts';
import { rowsOfArrow } from './rows-arrow.ts';
import { seasonHash } from './season-hash.ts';

const COMMAND = 'npm run sweep -- and the season folder';

/**
 * The whole sweep that stands in a season's folder, where it is one of the season's files as they are now and of the kit's own
 * code: the hashes that it carries say so.
 */
export function readSweep(season: Season, folder = join(season.folder, 'sweep')): Swept {
  const [told, rows] = ['sweep.json', 'strategies.arrow'].map((name) => join(folder, name));
  if (!existsSync(told) || !existsSync(rows)) {
    return without(
      `No sweep stands beside this season. ${COMMAND} runs every strategy in each year on file; npm run review with --sweep does too, by the beds that it fits, without the best in hindsight.`,
    );
  }
  try {
    const plan = PLAN_SHAPE.parse(JSON.parse(readFileSync(told, 'utf8')).plan);
    const again = `Run ${COMMAND} again.`;
    if (plan.season.sha256 !== seasonHash(season))
      return without(`The sweep beside this season was made when its files were others. ${again}`);
    if (plan.kit.code !== codeHash())
      return without(`The sweep beside this season was made by another version of the kit. ${again}`);
    const all = rowsOfArrow(readFileSync(rows));
    if (all.length !== jobGroups(plan).length * plan.strategies.length)
      return without(`The sweep beside this season lacks rows. ${again}`);
    return { summary: sweepSummary(plan, all), why: null };
  } catch {
    return without(`What stands in sweep/ beside this season can’t be read. Take it away, or run ${COMMAND} again.`);
  }
}

function without(why: string): Swept {
  return { summary: null, why };
}
