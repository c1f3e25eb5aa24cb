// A first look: read this file from top to bottom beside its page, change a line, save, and see what moves.
//
//   npm run notebook -- notebooks/first-look.ts data-samples/sorrel-fork --watch
//
// A notebook of your own: npm run new-notebook -- my-page
import { amount, degF, frame, middle, notebook, op } from '../src/notebook.ts';

export default notebook(
  {
    title: 'First look',
    question: 'Which bin had the most fan hours, what did they do, and would another rule have done it for less?',
  },
  // Take from the sheet what you need. Your editor lists the rest behind each name, with units.
  async ({ season, units, bins, data, tryWays, answer, key, heading, text, note, table, figure }) => {
    // 1. Numbers. Each bin carries its own with unit and 90 % interval: fanHours, points, cost, costPerPoint …
    //    In a text they are said in your units; missing ones become a dash with the reason. `middle` takes the bare value out.
    const ranked = [...bins].sort((a, b) => (middle(b.fanHours) ?? 0) - (middle(a.fanHours) ?? 0));
    const [most] = ranked;
    if (most === undefined) return answer`Can’t tell: ${season.title} has no bin.`;
    key('Fan hours', most.fanHours, most.name);
    key('Points removed', most.points, most.name);
    key('Cost of its fans', most.cost, most.name);

    // 2. A table: rows, and which of their columns under which heading.
    heading('Every bin');
    text`Hours alone say little: ${ranked.map((bin) => `${bin.name} was run to ${bin.goal}`)}.`;
    table(ranked, {
      columns: {
        name: 'Bin',
        grain: 'Grain',
        fanHours: 'Fan hours',
        points: 'Points removed',
        cost: 'Cost',
        costPerPoint: { label: 'Cost for a point', marked: true },
      },
    });
    // A figure: what goes across, what goes up. Its title is the finding; intervals are drawn by themselves.
    if (middle(most.fanHours) !== null)
      figure({ title: `${most.name} had the most fan hours`, rows: ranked, x: 'name', y: 'fanHours' });

    // 3. The log: readings, fan, plenum, weather, tickets, probes, bills, as tables for arquero's verbs.
    //    Names end in their unit (temp_f, moisture_pct; temp_c for readers of SI), and the page takes it from there.
    heading('What its cables read');
    const readings = data('readings', { bin: most.id });
    const temperature = units.system === 'us' ? 'temp_f' : 'temp_c';
    const days = readings.groupby('day', 'cable').rollup({ [temperature]: op.mean(temperature) });
    text`${readings.numRows()} readings of ${most.name}, by day and cable.`;
    const { targetTempC } = most.review.bin.grain;
    figure({
      title: `How the grain of ${most.name} cooled`,
      rows: days,
      x: 'day',
      y: temperature,
      by: 'cable',
      fan: most,
      level: targetTempC === null ? undefined : { at: amount('temperature', targetTempC), label: 'target' },
    });

    // 4. The same as a data frame, if you like frames better. The library comes in when it is first asked for.
    heading('The days in numbers');
    const described = (await frame(days, [temperature])).describe();
    table(described, {
      columns: { row: 'Of the daily means', [temperature]: 'Temperature' },
      title: 'All cables, all days',
    });

    // 5. A rule of your own, run on the bin's bed as fitted to its own log. `now` is what a controller could know, in °C and fractions;
    //    degF(40) is 40 °F there. Answer whether the fan runs in this hour.
    heading('Another rule');
    const dewFree = {
      id: 'dry-afternoons',
      title: 'Dry afternoons',
      words: 'From noon to eight, while the air is under 75 % and over 40 °F.',
      fan: (now: { localHour: number; outdoorRh: number; outdoorC: number }) =>
        now.localHour >= 12 && now.localHour < 20 && now.outdoorRh < 0.75 && now.outdoorC > degF(40),
    };
    const tried = tryWays(most, ['as-logged', 'humidity-limit', dewFree]);
    if (tried.why !== null) text`Not told for ${most.name}: ${tried.why}`;
    else {
      table(tried.ways, { title: `${most.name}, three ways to run its fans` });
      figure({ title: 'What each way would have cost', rows: tried.ways, x: 'way', y: 'cost', form: 'dots' });
    }

    // 6. The answer, all of the question: a number with its interval, or why there is none. It stands first on the page, wherever it is written.
    const [logged, ...others] = tried.ways;
    const cheapest = others
      .filter(({ reached }) => reached instanceof Date)
      .sort((a, b) => (middle(a.cost) ?? Infinity) - (middle(b.cost) ?? Infinity))[0];
    const ran = bins.length === 1 ? '' : `, the most of ${bins.length} bins`;
    if (middle(most.fanHours) === null) {
      answer`Can’t tell which bin had the most fan hours. ${most.review.fan.hours.why}`;
    } else if (tried.why !== null) {
      answer`${most.name} ran ${most.fanHours}${ran}, and its moisture went from ${most.moistureIn} to ${most.moistureOut}; whether another rule would have done it for less can’t be told. ${tried.why}`;
    } else if (cheapest === undefined) {
      answer`${most.name} ran ${most.fanHours}${ran}, and its moisture went from ${most.moistureIn} to ${most.moistureOut}; by its model neither of ${others.length} other rules would have brought it to its target.`;
    } else {
      const there = logged.reached instanceof Date ? '' : ' and does not come there';
      answer`${most.name} ran ${most.fanHours}${ran}, and its moisture went from ${most.moistureIn} to ${most.moistureOut}; by its model “${cheapest.way}” would have brought it to its target for ${cheapest.cost}, where the way it was run comes to ${logged.cost}${there}.`;
    }

    // 7. Say what a reader must know to judge it.
    note`Readings that a check does not believe are left out; the warnings below count them.`;
  },
);
