// As somebody writes who likes verbs: the log rolled up by day and cable, the night before against the afternoon.
import { desc, notebook, op } from '../../../src/notebook.ts';

export default notebook(
  { title: 'Warm cables', question: 'Which cable of the first bin stays warmest, and how far do its days swing?' },
  ({ bins, data, answer, heading, text, table, figure }) => {
    const [bin] = bins;
    const readings = data('readings', { bin: bin.id });
    const byCable = readings
      .groupby('cable')
      .rollup({
        readings: () => op.count(),
        mean_temp_f: (d) => op.mean(d.temp_f),
        driest_moisture_pct: (d) => op.min(d.moisture_pct),
      })
      .orderby(desc('mean_temp_f'));
    const warmest = byCable.get('cable', 0) as string;
    answer`Cable ${warmest} of ${bin.name} is the warmest of ${byCable.numRows()}.`;

    heading('By cable');
    text`${readings.numRows()} readings.`;
    table(byCable, {
      columns: { cable: 'Cable', readings: 'Readings', mean_temp_f: 'Mean', driest_moisture_pct: 'Driest' },
    });

    heading('By day');
    const days = readings.groupby('day', 'cable').rollup({ temp_f: (d) => op.mean(d.temp_f) });
    table(days.orderby('day', 'cable'), { title: 'Days', most: 1000 });
    figure({ title: `${bin.name} by day`, rows: days, x: 'day', y: 'temp_f', by: 'cable', fan: bin });

    heading('Afternoons');
    const hours = readings
      .groupby('hour')
      .rollup({ temp_f: (d) => op.mean(d.temp_f) })
      .orderby('hour');
    table(hours, { title: 'Hours' });
  },
);
