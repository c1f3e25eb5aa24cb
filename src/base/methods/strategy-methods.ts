import type { Method } from './method.ts';

/** What the page of other ways to run the fans stands on. */
export const STRATEGY_METHODS: readonly Method[] = [
  {
    id: 'bed-model',
    title: 'The bed that is run',
    statement:
      'A bin is reckoned as 20 layers, one above the other, hour by hour; as 40 where it was to be cooled or held and its fans ran for under 250 hours, whose front 20 would blunt. In each layer the grain and the air that leaves it end at one temperature; what the air gains in water and heat the grain loses, exactly. The fans move a volume of air, which weighs what the hour’s outdoor air weighs. How fast the grain follows is limited by a drying rate: the published one of its crop, times a factor that the fit to the log sets. Across, a bin is two or three columns side by side: the core under the spreader and the rest, this in two where the fit found the air of its cables to differ by more than 5 % of the mean. A target is reached only when the wettest layer of all is near it, of a bin to be cooled the warmest. With the fan off heat is conducted through grain and wall, and the grain breathes. Moisture does not move in grain at rest.',
    constants: [
      'step: an hour; layers: 20 (or 40), of which each mixes what is in it: their number sets how far a front spreads',
      'how sure that is: every bin is run again with twice as many layers and with steps of half an hour, and the table “what its numbers hang on” of each tells what they move; under steady air a front is out of 80 layers up to 2 % later than of 20, the mean moisture 0.03 point apart at most; a step of an hour against a quarter moves that time by at most 0.1 % and a layer under a daily wave of 12 °C (22 °F) by at most 0.05 point and 0.5 °C (0.9 °F) (the kit’s tests)',
      'a core that no cable tells from the rest: a quarter of the radius, its air a fifth less than at the cables (common practice: fines gather there)',
      'drying rates by crop, on the methods page under equations; published ones for one crop lie apart by a factor of two',
      'for the factor, where the fit begins: 2.3, since a layer of twenty dries by the air that leaves it and so needs a faster rate than a thin layer (worked out); where it may end: 0.3 to 18. From some times on a layer is in balance with the air that leaves it and faster changes nothing, so that no log tells a rate beyond: the large ones say “in balance” only',
    ],
    sourceKeys: ['thompson-1972', 'bloome-shove-1971', 'misra-brooker-1980', 'carslaw-jaeger-1959'],
    usedOn: ['strategies', 'bin-or-rule'],
  },
  {
    id: 'bed-fit',
    title: 'Fitted to the log, tried on the rest of it',
    statement:
      'Airflow of the bin and of each cable, the start temperature, the temperature of the air that enters within what thermometers or the fans’ power leave open, what all thermometers of the cables read too much, the bias that the moisture sensors share, specific heat, drying rate, exchange with the wall and breathing are set by least squares, so that the bed shows what the sensors logged on the earlier part of the season, and the scale tickets and hand samples where there are any. A cable makes moisture of the humidity around it by an isotherm, and its grain may follow another: pairs of published ones are tried, each cable by the crop’s usual one or by the grain’s own where season.yaml does not say. What this lot holds more or less than its isotherm says is fitted too, by tickets and hand samples. The later part, which the fit has not seen, then tells how far off the bed is. A bed that is farther off than the limits, that is worse than supposing that nothing changes, whose values are not possible, whose airflow contradicts fan curve, static pressure, the fans’ power or the warming of their air, whose isotherms part at the end, or whose log contradicts itself is not trusted: nothing it says of costs is shown.',
    constants: [
      'limits on the unseen part: 2 °C (3.6 °F) and 0.7 point, root mean square (the kit’s choice)',
      'airflow: half to twice what static pressure and fronts tell or within their intervals, within reach of the intervals by fan curve and pressure, known to 30 % (the kit’s choice)',
      'air power, static pressure and 60 Pa for the air’s own speed: from a static pressure of 150 Pa on at least 15 % of the fans’ shaft power; 30 to 65 % is usual (common practice)',
      'air for each horsepower of the shaft on a lighter bed: 800 to 3,000 cfm (0.38 to 1.42 m³/s) in nine of ten; about 1,000 is planned with, axial fans near free delivery reach 3,000 (from memory)',
      'loads in: 0.9 to 1.2 times what depth and test weight say, unless most of them lack (the kit’s choice)',
      'isotherms that go with the whole log about as well, a sum of squares within 4 of the best’s: in bins to dry or condition apart by no more than a point at the end; the moisture there is told up to 0.5 point (the kit’s choice)',
      'air that enters against the plenum’s thermometer: 0.25 °C (0.45 °F); where no plenum tells it, against outdoor air warmed by the power of fans and heaters: 0.25 °C (0.45 °F) and 15 % of that warming, 25 % by a nameplate alone, 40 % of a fan that serves other bins too; drawn down, against outdoor air: 1.2 °C (2.2 °F) (sd, working assumptions)',
      'all thermometers of a bin’s cables: 0.2 °C (0.4 °F) (sd, working assumption)',
      'specific heat against the published: 3 %, of soybeans 8 % upward and 3 % downward (sd, working assumptions)',
      'a lot against a published isotherm: 0.3 point (sd, working assumption)',
    ],
    sourceKeys: ['marquardt-1963', 'isu-2018-newsletter', 'uky-2002-cool-grain'],
    usedOn: ['strategies', 'bin-or-rule'],
  },
  {
    id: 'range-of-runs',
    title: 'Ranges of what a way would have cost',
    statement:
      'Each way is run twelve times: with the bed as fitted, and in eleven beds that go with the log too. Each isotherm that comes near is among these as often as it weighs, exp(−sum of squares / 4), with its own fit; the fitted values of each lie off together as the slopes of that fit’s residuals say, spread evenly (a Latin hypercube), and with them what no cable sees. The range of a cost is the lowest and the highest of the twelve. Named is, of the ways that reach the target with the bed as fitted, the one that reaches it within 5 % of the cheapest in the most runs; of several as often, the one that lies least above the cheapest on the mean of all runs, where none counts for more than half dearer and one that misses for that. It is told as the cheapest where that is so in nine of ten runs, else with the others that may be.',
    constants: [
      'air between the cables: by static pressure, or 11 % a cable (sd); grain between the cables: 0.3 point a cable (sd), less where tickets tell of the whole bin; air of the part that has least: 15 % (sd; working assumptions)',
    ],
    sourceKeys: ['mckay-1979'],
    usedOn: ['strategies', 'bin-or-rule'],
  },
  {
    id: 'over-drying-of-ways',
    title: 'Over-drying beside the cost of a way',
    statement:
      'A fan that runs on until the last wet layer is dry leaves the rest lighter. In a bin to be dried each way’s over-drying is the weight that its mean moisture at the end, by the model, lacks below the market’s base (or the bin’s target, where that is lower), in legal bushels at the stated price; with it added to the cost the ways are held against one another anew. The cost itself, the rule named by it and the best in hindsight are of fans and fuel alone. Nothing is told without a price of the grain.',
    constants: [
      'the range is that of the runs; the error of the bin’s dry matter, the same for every way, is not in it',
    ],
    sourceKeys: ['unl-2017-optimum-moisture'],
    usedOn: ['strategies'],
  },
  {
    id: 'hindsight',
    title: 'Best in hindsight',
    statement:
      'The cheapest schedule found that reaches the bin’s targets with the weather known ahead and no more storage time used than allowed: forward in blocks of six hours, keeping the cheapest way to each state of the grain; once more keeping what the log and each rule did as well, where there is a demand charge with its hours left out; then by small changes hour by hour, begun from the best of that and of all rules. A bin to be cooled has to be cold no later than by the earlier of the log and the rule named (in other years: the cheapest rule that reached), with no more storage time used and dry matter lost at the end than in the harder of the two: left alone it is cold some day in winter, its grain the older. Run again through the same bed it gives the cost it claims. A cheaper one may exist; in small cases it was the best of all schedules.',
    constants: [
      'states kept after each block: about 40, then 120, and one for each schedule kept beside them (the kit’s choice)',
    ],
    sourceKeys: [],
    usedOn: ['strategies'],
  },
  {
    id: 'other-years',
    title: 'Other years',
    statement:
      'The same bin, grain and rule in the logged weather of other years, from the same day of the year. The good, middle and poor year are the years at the 10th, 50th and 90th rank in a hundred, each a year that was; under ten years only the middle one is told. The chance of reaching the target by a day is the part of the years that did, with Wilson’s interval for so many years.',
    constants: [],
    sourceKeys: ['wilson-1927', 'newcombe-1998'],
    usedOn: ['strategies'],
  },
  {
    id: 'bin-or-rule',
    title: 'Bin or rule',
    statement:
      'Each bin’s way to run its fans is run on the grain, fan and air of each bin whose bed is trusted, in the season’s weather. In a full table of one goal the costs are parted into a mean, what goes with the bin, what goes with the way, and what neither explains; their squares are the shares.',
    constants: [],
    sourceKeys: [],
    usedOn: ['bin-or-rule'],
  },
];
