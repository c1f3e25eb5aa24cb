import type { Method } from '../../base/methods/method.ts';
import { METHODS } from '../../base/methods/methods.ts';
import type { Entry } from '../../report/page.ts';
import type { Season } from '../../season/season.ts';
import { capital } from '../words.ts';
import { sourceText } from './source-text.ts';

/**
 * What the pages define, with constants, sources and the pages whose numbers hang on it.
 *
 * @param season  what none of its numbers hang on is not printed
 * @throws        RangeError for a source that is not in the bibliography
 */
export function methodEntries(titles: Readonly<Record<string, string>>, season: Pick<Season, 'fans'>): Entry[] {
  return METHODS.map((method) => ({
    id: `method-${method.id}`,
    term: method.title,
    text: method.statement,
    details: [...methodDetails(method), `Used on: ${method.usedOn.map((page) => titles[page] ?? page).join('; ')}.`],
    ...(bearsOn(method, season) ? {} : { printed: false as const }),
  }));
}

/** Whether numbers of a season can hang on it. */
export function bearsOn({ ofHeaters }: Method, { fans }: Pick<Season, 'fans'>): boolean {
  return ofHeaters !== true || fans.some(({ heater }) => heater !== null);
}

/** A definition's constants, and where it is from. */
export function methodDetails({ constants, sourceKeys }: Method): string[] {
  const sources = sourceKeys.map((key) => sourceText({ key })).join('. ');
  return [...constants.map(capital), ...(sources === '' ? [] : [`Source: ${sources}.`])];
}
