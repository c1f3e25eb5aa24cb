import { AS_LOGGED, IN_HINDSIGHT, SWEPT } from '../../src/analysis/strategies/run-strategy.ts';
import { didYouMean } from '../../src/season/yaml/nearest.ts';
import { idOfWay, parametersSaid, readWay } from '../../src/simulation/strategies/chosen-way.ts';
import { STRATEGIES } from '../../src/simulation/strategies/strategies.ts';

const OPTION = '--strategies';

/** Ways as a command line names them, `humidity-limit` or `humidity-limit with rh 65 %`, each by its own name. What is wrong is told, and left out. */
export function waysOf(given: readonly string[], wrong: (code: string, message: string) => void): string[] {
  const tell = (message: string) => wrong('SWEEP_OPTION', message);
  if (given.length === 0) tell(`${OPTION} names nothing; there are ${SWEPT.join(', ')}.`);
  return given.flatMap((text) => {
    const id = idOfWay(text);
    if (!SWEPT.includes(id)) tell(unknownSaid(OPTION, id, SWEPT));
    else if (id !== AS_LOGGED && id !== IN_HINDSIGHT) {
      const read = readWay(text);
      if (read.ok) return [read.strategy.id];
      for (const problem of read.problems) tell(`${OPTION}: ${problem}`);
    } else if (id === text) return [id];
    else tell(`${OPTION} has "${text}"; ${id} has no parameters. Leave out what follows it.`);
    return [];
  });
}

/** A name that is not known, with those that are and the nearest. */
export function unknownSaid(option: string, given: string, known: readonly string[]): string {
  const begun = known.filter((name) => name.startsWith(given));
  const near = begun.length === 1 ? ` Did you mean "${begun[0]}"?` : didYouMean(given, known);
  return `${option} names "${given}"; there are ${known.join(', ')}.${near}`;
}

/** The rules that have parameters, a line each, for help. */
export function parameterLines(): string[] {
  return STRATEGIES.filter(({ parameters }) => parameters.length > 0).map(
    (one) => `  ${one.id}: ${parametersSaid(one).replace('it has ', '')}`,
  );
}
