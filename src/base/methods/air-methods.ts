import type { Method } from './method.ts';

/** How much air went through the grain, and how much water it took. */
export const AIR_METHODS: readonly Method[] = [
  {
    id: 'airflow-by-front',
    title: 'Airflow by fronts',
    statement:
      'What one sensor saw is carried to the next: later by the fan hours of the way, and spread on it. The airflow is the one at which the two logs agree best. How far a change goes for each kilogram of air follows from the balances of heat and water of grain and air, at the temperature of the moment: evaporation carries nearly half of the heat. Grain that takes up heat and water late, mixing and conduction spread a change and bring the crests of daily waves forward by up to a tenth, but leave its mean time as the balances say; so the spread is fitted beside the airflow, and so is a fixed difference of the two thermometers. All running counts, daily waves and weather as well as whole fronts, in stretches of up to 120 fan hours. A cable’s airflow is the weighted median over its pairs of sensors, the bin’s the mean of the cables by their rings. Dry matter and the published isotherms and specific heats are taken in the middle of what they leave open. The interval joins the spread between stretches and between cables, moisture, dry matter and those constants. Where it leaves room for an error of more than 20 % no number is shown; the reason tells the interval. Water by air then takes the airflow by pressure, or that interval where there is no pressure.',
    constants: [
      'places at one distance from the centre differ by 7 % (working assumption, as firm as three cables); 10 % where no two cables hang at one distance',
      'grain between and beyond the cables: 4 %; 30 % where the only cables hang within a quarter of the radius, fading to half of it (working assumptions)',
      'the balances themselves: 3 % (tried on beds with a drying rate and other isotherms)',
      'weather of one stretch, alike in all cables: 3 %, as firm as three stretches; heights of two sensors: 3 % (working assumptions)',
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
      'The median static pressure with the fan on, by depth and by the fans that run, drives the air that the published resistance of the grain lets through: pressure = packing factor × depth × a v² ÷ ln(1 + b v). The interval joins what packing leaves open, every set of constants that reaches such airflows, all as likely, the pressure sensor and the depth. A stated fan curve gives a cross-check at the logged pressure. Two airflows agree where their intervals overlap, also where the fronts’ is too wide to be shown; the fronts’ is used where it is shown.',
    constants: [
      'packing where it is not stated: 1.5 for corn and 1.3 for others, from four fifths of that (not below 1) to a quarter more',
      'packing where season.yaml states it: 10 % either way (working assumption)',
      'pressure sensor: 4 % or 12 Pa (0.05 inH2O); depth: 4 %; fan curve: 12 % (working assumptions)',
    ],
    sourceKeys: ['asae-d272-3', 'mwps-drying'],
    usedOn: ['fronts', 'overview'],
  },
  {
    id: 'airflow-by-model',
    title: 'Airflow by the model',
    statement:
      'The airflow with which the fitted bed shows what the sensors logged over the season (how it is fitted stands under “Fitted to the log, tried on the rest of it”). Each cable has an airflow of its own; the bin’s is their mean, each by its part of the floor. What lies between the cables no sensor sees: where static pressure was logged it tells of the whole bin too, and both are joined, each weighed by its errors. So this way leans on that by pressure; before they are joined they are held against each other, and a bed that pressure contradicts is not trusted. It is told only where the bed is trusted and the number is known to 12.5 %, and stands beside the airflow by fronts and by pressure without taking their place: in drawn bins whose airflow is known it came nearer than the fronts in no more than half. The interval joins what the fit leaves open, the isotherms that do about as well, dry matter of the grain, and the places where no cable hangs. The ways agree where all of their intervals overlap.',
    constants: [
      'dry matter: 1.5 % where it was weighed, 3 % where it was measured (standard errors, working assumption)',
      'one place of a bin against its mean: 11 %, less by the square root of the number of cables; where all cables hang in the core it is taken to lack 10 % of the air, 18 % either way (standard errors, common practice)',
    ],
    sourceKeys: ['marquardt-1963'],
    usedOn: ['fronts'],
  },
  {
    id: 'water-ways',
    title: 'Water by independent ways',
    statement:
      'By sensors: dry matter times the change of the mean moisture, dry basis. By the air: for each hour of running, dry air times what its humidity ratio gained. The gain is had twice: the leaving air in balance with the last grain that it passes, its humidity by the isotherm of the cable, less the entering air; and by the balance of heat, since what the air loses in temperature and what the grain gives up beside goes into vapour. The two are joined by their errors; a thermometer that both lean on is one error, which moves them opposite ways. By tickets: dry matter over the scale times the change of its moisture, where the loads in and out are the whole bin (dry matter within 4 %).',
    constants: [
      'humidity sensors: 3 % in the plenum, 4 % outdoors, limits that 95 % keep (working assumption)',
      'thermometer of the plenum: 0.5 °C (0.9 °F) where season.yaml states none, a limit that 95 % keep (working assumption)',
      'hours without readings count like the others, with half of their water as standard error; below 60 % of the fan hours nothing is told',
    ],
    sourceKeys: ['rodriguez-arias-1963', 'ashrae-2017', 'jcgm-100'],
    usedOn: ['moisture'],
  },
];
