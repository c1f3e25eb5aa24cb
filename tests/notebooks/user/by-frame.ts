// As somebody writes who likes data frames.
import { frame, notebook } from '../../../src/notebook.ts';

export default notebook(
  { title: 'In frames', question: 'How warm and how wet were the bins over the whole log?' },
  async ({ bins, data, answer, heading, table }) => {
    answer`${bins.length} bins, each described below.`;
    for (const bin of bins) {
      heading(bin.name);
      const readings = await frame(data('readings', { bin: bin.id }), ['temp_f', 'moisture_pct']);
      table(readings.describe(), { title: `${bin.name}, all readings` });
    }
    heading('Wettest hours');
    const all = (await frame(data('readings'), ['bin_name', 'hour', 'moisture_pct'])).dropNa({ axis: 1 });
    const means = all.groupby(['bin_name']).agg({ moisture_pct: 'mean' });
    table(means, { columns: { bin_name: 'Bin', moisture_pct_mean: { label: 'Mean', of: 'moisture', unit: '%' } } });
  },
);
