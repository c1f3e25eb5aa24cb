import { AS_LOGGED } from '../../analysis/strategies/run-strategy.ts';
import { errorText } from '../../base/error-text.ts';
import type { Units } from '../../report/units.ts';
import { chooseWay, idOfWay, readWay, type WayRead } from '../../simulation/strategies/chosen-way.ts';
import { STRATEGIES } from '../../simulation/strategies/strategies.ts';
import type { Strategy } from '../../simulation/strategies/strategy.ts';
import { wayTitle } from '../way-title.ts';
import { sentence } from '../words.ts';
import { type OwnStrategy, ownStrategy } from './own-strategy.ts';
import type { Way } from './try-ways.ts';

/** Whether a notebook wrote the rule itself. */
export const isOwn = (way: Way): way is OwnStrategy => typeof way === 'object' && 'fan' in way;

/**
 * Ways as a notebook gives them, in the form that the bed runs.
 *
 * @returns  in the order given; `as-logged` as it is
 * @throws   RangeError with all that is wrong with them
 */
export function readWays(ways: readonly Way[], units: Units): (Strategy | typeof AS_LOGGED)[] {
  const problems: string[] = [];
  const strategies = ways.flatMap((way): (Strategy | typeof AS_LOGGED)[] => {
    if (way === AS_LOGGED) return [AS_LOGGED];
    const read = isOwn(way) ? readOwn(way) : readKit(way);
    if (read.ok) return [{ ...read.strategy, title: wayTitle(read.strategy, units) }];
    problems.push(...read.problems);
    return [];
  });
  const ids = strategies.map((one) => (typeof one === 'string' ? one : one.id));
  for (const twice of new Set(ids.filter((id, i) => ids.indexOf(id) !== i)))
    problems.push(`"${twice}" is tried twice; give each way an id of its own.`);
  if (problems.length > 0) throw new RangeError(problems.join(' '));
  return strategies;
}

function readOwn(own: OwnStrategy): WayRead {
  try {
    return { ok: true, strategy: ownStrategy(own) };
  } catch (error) {
    return { ok: false, problems: [sentence(errorText(error))] };
  }
}

function readKit(way: Exclude<Way, OwnStrategy>): WayRead {
  const id = typeof way === 'string' ? idOfWay(way) : way.id;
  const wrong = (problem: string): WayRead => ({ ok: false, problems: [problem] });
  if (!STRATEGIES.some((one) => one.id === id)) {
    const ids = [AS_LOGGED, ...STRATEGIES.map((one) => one.id)];
    return wrong(`the kit has no strategy "${id}"; it has ${ids.join(', ')}. Or write your own as { id, title, fan }.`);
  }
  if (typeof way === 'string') return readWay(way);
  const due = 'write { id, parameters: { … } }, or { id, title, fan } for your own';
  const other = Object.keys(way).find((key) => key !== 'id' && key !== 'parameters');
  if (other !== undefined) return wrong(`the way "${id}" has "${other}"; ${due}.`);
  if (typeof way.parameters !== 'object' || way.parameters === null)
    return wrong(`the way "${id}" has no parameters; ${due}.`);
  return chooseWay(way);
}
