import { nameAndUnit } from '../implied-unit.ts';
import { nearest } from '../yaml/nearest.ts';
import { shown, shownList } from './shown.ts';

/**
 * The position of a declared header, trimmed, exactly or else but for capitals.
 *
 * @returns the position, or in words why there is none
 */
export function matchHeader(headers: readonly string[], wanted: string): number | string {
  const name = wanted.trim();
  const exact = positions(headers, (header) => header === name);
  const found = exact.length > 0 ? exact : positions(headers, (header) => header.toLowerCase() === name.toLowerCase());
  if (found.length === 1) return found[0];
  if (found.length > 1) return `the header ${shown(name)} stands ${found.length} times in the file; rename all but one`;
  const near = nearestHeader(headers, name);
  return `the file has no column ${shown(name)}; its headers are ${shownList(headers)}${near === null ? '' : `, the nearest is ${shown(near)}`}`;
}

/** The one header that is the name with a unit behind it, else one that differs by a typing error; null: none is near. */
function nearestHeader(headers: readonly string[], name: string): string | null {
  const bare = positions(headers, (header) => nameAndUnit(header).name.toLowerCase() === name.toLowerCase());
  if (bare.length === 1) return headers[bare[0]];
  const written = headers.filter((header) => header !== '');
  return nearest(name, written);
}

function positions(headers: readonly string[], test: (header: string) => boolean): number[] {
  return [...headers.keys()].filter((i) => test(headers[i]));
}

/** A header as a key of the contract would be written: `Static Pressure (Pa)` is `static_pressure`. */
export function keyName(header: string): string {
  return nameAndUnit(header)
    .name.toLowerCase()
    .replace(/[\s-]+/g, '_');
}
