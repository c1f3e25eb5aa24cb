/** `my-page` as `My page`. */
function titleOf(name: string): string {
  const words = name.replaceAll('-', ' ');
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/**
 * A commented notebook that runs as it is on any season.
 *
 * @param name  stem of its file: lower-case words with hyphens
 * @param door  how the kit's `src/notebook.ts` is reached from its folder
 */
export function starterNotebook(name: string, door: string): string {
  return `// ${titleOf(name)}: a notebook reads from top to bottom and becomes one page.
// Draw it:            npm run notebook -- <this file> <season folder>
// Draw at each save:  npm run notebook -- <this file> <season folder> --watch
import { desc, middle, notebook, op } from '${door}';

export default notebook(
  {
    title: '${titleOf(name)}',
    question: 'Which bin had the most fan hours, and what came of them?',
  },
  // Take what you need from the sheet; your editor lists the rest behind each name.
  ({ bins, data, answer, key, heading, text, table, figure, note }) => {
    // Every bin carries its numbers with unit and interval; \`middle\` takes the bare middle to sort by.
    const ranked = [...bins].sort((a, b) => (middle(b.fanHours) ?? 0) - (middle(a.fanHours) ?? 0));
    const [most] = ranked;

    // The first sentence answers the question. A number between \${ } is said in your readers' units, with its interval.
    if (most === undefined) answer\`Can’t tell: the season has no bin.\`;
    else answer\`\${most.name} ran \${most.fanHours} and its points removed are \${most.points}.\`;
    for (const bin of ranked.slice(0, 4)) key(\`\${bin.name}, fan hours\`, bin.fanHours);

    heading('Bin by bin');
    text\`\${bins.length} bins, the one with the most fan hours first.\`;
    table(ranked, {
      columns: {
        name: 'Bin',
        crop: 'Crop',
        fanHours: 'Fan hours',
        points: 'Points removed',
        cost: 'Cost',
        costPerPoint: 'Cost for a point',
      },
    });
    if (ranked.some(({ fanHours }) => middle(fanHours) !== null)) {
      figure({ title: 'Fan hours of each bin', rows: ranked, x: 'name', y: 'fanHours' });
    }

    heading('What the cables read');
    // The log as a table for arquero's verbs: readings, fan, plenum, weather, tickets, probes, bills.
    // Names of columns end in their unit, which the page's headings and axes take from there.
    const readings = data('readings');
    table(
      readings
        .groupby('bin_name')
        .rollup({ readings: () => op.count(), cables: (d) => op.distinct(d.cable), last_day: (d) => op.max(d.day) })
        .orderby(desc('readings')),
      { columns: { bin_name: 'Bin', cables: 'Cables', readings: 'Readings', last_day: 'Last day' } },
    );
    note\`Readings that a check does not believe are missing here; the warnings below count them.\`;
  },
);
`;
}
