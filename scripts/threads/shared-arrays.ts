/** Arrays of numbers that may be many and long. */
type Numbers = Float64Array | Uint8Array | Uint16Array;

/**
 * The same plain data with its arrays of numbers in memory that all threads read, so that a task hands over none of them.
 *
 * @param value  numbers, text, plain objects and lists, and arrays of numbers; nothing of it is changed
 */
export function withSharedArrays<T>(value: T): T {
  return shared(value) as T;
}

function shared(value: unknown): unknown {
  if (value instanceof Float64Array || value instanceof Uint8Array || value instanceof Uint16Array) return held(value);
  if (Array.isArray(value)) return value.map(shared);
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, shared(one)]));
}

function held<A extends Numbers>(values: A): A {
  const made = new (values.constructor as new (buffer: SharedArrayBuffer) => A)(
    new SharedArrayBuffer(values.byteLength),
  );
  made.set(values);
  return made;
}
