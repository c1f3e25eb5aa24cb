import type { Method } from './method.ts';

/** Moisture and temperature of the grain, and the fan hours that moved them. */
export const GRAIN_METHODS: readonly Method[] = [
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
      'Sensors weigh as they do for moisture; where the fan ran for over 3 hours within the day of still air, the readings before that running stand alone at the start, those after it at the end. The 90 % interval joins the sensors’ errors and the spread between cables and heights as squares. Beyond the outermost sensors it reaches, on its own side, as far as the grain may have followed the weather since it was filled: heat conducted in from the day’s mean outdoor air through rim, surface and floor, flushed while the fan runs; and where the fan ran between the moment and the first or last reading, as far as that air may have moved the part of the grain that a front passes at the most in those hours. Without weather there is no interval.',
    constants: [
      'diffusivity of bulk grain: 0.9 to 1.3 × 10⁻⁷ m²/s (D243, from memory)',
      'sun on the steel: wall 0 to 4 K, air under the roof 0 to 6 K above the air (from memory)',
      'a front before the first reading: through the bin in 15 fan hours at the soonest, 30 to cool or hold (planning figure at 1 and 0.5 cfm/bu); past six tenths there is no start',
    ],
    sourceKeys: ['asae-d243', 'isu-2021-cool-grain'],
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
    constants: [
      'window: 24 hours (the kit’s choice)',
      'where a fan log is left out: the start within two days of the filling',
    ],
    sourceKeys: [],
    usedOn: ['moisture', 'overview'],
  },
  {
    id: 'useful-hours',
    title: 'Useful hours',
    statement:
      'Each fan hour is named by what its air could do to the bulk of the grain. Drying and rewetting: the moisture that grain takes in that air in the long run (desorption), against the grain’s mean moisture of the day, by still-air readings where there are any. Cooling and warming: the temperature that the air leads the grain to behind its front, evaporation counted in, against the grain’s mean. The air is the plenum’s where it was logged with the fan on, else outdoor air with the fan’s warming at the same water content. An hour nearer to the grain than the thresholds could do next to nothing. What is for and against the goal stands on the page. Off, would have paid: air that could have worked for the goal, outdoor air warmed as with the fan on, while the grain was short of its target. The intervals span the isotherms in use for the crop, half and double thresholds, the error of a single moment’s mean moisture, and 1 °C (1.8 °F) less and more warming where no plenum reading tells it, half of that where the goal is to cool or hold; hours that nobody can class are added to the upper ends.',
    constants: [
      'thresholds: 0.5 point and 1.1 °C (2 °F) where season.yaml states none (the kit’s choice)',
      'reached: within 0.2 point of a target moisture; hours off would have paid until within 2.8 °C (5 °F) of a target temperature, hours on are for the goal down to the target itself',
      'air readings farther than 6 h from an hour say nothing of it, days of moisture farther than 5 days',
    ],
    sourceKeys: ['asae-d245-5', 'sutherland-1971', 'ndsu-2018-soybean'],
    usedOn: ['fan-energy'],
  },
  {
    id: 'moisture-rate',
    title: 'Points by fan hours',
    statement:
      'From start to end: the points removed over the fan hours from the moment of the moisture at the start to that at the end (moistures that tickets tell or season.yaml states: from the first grain, until it was unloaded). By month, and as a line through all days: the median of the slopes between all pairs of days, which a few odd days cannot turn (a mean of squares would follow them). Days of one rest of the fan count once. The interval of a slope comes from the ranks of the pairs, widened where neighbouring days hang together, and joined with drift, the grain that no sensor sees, and the lean of readings in moving air; fixed errors cancel. Hours and kWh for a point are withheld where the rate may be zero, or where the upper end of the interval would be over ten times the lower.',
    constants: [
      'at least 5 days and 24 fan hours between the first and the last (the kit’s choice)',
      'pairs of days closer than 6 fan hours are left out (the kit’s choice)',
      'an interval whose upper end is over ten times the lower says nothing (the kit’s choice)',
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
    id: 'depth-at-rest',
    title: 'Depth by the temperatures at rest',
    statement:
      'While the fans rest, weather comes into the grain from its surface by conduction: a month’s wave is down to a fifth half a metre (20 in) in. The highest sensor follows from the one below it, the outdoor air and a surface at some distance; the distance that explains most is told, the warmth under the roof and the start left open, and only where lower sensors see the surface as farther off. A stated depth is contradicted beyond the interval, a tenth and a heap.',
    constants: [
      'rests of 14 days and more with up to 2 fan hours, cables over 1.2 m (4 ft) from the wall (the kit’s choice)',
      'diffusivity: published conductivity and specific heat, to 16 %; else 1e-7 m²/s, to 30 % (working assumptions)',
      'grain poured in lies at 16 to 25 degrees (from memory)',
    ],
    sourceKeys: ['carslaw-jaeger-1959', 'asae-d243'],
    usedOn: ['moisture'],
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
];
