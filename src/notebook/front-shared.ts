import { onTheirFans } from '../analysis/energy/fan-groups.ts';
import { frontGroups, ranOnTogether } from '../analysis/fronts/ran-on-together.ts';
import type { SeasonFront } from '../analysis/fronts/season-front.ts';
import { agreeing } from '../base/agreeing.ts';
import { listed } from '../base/listed.ts';
import type { Units } from '../report/units.ts';
import { sharedFansSaid } from './shared-fans.ts';
import { sentence } from './words.ts';

/** Of bins that share a fan: when that fan could have stopped, a sentence a group. */
export function sharedFrontNotes(fronts: readonly SeasonFront[], units: Units): string[] {
  return frontGroups(fronts)
    .filter((group) => group.length > 1)
    .flatMap((group) => {
      const { hours, last } = ranOnTogether(group);
      const [said] = sharedFansSaid(group.map(({ review }) => review));
      const then =
        hours.value === null || last === null
          ? sentence(hours.why ?? 'When it could have stopped is not known')
          : `It could have stopped once the last of them, ${last.review.bin.name}, was through: after that it ran on for ${units.say('hours', hours)}.`;
      return [`${said}. ${then}`];
    });
}

/** For a bin that was through while its shared fan was still needed elsewhere: what its hours run on were for; else nothing. */
export function sharedFrontLead(front: SeasonFront, fronts: readonly SeasonFront[]): string {
  const group = frontGroups(fronts).find((one) => one.includes(front)) ?? [];
  if (group.length < 2 || front.verdict !== 'through') return '';
  const { last } = ranOnTogether(group);
  if (last === front) return '';
  const reviews = group.map(({ review }) => review);
  const others = onTheirFans([front.review], reviews).map(({ bin }) => bin.name);
  const needed = last === null ? others : [last.review.bin.name];
  if (!needed.every((name) => others.includes(name))) return '';
  return ` ${agreeing(front.review.bin.fanIds.length, 'Its fan serves', 'Its fans serve')} ${listed(others)} too: hours run on here were needed there until ${listed(needed)} ${agreeing(needed.length, 'was', 'were')} through.`;
}
