// As somebody writes who has a rule of his own: before breakfast, on the bin's fitted bed.
import { notebook } from '../../../src/notebook.ts';

export default notebook(
  { title: 'Before breakfast', question: 'What would running from four to nine have cost?' },
  ({ bins, tryWays, answer, heading, table, figure }) => {
    const early = {
      id: 'before-breakfast',
      title: 'Before breakfast',
      fan: (now: { localHour: number }) => now.localHour >= 4 && now.localHour < 9,
      endsItself: true,
    };
    const half = { id: 'half-hours', title: 'Half of each hour', fan: () => 0.5, endsItself: true };
    heading('Ways');
    const tried = tryWays(bins[0], [early, half, 'as-logged']);
    if (tried.why !== null) return answer`Can’t tell: ${tried.why}`;
    answer`${tried.ways[0].way} runs ${tried.ways[0].fanHours} for ${tried.ways[0].cost}.`;
    table(tried.ways, { title: 'Three ways' });
    figure({ title: 'What they cost', rows: tried.ways, x: 'way', y: 'cost' });
  },
);
