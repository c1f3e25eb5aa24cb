import type { Method } from './method.ts';

/** Fronts through the grain. */
export const FRONT_METHODS: readonly Method[] = [
  {
    id: 'campaign',
    title: 'Campaign',
    statement:
      'A stretch of fan running whose air, averaged over a day, is clearly cooler or warmer than the grain it enters, so that a front moves through. It ends when the fan rests for long or the day’s mean air crosses the grain’s mean. Cooling air that within it comes back and then falls 3 °C (5.4 °F) below where it had been sends a second front: where each of the two passed more than half of the sensors, they are told as campaigns of their own. The air is the plenum’s where it was logged, else the weather’s, raised by the fan’s warming.',
    constants: [
      'clearly cooler or warmer: 3 °C (5.4 °F)',
      'a rest that ends it: 72 h (the kit’s choice)',
      'shortest: 6 fan hours (the kit’s choice)',
      'while the fan runs on: also more than the grain’s own daily swing; a front that the air’s turn ended before two thirds of the sensors is a swing of the weather (the kit’s choice)',
      'air that falls by smaller steps, with the grain’s mean going along: 3 °C (5.4 °F) from the last third of the grain on its way, the mean moved as far, and two thirds of the sensors passed in more than a day (the kit’s choice)',
      'warming by fan and motor where the plenum does not tell it: 2 °C (3.6 °F), of 1.7 to 2.8 °C (3 to 5 °F) published at 1 to 1.5 kPa (4 to 6 inches of water); 0.8 °C (1.4 °F) where the goal is to cool or hold, at 0.25 to 0.75 kPa (1 to 3 inches of water) (common practice)',
    ],
    sourceKeys: ['ndsu-2018-soybean'],
    usedOn: ['fronts'],
  },
  {
    id: 'front-arrival',
    title: 'Front arrival',
    statement:
      'At a sensor, the moment when its temperature has gone half of the way from ahead (the mean of the 12 hours before the campaign, or before the front begins to move it) to behind (the mean from 6 to 30 fan hours after its steepest change). It is told in clock time and in fan hours since the campaign began. A change under 3 °C (5.4 °F) is no front. Where the temperature moved more than once, the moments are chosen that make one front along the cable, never backwards, and one that entered all cables of the bin at one time; a sensor that fits none is left out and says so, and so does one whose readings break off amid the front or lack more than half of the hours behind it. Where a sensor went through half-way in a hole of its log, the arrival stands by the front’s pace, from the sensors of its cable that are told, and its interval is the hole. Where a sensor’s readings speak for another such moment nearly as much, as where the air fell in two steps alike, the interval reaches to it. Fan hours past time that the fan’s log does not know are missing; the clock time then is that of the readings.',
    constants: [
      'ahead: 12 hours',
      'behind: 6 to 30 fan hours',
      'least change: 3 °C (5.4 °F)',
      'nearly as much: nine tenths, or three fifths at half of a cable’s sensors alike (the kit’s choice)',
    ],
    sourceKeys: [],
    usedOn: ['fronts'],
  },
  {
    id: 'front-through',
    title: 'Through everywhere',
    statement:
      'The season’s cooling of a bin is told by its main campaign: of the cooling ones whose front passed at least half of the sensors, the one with the coldest air. The front did not reach a sensor whose grain stayed more than half of the way from the air, unless it went on to a sensor farther along that cable, or a later front came there. A sensor is undated where the grain was within 3 °C (5.4 °F) of the air already, or went at least half of the way to it with no front that can be dated. A front is through when it failed to reach no sensor; the hours until then, and those run on, carry the errors of the arrivals.',
    constants: [
      'part of the way that counts as cooled: half, as for an arrival',
      'error of an arrival: 6 fan hours for nine of ten sensors (tried on seasons whose truth is known)',
    ],
    sourceKeys: [],
    usedOn: ['fronts'],
  },
  {
    id: 'slowest-sensor',
    title: 'Slowest for its height',
    statement:
      'The sensor whose front came most fan hours after the median of the other cables at its height, between their sensors by a straight line. With one cable there is nothing to hold it against.',
    constants: ['lags up to 6 fan hours are not told: they are within the error of an arrival'],
    sourceKeys: [],
    usedOn: ['fronts'],
  },
  {
    id: 'cooling-rule',
    title: 'Rule of thumb for a cooling front',
    statement:
      'Hours to push a cooling front through are about 15 at 13.4 L/s per m³ (1 cfm/bu), and as many times more as the airflow is less. A planning figure with a margin, shown beside the measured time and not used for it. Beside it stand a handbook’s hours by season, recalled and not checked.',
    constants: [
      '15 h at 13.4 L/s per m³ (1 cfm/bu)',
      'handbook: 15 h in fall, 20 in winter, at 13.4 L/s per m³ (1 cfm/bu)',
    ],
    sourceKeys: ['isu-2021-cool-grain'],
    usedOn: ['fronts'],
  },
  {
    id: 'front-speed',
    title: 'Front speed',
    statement:
      'Fan hours over height: in each cable the median of the slopes of all pairs of sensors half a metre apart or more, so that one arrival told wrong does not move it; the bin’s is the mean of the cables’ hours a metre, weighed by how well each can tell. The interval joins the error of arrivals with the differences between cables. Where its fast end would be over four times the middle no speed is told.',
    constants: [
      'error of an arrival: 6 fan hours for nine of ten sensors',
      'cables differ by 12 % (working assumption, as firm as three differences)',
    ],
    sourceKeys: ['theil-1950', 'sen-1968'],
    usedOn: ['fronts'],
  },
  {
    id: 'moisture-front',
    title: 'Front of drying or wetting',
    statement:
      'One for the season’s running, by moisture sensors. Ahead: the first two days of a sensor. Behind: the median, by fan hours of their later half, of the sensors nearest to where the air enters, or of the sensor itself where it ended farther on. Arrival: the fan hour at which the day’s moisture went through half-way and stayed beyond for three days (two at the log’s end). Still-air readings carry a day where there are two or more. Along a cable the most sensors that one front can have passed in order are kept. No front is told where ahead and behind differ by less than 1.5 points, or where all heights moved together.',
    constants: [
      'least change: 1.5 points',
      'level of half-way: 0.4 point (sd) with the fan on, 0.2 in still air (working assumptions)',
    ],
    sourceKeys: [],
    usedOn: ['fronts'],
  },
];
