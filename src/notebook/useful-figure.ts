import { FAN_UNKNOWN } from '../analysis/types.ts';
import type { HourClass } from '../analysis/useful/useful-hours-types.ts';
import { listed } from '../base/listed.ts';
import { type HourLook, type HourPanel, hourClasses } from '../report/figures/hour-classes.ts';
import type { LocalSpan } from '../report/figures/time-axis.ts';
import type { Figure } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import { knownSpan, localSpan, stretches } from './fan-days.ts';
import { type BinHours, withHours } from './useful-tables.ts';
import { known } from './words.ts';

const LOOKS: Readonly<Record<HourClass, HourLook>> = {
  dry: 'dry',
  rewet: 'rewet',
  cool: 'cool',
  warm: 'warm',
  little: 'little',
  unknown: 'hatch',
  empty: 'open',
};

/** Date and hour of the day at which each bin's fans ran, and what each hour could do. @returns null where no bin has a fan log */
export function usefulFigure(bins: readonly BinHours[], units: Units): Figure | null {
  const told = withHours(bins).filter(({ review }) => review.fan.spans.startMs.length > 0);
  if (told.length === 0) return null;
  const panels = told.map(({ review, useful }): HourPanel => {
    const on: Partial<Record<HourLook, LocalSpan[]>> = {};
    for (const stretch of useful.stretches) {
      const look = LOOKS[stretch.of];
      const local = localSpan(stretch, units.zone);
      const list = on[look] ?? [];
      on[look] = list;
      if (local.toMs > local.fromMs) list.push(local);
    }
    const silent = stretches(review.fan.spans, FAN_UNKNOWN, units.zone);
    if (silent.length > 0) on.hatch = [...(on.hatch ?? []), ...silent];
    return {
      name: review.bin.name,
      on,
      missed: useful.offStretches.map((span) => localSpan(span, units.zone)).filter((span) => span.toMs > span.fromMs),
    };
  });
  const worst = told
    .flatMap(({ review, useful }) => {
      const share = known(useful.againstShare);
      return share === null ? [] : [{ name: review.bin.name, share, useful }];
    })
    .sort((a, b) => b.share.value - a.share.value)[0];
  const title =
    worst === undefined
      ? 'When the fans ran'
      : worst.share.value === 0
        ? 'No hour worked against a goal'
        : `${worst.name}: ${units.say('share', worst.share)} of the fan hours worked against the goal`;
  const named = told.map(
    ({ review, useful }) =>
      `${review.bin.name} ${units.say('hours', useful.hours.dry)} drying, ${units.say('hours', useful.hours.rewet)} rewetting, ${units.say('hours', useful.hours.cool)} cooling, ${units.say('hours', useful.hours.warm)} warming`,
  );
  const spans = told.map(({ review }) => knownSpan(review.fan.spans, units.zone));
  return hourClasses({
    id: 'hours',
    title,
    alt: `${title}. Hours by what the air could do: ${listed(named)}.`,
    span: {
      fromMs: Math.min(...spans.map((span) => span.fromMs)),
      toMs: Math.max(...spans.map((span) => span.toMs)),
    },
    panels,
    notShown: null,
  });
}
