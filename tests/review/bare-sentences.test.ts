import { beforeAll, describe, expect, it } from 'vitest';
import type { Page } from '../../src/report/page.ts';
import type { Quantity } from '../../src/report/quantities.ts';
import { type Amount, Units } from '../../src/report/units.ts';
import { samplePages } from './sample-pages.ts';

/** Stands before a number that was said without its interval. */
const MARK = '\u2063';
/** What was paid is stated, what was read is counted, limits are the kit's own. */
const SAYS = /\b(measured|stated|counted|published|billed|paid|read|limits?)\b/i;
/** Counts have their noun; places of cables and sensors are those of season.yaml. */
const NO_INTERVAL: readonly Quantity[] = ['count', 'length'];

/** Marks each number that a sentence is given without interval. */
class Marking extends Units {
  override say(quantity: Quantity, amount: Amount): string {
    const bare = typeof amount === 'number' || (amount !== null && amount.value !== null && amount.interval === null);
    return `${bare && !NO_INTERVAL.includes(quantity) ? MARK : ''}${super.say(quantity, amount)}`;
  }
}

function sentencesOf({ answer, sections }: Page): string[] {
  const figures = sections.flatMap((one) => [...(one.figures ?? [])]).map(({ title }) => title);
  const notes = sections.flatMap((one) => [...(one.notes ?? [])]);
  return [answer, ...sections.map((one) => one.lead), ...notes, ...figures].flatMap((text) =>
    text.split(/(?<=[.;:])\s/),
  );
}

const bare = (sentence: string) => sentence.includes(MARK) && !SAYS.test(sentence);

describe('no sentence of a page, and no figure’s title, has a number without its interval or the word how it is known', () => {
  let pages: Page[] = [];

  beforeAll(async () => {
    pages = await samplePages('sorrel-fork', Marking);
  });

  it('in the sample', () => {
    const all = pages.flatMap(sentencesOf);
    expect(all.length).toBeGreaterThan(100);
    expect([...new Set(all.filter(bare))]).toEqual([]);
  });

  it('would be seen: an amount without interval is marked, one with it and a count are not', () => {
    const units = new Marking('us', 'USD', 'America/Chicago');
    expect(bare(`It ran ${units.say('hours', 12)}.`)).toBe(true);
    expect(bare(`It ran ${units.say('hours', { value: 12, interval: null, why: null })}.`)).toBe(true);
    expect(bare(`It ran ${units.say('hours', { value: 12, interval: [11, 13], why: null })}.`)).toBe(false);
    expect(bare(`It ran ${units.say('hours', 12)}, measured.`)).toBe(false);
    expect(bare(`It has ${units.say('count', 12)} sensors.`)).toBe(false);
  });
});
