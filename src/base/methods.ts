import { BUSHEL_FT3 } from './bushel.ts';
import type { Method } from './method.ts';
import { STRATEGY_METHODS } from './strategy-methods.ts';

/** What the pages stand on, in the order in which the methods page tells it. */
export const METHODS: readonly Method[] = [
  {
    id: 'fan-hours',
    title: 'Fan hours',
    statement:
      'A fan is on from a reading that says so until the next reading. A gap in its log longer than three usual intervals is unknown: it is counted and shown, never taken as off. A bin’s fan hours are clock hours in which any of its fans ran; two fans running together are one bin fan-hour.',
    constants: ['longest step that is believed: 3 usual intervals of the log (the kit’s choice)'],
    sourceKeys: [],
    usedOn: ['overview', 'fan-energy'],
  },
  {
    id: 'energy',
    title: 'Energy',
    statement:
      'kWh are taken from a meter if there is one, else from logged power, else from current: √3 · volts · amperes · power factor on three phases, volts · amperes · power factor on one; else from the nameplate: shaft power × load ÷ motor efficiency. Where season.yaml states neither load nor efficiency, 1 kW is taken for each horsepower. The page says which.',
    constants: [
      '√3 for three phases',
      '1 kW for each nameplate horsepower (planning figure)',
      'full load and a motor efficiency of 0.88 where only the other is stated (common practice, from memory)',
    ],
    sourceKeys: ['unl-2015-reconditioning'],
    usedOn: ['overview', 'fan-energy'],
  },
  {
    id: 'cost',
    title: 'Cost',
    statement:
      'Cost is energy + demand + connected + heat. Runs are cut exactly at the tariff’s boundaries in local time, and the first rule that matches prices the part. Demand is the month’s highest 15-minute mean of all fans on the tariff, not less than the ratchet’s share of the highest of the 11 months before; it is shared among bins by their part in that peak. Fixed and minimum charges stay with the tariff.',
    constants: ['demand interval: 15 minutes', 'ratchet window: 11 months before the billed one'],
    sourceKeys: [],
    usedOn: ['overview', 'fan-energy'],
  },
  {
    id: 'demand-ways',
    title: 'Demand, had the fans run in another order',
    statement:
      'The fans’ own runs are billed again by the same tariff. Starts apart: of fans that start within one quarter hour each next one starts a quarter hour later than it would have. In turns: each fan runs as long on each local day as it did, first in the quarter hours that no demand rule counts, then in those with the least running beside it, the strongest fan first; days that this does not help stay as they were. No order of the same hours of the day can bring the charge below what is told as the least: the fans’ hours that do not fit beside the counted time, spread evenly, and the weakest of as many fans as must meet. Of the fans alone; what the air of other hours does to the grain is not in it.',
    constants: [
      'demand interval: 15 minutes',
      'error of a peak: 2 % (assumed, from memory), beside that of the fans’ powers',
    ],
    sourceKeys: [],
    usedOn: ['fan-energy'],
  },
  {
    id: 'bill-share',
    title: 'Bills and fans',
    statement:
      'The fans’ part of a bill is their energy within its own time, their runs cut at its first and last moment, and what the tariff charges for it: energy, the demand of the fans’ own peak in that time with the ratchet of the eleven months before, and connected load by the month. The rest is billed less fans (and less fixed charges, in money). Time that no log tells while a bin holds grain widens the interval, but no further than to all of the bill. Where the fans explain more than was billed, the page names what most likely makes it so, in this order: the error of the logs; what is assumed of a fan’s power; the days on which the meter was read; a factor of the meter or another meter.',
    constants: ['a reading may be off its date by 4 days (common practice; from memory)'],
    sourceKeys: [],
    usedOn: ['fan-energy'],
  },
  {
    id: 'energy-per-point',
    title: 'Energy for a bushel-point and for water',
    statement:
      'For a bin whose goal is dry: the fans’ kWh over its points removed and its bushels, and over the water that its sensors say left (dry matter × change of moisture, dry basis), with the errors of all of them. Withheld where points or water cannot be told from none. Beside it stand published figures of natural-air corn drying; a bin lies outside when the whole of its interval does, and the page says what most likely makes it so.',
    constants: [
      'working range 0.15 to 0.45 kWh a bushel-point: the kit’s own judgement about 0.31 kWh (North Dakota) and about 1 kWh a bushel (Minnesota)',
    ],
    sourceKeys: ['ndsu-2007-natural-air', 'umn-natural-air', 'fieller-1954'],
    usedOn: ['fan-energy'],
  },
  {
    id: 'bushel',
    title: 'Bushels',
    statement:
      'For money, bushels are the weight of the grain as filled over the crop’s legal bushel weight. The weight is that of the scale tickets where they cover the filling: every load in has a weight, and their sum agrees with depth times test weight. Else it is depth times test weight, and the interval reaches up as far as grain may pack. For airflow a bushel is a volume of 1.2445 cubic feet.',
    constants: [
      'scales: 0.2 % (standard error, common practice)',
      'depth and test weight: 2 %, 4 % where no test weight is stated (standard error, from memory)',
      'packing: up to 5 % (from memory)',
      'legal bushel weights: by crop, in the table of crops on the methods page',
      `bushel of volume: ${BUSHEL_FT3} ft³`,
    ],
    sourceKeys: ['test-weight'],
    usedOn: ['overview', 'moisture', 'fan-energy'],
  },
  {
    id: 'mean-moisture',
    title: 'Mean moisture of a bin',
    statement:
      'Each sensor weighs the dry matter nearest to it: its share of the height (half-way to its neighbours; floor and surface at the ends) times its cable’s ring (circles half-way between the distances from the centre, shared by cables at one distance). Moistures are averaged on a dry basis and told on a wet basis. A sensor at or above the grain’s surface is out.',
    constants: [],
    sourceKeys: [],
    usedOn: ['moisture', 'overview'],
  },
  {
    id: 'mean-temperature',
    title: 'Mean temperature of a bin',
    statement:
      'Sensors weigh as they do for moisture. The 90 % interval joins the sensors’ errors and the spread between cables and heights as squares. Beyond the outermost sensors it reaches, on its own side, as far as the grain may have followed the weather since it was filled: heat conducted in from the day’s mean outdoor air through rim, surface and floor, flushed while the fan runs. Without weather there is no interval.',
    constants: [
      'diffusivity of bulk grain: 0.9 to 1.3 × 10⁻⁷ m²/s (D243, from memory)',
      'sun on the steel: wall 0 to 4 K, air under the roof 0 to 6 K above the air (from memory)',
    ],
    sourceKeys: ['asae-d243'],
    usedOn: ['moisture'],
  },
  {
    id: 'still-air',
    title: 'Still-air readings',
    statement:
      'A cable’s moisture is worked out from the humidity of the air between the kernels. While the fan runs it shows the air that passes. So readings taken after the fan has stood still for two hours are used where there are any; the others are shown beside them.',
    constants: ['still: 2 hours after the fan stopped (the kit’s choice)'],
    sourceKeys: [],
    usedOn: ['moisture'],
  },
  {
    id: 'points-removed',
    title: 'Points removed',
    statement:
      'Mean moisture at the start less that at the end, in percentage points, wet basis; positive when removed. Start: the first 24 hours of still-air readings once filled (else the first 24 hours). End: the last 24 hours of such readings before unloading.',
    constants: ['window: 24 hours (the kit’s choice)'],
    sourceKeys: [],
    usedOn: ['moisture', 'overview'],
  },
  {
    id: 'useful-hours',
    title: 'Useful hours',
    statement:
      'Each fan hour is named by what its air could do to the bulk of the grain. Drying and rewetting: the moisture that grain takes in that air in the long run (desorption), against the grain’s mean moisture of the day, by still-air readings where there are any. Cooling and warming: the temperature that the air leads the grain to behind its front, evaporation counted in, against the grain’s mean. The air is the plenum’s where it was logged with the fan on, else outdoor air with the fan’s warming at the same water content. An hour nearer to the grain than the thresholds could do next to nothing. What is for and against the goal stands on the page. Off, would have paid: air that could have worked for the goal, outdoor air warmed as with the fan on, while the grain was short of its target. The intervals span the isotherms in use for the crop, half and double thresholds, the error of a single moment’s mean moisture, and 1 °C (1.8 °F) less and more warming where no plenum reading tells it, half of that where the goal is to cool or hold; hours that nobody can class are added to the upper ends.',
    constants: [
      'thresholds: 0.5 point and 2 °F where season.yaml states none (the kit’s choice)',
      'reached: within 0.2 point of a target moisture, 5 °F of a target temperature',
      'air readings farther than 6 h from an hour say nothing of it, days of moisture farther than 5 days',
    ],
    sourceKeys: ['asae-d245-5', 'sutherland-1971', 'ndsu-2018-soybean'],
    usedOn: ['fan-energy'],
  },
  {
    id: 'moisture-rate',
    title: 'Points by fan hours',
    statement:
      'From start to end: the points removed over all fan hours. By month, and as a line through all days: the median of the slopes between all pairs of days, which a few odd days cannot turn (a mean of squares would follow them). Days of one rest of the fan count once. The interval of a slope comes from the ranks of the pairs, widened where neighbouring days hang together, and joined with drift, the grain that no sensor sees, and the lean of readings in moving air; fixed errors cancel. Hours and kWh for a point are withheld where the rate may be zero.',
    constants: [
      'at least 5 days and 24 fan hours between the first and the last (the kit’s choice)',
      'pairs of days closer than 6 fan hours are left out (the kit’s choice)',
    ],
    sourceKeys: ['theil-1950', 'sen-1968', 'bayley-hammersley-1946', 'kendall-1954', 'fieller-1954'],
    usedOn: ['moisture'],
  },
  {
    id: 'points-interval',
    title: 'The interval of the points',
    statement:
      'All intervals are 90 %. A sensor’s fixed error and the bias that a bin’s sensors share cancel in a difference of the same sensors; noise, drift, readings taken while the fan ran, the spread between cables, and the grain that lies between and beyond sensors do not. They are added as squares, each with its degrees of freedom, and a t value of the effective degrees of freedom widens the sum. The page lists the parts.',
    constants: ['coverage: 90 %; stated sensor limits are taken as limits that 95 % keep'],
    sourceKeys: ['satterthwaite-1946', 'jcgm-100'],
    usedOn: ['moisture', 'overview'],
  },
  {
    id: 'layers',
    title: 'Layers and loads',
    statement:
      'Bottom, middle and top are thirds of the depth. A sensor counts in a third by the part of it that lies nearest to the sensor; a cable without a sensor in a third says nothing of it, and cables with one must stand for a third of the floor. The intervals are wider than the bin’s, as a front may stand anywhere between two sensors. Over a centre sump grain flows as a funnel (common practice): the core first, then the top, the bottom along the wall last; so a load may be as wet as the wettest third or the core, and only the whole bin is all mixed. The core is told by a cable within a quarter of the radius.',
    constants: ['spread between cables in a third: twice that over the depth (working assumption)'],
    sourceKeys: ['satterthwaite-1946'],
    usedOn: ['moisture'],
  },
  {
    id: 'stages',
    title: 'Filled or emptied in steps',
    statement:
      'Between two changes of the stated depth no grain comes or goes: each such stage is told by the sensors in the grain that lay there all through it. Stage points times the share of the full bin’s dry matter add up to the points per bushel of the full bin: so what went in, less what went out, less what is left, closes. Where grain comes or goes the mean moves by mixing, which is no drying. The points removed begin when the bin was full; where the fans ran 24 h or more after the first grain left, what the rest lost is added by its share.',
    constants: ['a change of depth: 3 % of the deepest and more (the kit’s choice)'],
    sourceKeys: [],
    usedOn: ['moisture', 'overview'],
  },
  {
    id: 'tickets-agree',
    title: 'Sensors against tickets',
    statement:
      'The sensors’ mean at the start is held against the loads in, at the end against the loads out, by their 90 % intervals: the sensors’ fixed error and shared bias count in full here, beside the error of the tickets’ meter and the sampling of the loads. What the fans ran between loads and readings is allowed for at the season’s rate, from nothing to twice it. Loads that are under 85 % of the grain are not its mean and are not judged. The bias that would explain a difference is the one that all sensors would have to share.',
    constants: [
      'meter of the tickets: 0.6 point that 95 % keep; sampling a load: 0.3 point (standard error); both from memory',
    ],
    sourceKeys: ['satterthwaite-1946'],
    usedOn: ['moisture'],
  },
  {
    id: 'hand-samples',
    title: 'Hand samples',
    statement:
      'A hand sample is held against the cables of the ring nearest to it, at its height on the line between the sensors above and below, by readings in still air around its day (up to two days off where next to no fan ran). Each weighs by how well its place, the cables between which it may lie, and one sample are known; the meter’s own error is the same in all and stays whole. Samples of grain under 4 °C (40 °F) do not count beside three warmer ones, else with twice the meter’s error. The corrected numbers take the offset off every moisture by sensors; between two moments of the same sensors it cancels.',
    constants: [
      'hand meter: 0.5 point that 95 % of readings keep (common practice); a sample: 0.3 point (standard error, from memory)',
      'near: 5 ft (1.5 m) from the cable, 3 ft (1 m) of height from a sensor (the kit’s choice)',
      'samples that scatter more than they should widen the interval by Birge’s ratio (from memory)',
    ],
    sourceKeys: ['satterthwaite-1946'],
    usedOn: ['moisture'],
  },
  {
    id: 'isotherm',
    title: 'Equilibrium moisture',
    statement:
      'Grain and the air between its kernels settle at one moisture for each humidity and temperature. A cable that measures humidity turns it into moisture by such an equation before it logs; the kit takes what was logged as it is. Where the kit works one out itself it takes the crop’s default equation, unless season.yaml names another.',
    constants: ['default equation and why it was chosen: by crop, in the table of crops on the methods page'],
    sourceKeys: ['asae-d245-5'],
    usedOn: ['moisture'],
  },
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
      'Outdoor temperature and humidity, means over the fan hours of the first 21 days from the fan’s first run on fresh grain. Beside it the mean moisture at which the crop settles in that air as it enters, warmed by the fan at the same water content: the plenum’s temperature where logged, else outdoors plus the usual warming. Its interval spans the editions of the isotherm and, where the warming is not logged, 3 to 5 °F of it (0.8 to 2.4 °F where the goal is to cool or hold). Two bins’ air is told apart from half a point, or from 2 °C (3.6 °F), on.',
    constants: [
      '21 days; known for at least 80 % of the fan hours (the kit’s choice)',
      'warming: 2 °C (3.6 °F), of 3 to 5 °F published at 4 to 6 inches of water; 0.8 °C (1.4 °F) where the goal is to cool or hold, at 1 to 3 inches (common practice)',
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
  {
    id: 'campaign',
    title: 'Campaign',
    statement:
      'A stretch of fan running whose air, averaged over a day, is clearly cooler or warmer than the grain it enters, so that a front moves through. It ends when the fan rests for long or the day’s mean air crosses the grain’s mean. The air is the plenum’s where it was logged, else the weather’s, raised by the fan’s warming.',
    constants: [
      'clearly cooler or warmer: 3 °C (5.4 °F)',
      'a rest that ends it: 72 h (the kit’s choice)',
      'shortest: 6 fan hours (the kit’s choice)',
      'while the fan runs on: also more than the grain’s own daily swing; a front that the air’s turn ended before two thirds of the sensors is a swing of the weather (the kit’s choice)',
      'warming by fan and motor where the plenum does not tell it: 2 °C (3.6 °F), of 3 to 5 °F published at 4 to 6 inches of water; 0.8 °C (1.4 °F) where the goal is to cool or hold, at 1 to 3 inches (common practice)',
    ],
    sourceKeys: ['ndsu-2018-soybean'],
    usedOn: ['fronts'],
  },
  {
    id: 'front-arrival',
    title: 'Front arrival',
    statement:
      'At a sensor, the moment when its temperature has gone half of the way from ahead (the mean of the 12 hours before the campaign, or before the front begins to move it) to behind (the mean from 6 to 30 fan hours after its steepest change). It is told in clock time and in fan hours since the campaign began. A change under 3 °C (5.4 °F) is no front. Where the temperature moved more than once, the moments are chosen that make one front along the cable, never backwards; a sensor that fits none is left out and says so.',
    constants: ['ahead: 12 hours', 'behind: 6 to 30 fan hours', 'least change: 3 °C'],
    sourceKeys: [],
    usedOn: ['fronts'],
  },
  {
    id: 'front-through',
    title: 'Through everywhere',
    statement:
      'The season’s cooling of a bin is told by its main campaign: of the cooling ones whose front passed at least half of the sensors, the one with the coldest air. The front did not reach a sensor whose grain stayed more than half of the way from the air, unless it went on to a sensor farther along that cable, or a later front came there. A sensor is undated where the grain was within 3 °C (5.4 °F) of the air already, or went at least half of the way to it with no front that can be dated. A front is through when it failed to reach no sensor; the hours until then, and those run on, carry the error of one arrival.',
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
      'Hours to push a cooling front through are about 15 over the cfm per bushel. A planning figure with a margin, shown beside the measured time and not used for it. Beside it stand a handbook’s hours by season, recalled and not checked.',
    constants: ['15 h × cfm/bu', 'handbook: 15 h × cfm/bu in fall, 20 in winter'],
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
  {
    id: 'airflow-by-front',
    title: 'Airflow by fronts',
    statement:
      'What one sensor saw is carried to the next: later by the fan hours of the way, and spread on it. The airflow is the one at which the two logs agree best. How far a change goes for each kilogram of air follows from the balances of heat and water of grain and air, at the temperature of the moment: evaporation carries nearly half of the heat. Grain that takes up heat and water late, mixing and conduction spread a change and bring the crests of daily waves forward by up to a tenth, but leave its mean time as the balances say; so the spread is fitted beside the airflow, and so is a fixed difference of the two thermometers. All running counts, daily waves and weather as well as whole fronts, in stretches of up to 120 fan hours. A cable’s airflow is the weighted median over its pairs of sensors, the bin’s the mean of the cables by their rings. Dry matter and the published isotherms and specific heats are taken in the middle of what they leave open. The interval joins the spread between stretches and between cables, moisture, dry matter and those constants. Where it leaves room for an error of more than 20 % no number is shown; the reason tells the interval. Water by air then takes the airflow by pressure, or that interval where there is no pressure.',
    constants: [
      'places at one distance from the centre differ by 7 % (working assumption, as firm as three cables); 10 % where no two cables hang at one distance',
      'grain between and beyond the cables: 4 %; 30 % where the only cables hang within a quarter of the radius, fading to half of it (working assumptions)',
      'the balances themselves: 3 % (tried on beds with a drying rate and other isotherms)',
      'spread of a change between two sensors: variance a tenth of the mean time squared, a factor of 3 either way, before the logs are looked at (working assumption)',
      'two thermometers against each other: 0.37 °C (0.67 °F), standard deviation',
    ],
    sourceKeys: ['sutherland-1971'],
    usedOn: ['fronts', 'overview', 'moisture'],
  },
  {
    id: 'airflow-by-pressure',
    title: 'Airflow by static pressure',
    statement:
      'The median static pressure with the fan on, by depth and by the fans that run, drives the air that the published resistance of the grain lets through: pressure = packing factor × depth × a v² ÷ ln(1 + b v). The interval joins what packing leaves open, every set of constants that reaches such airflows, the pressure sensor and the depth. A stated fan curve gives a cross-check at the logged pressure. Two airflows agree where their intervals overlap, also where the fronts’ is too wide to be shown; the fronts’ is used where it is shown.',
    constants: [
      'packing where it is not stated: 1.5 for corn and 1.3 for others, from four fifths of that (not below 1) to a quarter more',
      'packing where season.yaml states it: 10 % either way (working assumption)',
      'pressure sensor: 4 % or 12 Pa (0.05 inH2O); depth: 4 %; fan curve: 12 % (working assumptions)',
    ],
    sourceKeys: ['asae-d272-3', 'mwps-drying'],
    usedOn: ['fronts', 'overview'],
  },
  {
    id: 'water-ways',
    title: 'Water by independent ways',
    statement:
      'By sensors: dry matter times the change of the mean moisture, dry basis. By the air: for each hour of running, dry air times what its humidity ratio gained. The gain is had twice: the leaving air in balance with the last grain that it passes, its humidity by the isotherm of the cable, less the entering air; and by the balance of heat, since what the air loses in temperature and what the grain gives up beside goes into vapour. The two are joined by their errors. By tickets: dry matter over the scale times the change of its moisture, where the loads in and out are the whole bin (dry matter within 4 %).',
    constants: [
      'humidity sensors: 3 % in the plenum, 4 % outdoors, limits that 95 % keep (working assumption)',
      'thermometer of the plenum: 0.5 °C (0.9 °F) where season.yaml states none, a limit that 95 % keep (working assumption)',
      'hours without readings count like the others, with half of their water as standard error; below 60 % of the fan hours nothing is told',
    ],
    sourceKeys: ['rodriguez-arias-1963', 'ashrae-2017', 'jcgm-100'],
    usedOn: ['moisture'],
  },
  ...STRATEGY_METHODS,
];

/** The methods that a page's numbers hang on. */
export function methodsOf(pageId: string): readonly Method[] {
  return METHODS.filter((method) => method.usedOn.includes(pageId));
}
