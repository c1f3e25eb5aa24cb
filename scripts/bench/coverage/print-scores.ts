import { type Case, QUANTITIES } from './cases.ts';
import type { FrontCase } from './front-cases.ts';
import { knowingHalves, type Score, scoreOf } from './score.ts';

/** With fewer told cases a stratum says little: at a true 90 % one in eight such would fall below 78 % by chance alone. */
const SMALL = 12;

const percent = (share: number) => `${(100 * share).toFixed(1).padStart(5)} %`;

function line(name: string, score: Score): string {
  const told = score.n - score.withheld;
  if (told === 0)
    return `  ${name.padEnd(26)} ${String(score.n).padStart(4)} ${String(score.withheld).padStart(8)}   -`;
  const cells = [
    name.padEnd(26),
    String(score.n).padStart(4),
    String(score.withheld).padStart(8),
    percent(score.covered),
    score.widthRatio.toFixed(2).padStart(6),
    `${percent(score.bias)} +- ${(100 * score.biasError).toFixed(1)}`,
    percent(score.biasMedian),
  ];
  return `  ${cells.join(' ')}${told < SMALL ? '  (few)' : ''}`;
}

/** The table of one quantity: overall, by crop, by number of cables, by goal, by how the fan ran. */
export function quantityLines(cases: readonly Case[]): string[] {
  return QUANTITIES.flatMap((quantity) => {
    const own = cases.filter((one) => one.quantity === quantity);
    if (own.length === 0) return [`${quantity}: not told by the review yet`];
    const halves = knowingHalves(own);
    const stratum = (name: string, holds: (one: Case) => boolean) => {
      const some = own.filter(holds);
      return some.length === 0 ? [] : [line(name, scoreOf(some, halves))];
    };
    const each = <T>(of: (one: Case) => T) => [...new Set(own.map(of))].sort();
    return [
      `${quantity}: n, withheld, coverage, width ratio, bias of the middle (mean and median, of the scale)`,
      ...stratum('all', () => true),
      ...each((one) => one.crop).flatMap((crop) => stratum(crop, (one) => one.crop === crop)),
      ...each((one) => one.cables).flatMap((count) => stratum(`${count} cables`, (one) => one.cables === count)),
      ...each((one) => one.goal).flatMap((goal) => stratum(`goal ${goal}`, (one) => one.goal === goal)),
      ...each((one) => one.running).flatMap((how) => stratum(`fan ${how}`, (one) => one.running === how)),
    ];
  });
}

/**
 * Arrivals within 6 fan hours, by how the fan ran: of all that the front truly passed; of those whose log holds the arrival and
 * of those where a hole of it takes it away; of those that the kit tells; of those where the air fell once.
 */
export function frontLines(fronts: readonly FrontCase[]): string[] {
  return (['continuous', 'nights'] as const).flatMap((running) => {
    const own = fronts.filter((one) => one.running === running);
    const share = (name: string, some: readonly FrontCase[]) => {
      const told = some.filter((one) => one.offHours !== null);
      const near = told.filter((one) => Math.abs(one.offHours!) <= 6);
      const cells = [name.padEnd(34), String(some.length).padStart(5), String(told.length).padStart(5)];
      const of = (all: readonly FrontCase[]) => (all.length === 0 ? '      -' : percent(near.length / all.length));
      return `  ${cells.join(' ')} ${of(some)} ${of(told)}`;
    };
    return [
      `front arrivals, ${running}: sensors that a front passed, told of them, within 6 fan hours of all and of those told`,
      share('all', own),
      share(
        'the log holds the arrival',
        own.filter((one) => one.held),
      ),
      share(
        'a hole of the log takes it away',
        own.filter((one) => !one.held),
      ),
      share(
        'one clear fall of the air',
        own.filter((one) => one.runnerUp < 0.8),
      ),
    ];
  });
}
