import {
  airflowSection,
  arrivalFigures,
  arrivalTable,
  brokenBins,
  CAUTION_SOURCES,
  campaignTable,
  cautionsFor,
  counted,
  defineNotebook,
  frontGroups,
  frontLead,
  frontNotes,
  frontsAnswer,
  knownTotal,
  methodsOf,
  moistureFrontSection,
  paceTable,
  placedNotes,
  ranOnTogether,
  seasonFront,
  seasonFrontTable,
  section,
  sensorSeries,
  sharedFrontLead,
  sharedFrontNotes,
  totalKey,
  totalOfGroups,
  unloggedNotes,
  warmingLead,
  warmingTable,
  withheld,
} from '../src/notebook.ts';

export default defineNotebook(
  {
    id: 'fronts',
    title: 'Fronts',
    question: 'Did the cooling front get through everywhere?',
  },
  ({ loaded, review, units }) => {
    const series = sensorSeries(loaded.tables.readings);
    const fronts = review.bins.map((one) => seasonFront(one, series));
    const of = (verdict: string) => fronts.filter((one) => one.verdict === verdict);
    const told = [...of('through'), ...of('held')];
    const missed = of('held').reduce((sum, one) => sum + one.held.length, 0);
    const sensors = told.reduce((sum, one) => sum + (one.main?.seen ?? 0), 0);
    const none = withheld('No front was seen to get through.');
    // Of a fan that several bins share: after the front was through in the last of them.
    const groups = frontGroups(fronts).filter((group) => group.some((one) => one.verdict === 'through'));
    const ranOn = groups.map(ranOnTogether);
    const hoursOn =
      groups.length === 0
        ? knownTotal([none])
        : totalOfGroups(
            groups,
            ranOn.map((one) => one.hours),
          );
    const costOn =
      groups.length === 0
        ? knownTotal([none])
        : totalOfGroups(
            groups,
            ranOn.map((one) => one.cost),
          );
    const noted = (total: typeof hoursOn, note: string) => (total.of === null ? note : `${total.of}; ${note}`);
    return {
      answer: frontsAnswer(fronts, units),
      keyNumbers: [
        {
          label: 'Cooled through everywhere',
          quantity: 'count',
          amount: told.length === 0 ? null : of('through').length,
          note:
            told.length === 0
              ? 'No bin’s cooling could be followed.'
              : `of ${counted(fronts.length, 'bin')}, as far as sensors see`,
        },
        {
          label: 'Sensors not reached',
          quantity: 'count',
          amount: told.length === 0 ? null : missed,
          note:
            told.length === 0 ? 'No bin’s cooling could be followed.' : `of ${sensors}; a count, so without interval`,
        },
        {
          ...totalKey('Fan hours run on after', 'hours', hoursOn),
          note: noted(hoursOn, 'where a fan dries too they may have served that'),
        },
        {
          ...totalKey('Energy of those hours', 'money', costOn),
          note: noted(costOn, 'at each bin’s mean energy cost of a fan hour'),
        },
      ],
      sections: [
        section('bins', 'Bin by bin', () => ({
          lead: 'The coldest front of each bin, of those that passed at least half of its sensors.',
          table: seasonFrontTable(fronts, units),
          figures: arrivalFigures(fronts, units),
          tables: [paceTable(fronts, units, loaded.season.site.latitudeDeg)],
          notes: [...sharedFrontNotes(fronts, units), ...frontNotes(fronts), ...placedNotes(fronts)],
        })),
        ...fronts.map((front) =>
          section(`bin-${front.review.bin.id}`, front.review.bin.name, () => ({
            lead: `${frontLead(front, units)}${sharedFrontLead(front, fronts)}`,
            tables: [campaignTable(front, units), arrivalTable(front)],
          })),
        ),
        section('drying', 'Drying fronts', () => moistureFrontSection(review.bins, units)),
        section('warming', 'Warming fronts', () => ({
          lead: warmingLead(fronts),
          tables: [warmingTable(fronts)],
        })),
        section('airflow', 'Airflow by independent ways', () => airflowSection(review.bins, units)),
      ],
      warnings: [...brokenBins(review.bins), ...unloggedNotes(review.bins, 'fronts')],
      cautions: cautionsFor(),
      sources: [...methodsOf('fronts').flatMap((method) => method.sourceKeys), ...CAUTION_SOURCES],
    };
  },
);
