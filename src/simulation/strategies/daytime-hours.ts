import type { Strategy } from './strategy.ts';
import { withinClock } from './within-clock.ts';

export const daytimeHours: Strategy = {
  id: 'daytime-hours',
  title: 'Daytime hours',
  words: 'A clock runs the fan in the warm half of the day, every day.',
  parameters: [
    {
      name: 'from',
      words: 'local hour at which the clock switches on',
      short: 'from #',
      unit: 'h',
      usual: 9,
      range: [0, 24],
    },
    { name: 'to', words: 'local hour at which it switches off', short: 'to #', unit: 'h', usual: 21, range: [0, 24] },
  ],
  sourceKey: 'ndsu-2009-wheat-drying',
  fan: ({ localHour }, { from, to }) => withinClock(localHour, from, to),
};
