import { zoneOf } from '../../base/zone.ts';
import { didYouMean } from './nearest.ts';
import { show } from './show.ts';

/** Names without a region that still say the offset and the rule of daylight saving (tz database, file northamerica). */
const WHOLE = ['UTC', 'EST5EDT', 'CST6CDT', 'MST7MDT', 'PST8PDT'];

/** A place that keeps the time which an abbreviation most often means. Abbreviations themselves are refused: `CST` is three zones, and it does not say whether the clock goes forward. */
const PLACE: Readonly<Record<string, string>> = {
  ...of('America/St_Johns', 'NST', 'NDT'),
  ...of('America/Halifax', 'AST', 'ADT'),
  ...of('America/New_York', 'EST', 'EDT', 'ET', 'EASTERN'),
  ...of('America/Chicago', 'CST', 'CDT', 'CT', 'CENTRAL'),
  ...of('America/Denver', 'MST', 'MDT', 'MT', 'MOUNTAIN'),
  ...of('America/Los_Angeles', 'PST', 'PDT', 'PT', 'PACIFIC'),
  ...of('America/Anchorage', 'AKST', 'AKDT'),
  ...of('Pacific/Honolulu', 'HST'),
  ...of('Europe/London', 'BST', 'GB'),
  ...of('Europe/Berlin', 'CET', 'CEST', 'MEZ', 'MESZ', 'MET'),
  ...of('Europe/Athens', 'EET', 'EEST'),
  ...of('Europe/Lisbon', 'WET', 'WEST'),
  ...of('Australia/Sydney', 'AEST', 'AEDT'),
  ...of('UTC', 'GMT', 'Z', 'ZULU', 'UCT'),
};

function of(place: string, ...names: string[]): Record<string, string> {
  return Object.fromEntries(names.map((name) => [name, place]));
}

/** An IANA name of the form Area/Place (`Etc/GMT+6` too), or one that tells as much. An offset (`-06:00`) and an abbreviation (`CST`) are refused: they do not say what the clock does in spring. */
export function isZone(name: string): boolean {
  if (!WHOLE.includes(name) && !/^[A-Za-z][\w-]*\/[\w+\-/]+$/.test(name)) return false;
  try {
    zoneOf(name);
    return true;
  } catch {
    return false;
  }
}

/** What is wrong with a name that is no zone. `also`: words that are taken too. */
export function zoneText(name: string, also: readonly string[] = []): string {
  const words = also.map((one) => `, or \`${one}\``).join('');
  const place = PLACE[name.trim().toUpperCase()];
  if (place === 'UTC') return `is ${show(name)}; it takes an IANA time zone${words}. Write UTC.`;
  if (place !== undefined) {
    const standard = also.length === 0 ? '' : `, or \`${also[0]}\` if the logger keeps standard time all year`;
    return `is ${show(name)}; an abbreviation does not say whether the clock goes forward in spring. Write the place, e.g. ${place}${standard}.`;
  }
  const known = [...also, ...Intl.supportedValuesOf('timeZone'), 'UTC'];
  return `is ${show(name)}; it takes an IANA time zone, e.g. America/Chicago${words}.${didYouMean(name, known)}`;
}
