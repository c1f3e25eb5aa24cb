import type { Method } from './method.ts';

/** Costs of bins beside each other. */
export const COST_METHODS: readonly Method[] = [
  {
    id: 'cost-per-point',
    title: 'Cost per point and per bushel-point',
    statement:
      'For a bin whose goal is dry, its cost over its points removed; per bushel-point, that over the bushels. It is withheld for other goals, because cooling takes off a little water in passing, and where the interval of the points reaches zero. Its interval joins the errors of cost and points.',
    constants: [],
    sourceKeys: ['fieller-1954'],
    usedOn: ['overview', 'fan-energy', 'bins-compared'],
  },
  {
    id: 'shared-places',
    title: 'Places of bins',
    statement:
      'Bins are ranked with bins of their goal and crop only: by cost per bushel-point where they were run to dry, per bushel-point added where they were run to add moisture, per bushel else. A bin’s best place is 1 + the number of bins whose interval lies wholly below its own; its worst is the number of bins less those whose interval lies wholly above. Bins whose intervals overlap always share a place; one wholly below another always stands before it. Overlap is the stricter test: two bins can share places and still differ when held against each other, for the error of a ratio is less than that of both together. A bin is not ranked where its cost is withheld, where a fan of it serves another bin too, and where its fan log leaves out more than two days of its storage.',
    constants: [
      'two bins of one true cost and equally wide 90 % intervals part by chance in 2 of 100 pairs (worked out)',
      'fan log lacking at the start or the end: 2 days (the kit’s choice)',
    ],
    sourceKeys: ['goldstein-healy-1995'],
    usedOn: ['bins-compared'],
  },
  {
    id: 'cost-factors',
    title: 'What makes the difference between two bins',
    statement:
      'Cost per bushel-point is exactly the price of energy (money per kWh) × all charges over the energy’s × power per bushel while the fan runs × fan hours per point. So the ratio of two costs is the product of four ratios. A factor’s share of the difference is the logarithm of its ratio over that of the cost’s: shares add up to 100 %, one below zero pulled the other way. Power and hours trade off, as more air draws more power and needs fewer hours; energy is the two together. In the intervals each cause of error is moved alone, so that what is common to two factors cancels. Shares are told within one crop, where the costs can be told apart. Every bin is held against the cheapest of its goal and crop, one alone with its crop against the cheapest of its goal.',
    constants: [],
    sourceKeys: ['ang-2005'],
    usedOn: ['bins-compared'],
  },
  {
    id: 'air-at-fill',
    title: 'Air at fill',
    statement:
      'Outdoor temperature and humidity, means over the fan hours of the first 21 days from the fan’s first run on fresh grain. Beside it the mean moisture at which the crop settles in that air as it enters, warmed by the fan at the same water content: the plenum’s temperature where logged, else outdoors plus the usual warming. Its interval spans the editions of the isotherm and, where the warming is not logged, 1.7 to 2.8 °C (3 to 5 °F) of it, 0.4 to 1.3 °C (0.8 to 2.4 °F) where the goal is to cool or hold. Two bins’ air is told apart from half a point, or from 2 °C (3.6 °F), on.',
    constants: [
      '21 days; known for at least 80 % of the fan hours (the kit’s choice)',
      'warming: 2 °C (3.6 °F), of 1.7 to 2.8 °C (3 to 5 °F) published at 1 to 1.5 kPa (4 to 6 inches of water); 0.8 °C (1.4 °F) where the goal is to cool or hold, at 0.25 to 0.75 kPa (1 to 3 inches of water) (common practice)',
    ],
    sourceKeys: ['asae-d245-5', 'ndsu-2018-soybean'],
    usedOn: ['bins-compared'],
  },
  {
    id: 'overdrying',
    title: 'Over-drying loss',
    statement:
      'Grain sold drier than the market’s base moisture (else the target) gives away weight: the loss is dry matter ÷ (1 − base moisture) less dry matter ÷ (1 − moisture at the end), in legal bushels, and in money at the stated price. Grain that ended wetter has none.',
    constants: [],
    sourceKeys: ['unl-2017-optimum-moisture'],
    usedOn: ['moisture', 'overview'],
  },
];
