import { QUANTITIES, type QuantityDef } from '../quantities.ts';

/** The words that units begin with: `°F`, `points`, `kWh`; a currency by its three letters. */
const WORDS = [
  ...new Set(
    Object.values(QUANTITIES as Record<string, QuantityDef>)
      .flatMap((def) => [def.us, def.si, def.usWord ?? '', def.siWord ?? ''])
      .map((unit) => unit.split(' ')[0])
      .filter((word) => word !== '' && !word.startsWith('¤')),
  ),
  'point',
  'fan hours',
];

const escaped = (word: string) => word.replace(/[\\/.*+?^${}()|[\]]/g, '\\$&');
const UNIT = new RegExp(`(\\d) (?=(?:${WORDS.map(escaped).join('|')}|[A-Z]{3})(?![\\p{L}\\d]))`, 'gu');

/** A text in which no line breaks between a number and its unit: the space there is a no-break one. */
export function gluedUnits(text: string): string {
  return text.replace(UNIT, '$1\u00a0');
}
