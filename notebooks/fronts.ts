import {
  arrivalFigure,
  arrivalTable,
  brokenBins,
  CAUTION_SOURCES,
  campaignTable,
  cautionsFor,
  counted,
  defineNotebook,
  frontFinding,
  frontLead,
  listed,
  methodsOf,
  section,
  sentence,
  tradeTable,
} from '../src/notebook.ts';

export default defineNotebook(
  {
    id: 'fronts',
    title: 'Fronts',
    question: 'Did the cooling fronts get through everywhere, and did the fans run on after?',
  },
  ({ review, units }) => {
    const { bins } = review;
    const found = bins
      .flatMap((one) => one.fronts.campaigns.map((campaign) => ({ one, campaign, ...frontFinding(campaign) })))
      .filter((each) => each.of > 0);
    const through = found.filter((each) => each.throughHours !== null);
    const held = [...new Set(found.filter((each) => each.throughHours === null).map((each) => each.one.bin.name))];
    const after = through.reduce((sum, each) => sum + (each.after ?? 0), 0);
    const sensors = found.reduce((sum, each) => sum + each.of, 0);
    const passed = found.reduce((sum, each) => sum + each.reached, 0);
    return {
      answer:
        found.length === 0
          ? 'Can’t tell how far any front got, because no bin has a campaign of fan running with cable temperatures.'
          : `${through.length} of ${counted(found.length, 'campaign')} went through everywhere; fronts were seen to pass ${passed} of ${counted(sensors, 'sensor')}.${held.length === 0 ? '' : ` Not everywhere in ${listed(held)}.`}`,
      keyNumbers: [
        { label: 'Campaigns', quantity: 'count', amount: found.length },
        { label: 'Through everywhere', quantity: 'count', amount: through.length },
        {
          label: 'Fan hours run on after',
          quantity: 'hours',
          amount: through.length === 0 ? null : after,
          note: through.length === 0 ? 'No front was seen to get through.' : 'Drying may have been what they were for.',
        },
      ],
      sections: bins.map((one) =>
        section(`bin-${one.bin.id}`, one.bin.name, () => {
          const { campaigns, why } = one.fronts;
          return {
            lead: frontLead(one),
            table: tradeTable([one], units),
            figures: campaigns
              .filter((campaign) => campaign.arrivals.some((each) => each.fanHours !== null))
              .map((campaign) => arrivalFigure(campaign, one, units)),
            tables: [campaignTable(one, units), ...campaigns.map((campaign) => arrivalTable(campaign, units))],
            notes: [
              ...(campaigns.length === 0
                ? []
                : [
                    `Air from ${listed([...new Set(campaigns.map((campaign) => (campaign.airFrom === 'plenum' ? 'the plenum sensor' : 'the weather log')))])}.`,
                  ]),
              ...(why === null || campaigns.length === 0 ? [] : [sentence(why)]),
            ],
          };
        }),
      ),
      warnings: brokenBins(bins),
      cautions: cautionsFor(),
      sources: [...methodsOf('fronts').flatMap((method) => method.sourceKeys), ...CAUTION_SOURCES],
    };
  },
);
