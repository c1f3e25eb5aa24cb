import { fanHoursBetween } from '../analysis/fan/spans.ts';
import { untimedStretches, withoutMoments } from '../analysis/fan/untimed-stretches.ts';
import { type BinReview, FAN_ON, FAN_UNKNOWN } from '../analysis/types.ts';
import { fanClock } from '../report/figures/fan-clock.ts';
import type { Figure } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import { knownSpan, localSpan, nightShare, stretches } from './fan-days.ts';

/** Date and hour of the day at which a bin's fans ran. @throws Error when nothing is known of them */
export function fanClockFigure(review: BinReview, units: Units): Figure {
  const { spans, hours, unknownHours } = review.fan;
  const count = spans.startMs.length;
  if (count === 0) throw new Error(review.fan.why ?? 'no fan log');
  const untimed = untimedStretches(review.fan.fans);
  const drawn = withoutMoments(spans, untimed);
  const on = stretches(drawn, FAN_ON, units.zone);
  const night = nightShare(spans, units.zone, untimed);
  const finding =
    night === null
      ? `${review.bin.name}: the fan never ran`
      : `${review.bin.name}: ${units.say('share', night)} of the fan hours fell between 22:00 and 6:00`;
  const untold = fanHoursBetween(spans) - fanHoursBetween(drawn);
  const hatched = [
    ...(unknownHours !== null && unknownHours > 0.05
      ? [`${units.say('hours', unknownHours)} are hatched: the log does not tell whether the fan ran.`]
      : []),
    ...(untold > 0.05
      ? [
          `Of ${units.say('hours', untold)}, measured, a meter tells how many, not when: the time between its readings is hatched.`,
        ]
      : []),
  ];
  return fanClock({
    id: 'clock',
    title: finding,
    alt: `${finding}; ${units.say('hours', hours)} in all.`,
    span: knownSpan(spans, units.zone),
    on,
    unknown: [...stretches(spans, FAN_UNKNOWN, units.zone), ...untimed.map((one) => localSpan(one, units.zone))],
    notShown: hatched.length > 0 ? hatched.join(' ') : null,
  });
}
