import type { Method } from './method.ts';

/** How the grain kept. */
export const CONDITION_METHODS: readonly Method[] = [
  {
    id: 'storage-time',
    title: 'Storage time used',
    statement:
      'The rule of a crop says how long grain may be held at one temperature and moisture. At each sensor every quarter day uses its part of that time, and the parts add up, from when grain came around the sensor until it left. Temperatures as read, straight between readings up to two days apart; between readings up to 15 days apart, as of cables read by hand, the grain goes from one to the other, in an hour of blown air as far as in twenty of rest, and the interval holds it as cold and as warm as both, nearer to the air that was blown in the longer that was (half of the way from 120 fan hours on), and near an edge as far as two weeks’ swings of the outdoor air reach; not so where a heater ran or the blown air is not known; moistures by readings in still air, where none stands within five days by all, and where a sensor has none by the bin’s mean, straight between start and end by fan hours (by time where no log tells them) where no cable tells that; withheld where the fan was to change it and only one of the two is known; what the sensors differ by at the start and is, by their accuracy, their own error is taken off first. The mean weighs the sensors as for moisture. Dry matter lost is what corn’s curve gives for that part of the time, for crops whose rule moves corn’s, up to 5 %, where the curve ends. The interval joins thermometers, moistures and the rule itself as squares of the logarithm; holes of the log (before its first and after its last reading up to the outdoor air of those days) and the crop’s other rules widen it on their own side.',
    constants: [
      'the rule itself: 25 % (standard error), 45 % where corn stands in for an oilseed (own judgement, from the published comparisons on this page)',
      'told where readings stand near, or on both sides of, four fifths of the time in which grain lay there (the kit’s choice)',
    ],
    sourceKeys: ['ndsu-2019-drying', 'ng-1998', 'efron-morris-1975', 'carslaw-jaeger-1959'],
    usedOn: ['condition'],
  },
  {
    id: 'self-warming',
    title: 'Warming by itself',
    statement:
      'Heat that is only conducted never makes a place warmer than the warmest of what lay near it before, but for what comes in from outside. A place counts as warmed by itself where, within 5 to 60 days of rest of the fan, it rose by 2 °C (4 °F) and more, or by 5 °C (9 °F) and more within 2 to 4 days, and ended above every sensor within 2 m (6.6 ft) of its height and the next ones above and below, as they were at the beginning, and over more than 21 days above every sensor of the bin; and above that by what the warmest days outdoors since two weeks before, with the sun on the steel, may have brought in: floor and surface as half-spaces, the wall as a cylinder around the place that touches it.',
    constants: [
      'above by 1 °C (2 °F), within 2 to 4 days by 3 °C (5 °F), and by what two thermometers may differ (the kit’s choice)',
      'rest: at most 2 fan hours, no grain put in or drawn, no jump (the kit’s choice); sun on the steel: 6 °C (11 °F) over the day’s mean (from memory); 48 fan hours blow away what the outside had warmed before (the kit’s choice)',
      'a jump, which is a sensor’s or another grain’s: 1.5 °C (3 °F) and more from the day before to the day after, 80 to 130 % of it within 12 hours, or between readings of one day and the next; a cable all of whose sensors fell by 2 °C (4 °F) and more alike between readings by hand with the fan at rest hung in air, and a month before and after that says nothing (the kit’s choice)',
      'diffusivity of bulk grain: up to 1.3 × 10⁻⁷ m²/s (D243, from memory): heat goes 2 m in 21 days at most, 3.3 m in 60',
    ],
    sourceKeys: ['carslaw-jaeger-1959', 'asae-d243'],
    usedOn: ['condition'],
  },
  {
    id: 'beside-weather',
    title: 'Grain beside the weather',
    statement:
      'The day’s mean grain is held against the mean outdoor air of the 30 days before it: grain much warmer than that draws air up through its middle, and moisture with it. Insects: each day counts by the share of the grain that was warm enough for them; days between readings up to 15 days apart count by what lies between these, the interval by how cold and warm the grain may have been. A roof may be wet in fan hours in which the leaving air, in balance with the last grain it passed, holds more water than it can at the roof’s temperature.',
    constants: [
      'moisture was seen to move at about 11 °C (20 °F) above the average outdoor air',
      'insects develop at 13 to 35 °C (55 to 95 °F), best at 25 to 33 °C (77 to 91 °F)',
      'roof: as warm as the outdoor air; under a clear night sky 3 °C (5 °F) colder (from memory)',
    ],
    sourceKeys: ['ndsu-2009-wheat-barley', 'fields-1992'],
    usedOn: ['condition'],
  },
  {
    id: 'storage-guidance',
    title: 'Beside published guidance',
    statement:
      'The mean moisture at the end, with its interval, is held against what extension services publish for storing a crop up to about six months and longer. Drier with its whole interval, it is dry enough; moister with its whole interval, it is not; else the interval leaves it open. Wetter layers spoil before the mean does. The wettest of many sensors reads high partly by chance: each is drawn towards its third of the depth (under six there: the bin) as far as errors alone scatter them; one farther off than chance stays as read.',
    constants: [
      'moistures by crop stand in the table, each with its source; crops for which none was read have a dash',
      'NDSU’s list for long storage says the same of corn, soybeans and canola; it was read from slides, the labels of three crops by their order',
      'sorghum from memory',
    ],
    sourceKeys: [
      'msu-grain-monitoring',
      'ndsu-2019-drying',
      'osu-cr-1741',
      'mwps-13',
      'irri-storage-moisture',
      'canola-council-storage',
      'ndsu-2009-wheat-barley',
      'isu-2008-storage',
    ],
    usedOn: ['condition'],
  },
];
