import { listed } from '../../base/listed.ts';
import { knownTotal } from '../words.ts';
import type { Measure } from './measure.ts';
import { namesBin } from './names-bin.ts';

/** What the same measure in several bins is called, and what was seen of it in all. */
const MANY: Partial<
  Record<Measure['kind'], { title: string; seen(names: string, money: string): string; todo(names: string): string }>
> = {
  'stop-at-target': {
    title: 'Stop at the target',
    seen: (names, money) =>
      `${names} went out drier than the market’s base; stopped at the target they would have kept weight worth ${money}.`,
    todo: (names) =>
      `Stop the fans of ${names} when the bin’s mean comes to its target and its wettest layer is no more than 1.5 points above it, and check that layer with a probe.`,
  },
  'useful-hours-only': {
    title: 'No hours against the goal',
    seen: (names, money) =>
      `The fans of ${names} also ran while the air worked against their goal; the energy of those hours cost ${money}.`,
    todo: (names) =>
      `Let a humidity or temperature limit stop the fans of ${names} while the air works against the bin’s goal.`,
  },
  'stop-when-through': {
    title: 'Stop when the front is through',
    seen: (names, money) =>
      `The fans of ${names} ran on after the cooling front had come through everywhere; the energy of those hours cost ${money}.`,
    todo: (names) => `Stop the fans of ${names} when the topmost sensors have come down to the air’s temperature.`,
  },
};

/** Names told before the others are counted. */
const MOST_NAMES = 6;

/** A measure that several bins ask for told once, with what it saves in all of them; largest first. `said` puts money into words. */
export function grouped(measures: readonly Measure[], said: (saving: Measure['saving']) => string): Measure[] {
  const kinds = [...new Set(measures.map(({ kind }) => kind))];
  const out = kinds.flatMap((kind): Measure[] => {
    const of = measures.filter((one) => one.kind === kind);
    const many = MANY[kind];
    if (of.length < 2 || many === undefined) return of;
    const all = of.flatMap(({ bins }) => bins.map(({ bin }) => bin.name));
    const names =
      all.length > MOST_NAMES
        ? `${all.slice(0, MOST_NAMES).join(', ')} and ${all.length - MOST_NAMES} more bins`
        : listed(all);
    const saving = knownTotal(of.map((one) => one.saving)).total;
    return [
      {
        ...of[0],
        title: `${many.title}: ${names}`,
        bins: of.flatMap(({ bins }) => bins),
        seen: many.seen(names, said(saving)),
        todo: many.todo(names),
        saving,
        // What is seen of all tells the saving.
        tells: saving,
        energy: knownTotal(of.map((one) => one.energy)).total,
      },
    ];
  });
  return out.sort((a, b) => (b.saving.value ?? 0) - (a.saving.value ?? 0));
}

/** What was seen, for a page on which no heading names the bin: what is told of another rule says “it”. */
export function seenByName({ kind, bins, seen }: Pick<Measure, 'kind' | 'bins' | 'seen'>): string {
  const [one] = bins;
  return kind !== 'other-rule' || namesBin(seen, one.bin.name) ? seen : `${one.bin.name}: ${seen}`;
}
