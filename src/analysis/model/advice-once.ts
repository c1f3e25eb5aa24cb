/** Ends a piece of advice where the static pressure is in no log. */
const LOG_PRESSURE = /, and log the static pressure\.$/;

/**
 * Advice of several doubts, each sentence once, and nothing to log that is logged.
 *
 * @param hasPressure  the plenum's static pressure is logged and tells an airflow
 */
export function adviceOnce(helps: readonly string[], hasPressure: boolean): string[] {
  const told = new Set<string>();
  return helps.flatMap((help) => {
    const fresh = help
      .split(/(?<=\.) (?=\p{Lu})/u)
      .map((sentence) => (hasPressure ? sentence.replace(LOG_PRESSURE, '.') : sentence))
      .filter((sentence) => !told.has(sentence));
    for (const sentence of fresh) told.add(sentence);
    return fresh.length === 0 ? [] : [fresh.join(' ')];
  });
}
