import { createRequire } from 'node:module';

const library = createRequire(import.meta.url)('psychrolib');
library.SetUnitSystem(library.SI);

/** A function of the reference library in SI. @throws RangeError when it has no such function */
export function psychrolibSi(name: string, ...values: number[]): number {
  if (typeof library[name] !== 'function') throw new RangeError(`psychrolib has no function "${name}"`);
  return library[name](...values);
}
