import { type GivenValue, readValue, valueText } from './parameter-value.ts';
import { STRATEGIES } from './strategies.ts';
import type { Parameters, Strategy } from './strategy.ts';

/** A rule of the kit with parameters that a user chose. */
export interface ChosenWay {
  id: string;
  /** by name; those left out take their usual values */
  parameters: Readonly<Record<string, GivenValue>>;
}

/** A way, or all that is wrong with what was asked for, a sentence each. */
export type WayRead = { ok: true; strategy: Strategy } | { ok: false; problems: string[] };

const WITH = ' with ';
const AND = /\s+and\s+/;
const PART = /^(\S+)\s+(\S.*)$/;

/**
 * `humidity-limit with rh 65 %`: the id, and each parameter that is not at its usual value, in the rule's own order. Two ways of
 * one name are the same way.
 */
export function wayName({ id, parameters }: Strategy, values: Parameters): string {
  const parts = parameters
    .filter((one) => valueText(one, values[one.name] ?? one.usual) !== valueText(one, one.usual))
    .map((one) => `${one.name} ${valueText(one, values[one.name])}`);
  return parts.length === 0 ? id : `${id}${WITH}${parts.join(' and ')}`;
}

/** The id before the parameters of a name. */
export function idOfWay(name: string): string {
  const [id] = plain(name).split(/ with(?: |$)/, 1);
  return id;
}

/** A way by its name, as `wayName` or a user writes it: `night-hours with from 22 h and to 6 h`. */
export function readWay(name: string): WayRead {
  const text = plain(name);
  const id = idOfWay(text);
  const told = text.slice(id.length + WITH.length);
  if (text !== id && told === '')
    return { ok: false, problems: [`"${text}" names no parameter; write e.g. "humidity-limit with rh 65 %".`] };
  const parts = text === id ? [] : told.split(AND).map((part) => ({ part, found: PART.exec(part) }));
  const problems = parts
    .filter(({ found }) => found === null)
    .map(
      ({ part }) => `"${text}" has "${part}"; a parameter and its value are due, e.g. "humidity-limit with rh 65 %".`,
    );
  const named = parts.flatMap(({ found }) => (found === null ? [] : [[found[1], found[2]] as const]));
  const twice = named.find(([one], i) => named.findIndex(([other]) => other === one) !== i);
  if (twice !== undefined) problems.push(`"${text}" gives ${twice[0]} twice; leave one of them away.`);
  const read = chooseWay({ id, parameters: Object.fromEntries(named) });
  if (problems.length === 0) return read;
  return { ok: false, problems: [...problems, ...(read.ok ? [] : read.problems)] };
}

/** A rule with the parameters chosen: its id is the way's name, its usual values are those. */
export function chooseWay({ id, parameters: given }: ChosenWay): WayRead {
  const strategy = STRATEGIES.find((one) => one.id === id);
  if (strategy === undefined) {
    return {
      ok: false,
      problems: [`There is no strategy "${id}"; there are ${STRATEGIES.map((one) => one.id).join(', ')}.`],
    };
  }
  const { parameters } = strategy;
  const problems: string[] = [];
  const values: Record<string, number> = {};
  for (const [name, value] of Object.entries(given)) {
    const parameter = parameters.find((one) => one.name === name);
    const read = parameter === undefined ? null : readValue(parameter, value);
    if (read === null) problems.push(`${id} has no parameter "${name}"; ${parametersSaid(strategy)}.`);
    else if (read.ok) values[name] = read.value;
    else problems.push(`${id}: ${name} ${read.reason}.`);
  }
  if (problems.length > 0) return { ok: false, problems };
  const name = wayName(strategy, values);
  if (name === id) return { ok: true, strategy };
  const chosen = parameters.filter((one) => wayName(strategy, { [one.name]: values[one.name] ?? one.usual }) !== id);
  return {
    ok: true,
    strategy: {
      ...strategy,
      id: name,
      parameters: parameters.map((one) => ({ ...one, usual: values[one.name] ?? one.usual })),
      chosen: chosen.map((one) => one.name),
    },
  };
}

/** @throws RangeError with all that is wrong */
export function wayOf(way: string | ChosenWay): Strategy {
  const read = typeof way === 'string' ? readWay(way) : chooseWay(way);
  if (!read.ok) throw new RangeError(read.problems.join(' '));
  return read.strategy;
}

/** `it has rh (20 % to 100 %, usually 70 %)`: what a rule's parameters may be. */
export function parametersSaid({ parameters }: Strategy): string {
  if (parameters.length === 0) return 'it has none';
  const each = parameters.map((one) => {
    const [low, high] = one.range.map((end) => valueText(one, end));
    return `${one.name} (${low} to ${high}, usually ${valueText(one, one.usual)})`;
  });
  return `it has ${each.join(', ')}`;
}

const plain = (name: string): string => name.trim().replace(/\s+/g, ' ');
