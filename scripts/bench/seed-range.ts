import { InvalidArgumentError } from 'commander';

/** Drawn seasons, both ends among them. */
export interface SeedRange {
  from: number;
  to: number;
}

/** `9401-9420`, or one seed. @throws InvalidArgumentError for anything else */
export function seedRange(text: string): SeedRange {
  const [, first, last = first] = /^(\d+)(?:-(\d+))?$/.exec(text) ?? [];
  const [from, to] = [Number(first), Number(last)];
  if (!(from <= to)) throw new InvalidArgumentError('Give two rising numbers or one, e.g. 9401-9420.');
  return { from, to };
}
