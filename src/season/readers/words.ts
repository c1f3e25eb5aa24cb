/** The contract's words; any other text where a number is due is a rejected cell, so that nobody's own word passes unseen. */
const MISSING = new Set(['', 'na', 'n/a', '--']);

/** Whether a trimmed cell says that there is no value. */
export function isMissing(text: string): boolean {
  return text.length <= 3 && MISSING.has(text.toLowerCase());
}

const ON = new Set(['on', '1', '1.0', 'true', 'running', 'run', 'yes', 'started']);
const OFF = new Set(['off', '0', '0.0', 'false', 'stopped', 'stop', 'no', 'idle']);

/** A fan's logged state: 1 on, 0 off, null for another word. */
export function stateWord(text: string): 0 | 1 | null {
  const word = text.toLowerCase();
  return ON.has(word) ? 1 : OFF.has(word) ? 0 : null;
}

// `delivered`, `load` and the like are left out: to the farm or from it, the word does not say.
const IN = new Set([
  'in',
  'into',
  'inbound',
  'fill',
  'filled',
  'filling',
  'received',
  'receive',
  'load in',
  'loaded in',
]);
const OUT = new Set([
  'out',
  'outbound',
  'unload',
  'unloaded',
  'unloading',
  'shipped',
  'ship',
  'sold',
  'removed',
  'load out',
  'loaded out',
]);

/** Which way a load went, null for a word that does not say. */
export function directionWord(text: string): 'in' | 'out' | null {
  const word = text.toLowerCase().replace(/[\s_-]+/g, ' ');
  return IN.has(word) ? 'in' : OUT.has(word) ? 'out' : null;
}
