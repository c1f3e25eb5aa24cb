/** A function that works out its answer once for each object, as several parts ask the same of one season. */
export function onceFor<K extends object, V>(work: (of: K) => V): (of: K) => V {
  const known = new WeakMap<K, { answer: V }>();
  return (of) => {
    const before = known.get(of) ?? { answer: work(of) };
    known.set(of, before);
    return before.answer;
  };
}
