import { BUSHEL_FT3 } from '../bushel.ts';
import type { Method } from './method.ts';

/** Fans: hours, energy, cost, bills, and the bushels that costs are told by. */
export const FAN_METHODS: readonly Method[] = [
  {
    id: 'fan-hours',
    title: 'Fan hours',
    statement:
      'A fan is on from a reading that says so until the next reading. A gap in its log longer than three usual intervals is unknown: it is counted and shown, never taken as off. A bin’s fan hours are clock hours in which any of its fans ran; two fans running together are one bin fan-hour. Where the pressure in the plenum shows more than twice the hours of the log, over the same time, the log is left out and what hangs on it is missing; so it is where the grain lost more water than the fans could have carried off in all of the hours that the log leaves open.',
    constants: [
      'longest step that is believed: 3 usual intervals of the log (the kit’s choice)',
      'most water: 0.02 kg a kg of unheated air, air power 0.61 of the electric, clean loose grain; of a heater 1.2 times its output over 2.3 MJ/kg; half a point of moisture may be the sensors’ (own judgement)',
    ],
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
      'measured power over twice, or under a quarter, of the nameplate’s at full load is told as a finding (own judgement)',
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
    id: 'heat',
    title: 'Heat',
    statement:
      'Heat is the hours that the heater burned × output ÷ efficiency × price; an electric heater on the tariff adds to the demand, and counts with its fan in what explains a bill, in the lower ends as far as a log tells that it burned. The hours are told by the warming of the plenum’s air over the outdoor air, where the bin has one fan, which pushes up: with the heater it is 1 + output ÷ (0.9 × the fan’s power) times what the fan alone makes, whatever the airflow. Of all warmings that a fan makes those that go with the log are taken; hours on which they do not agree, or without a reading, count as burned, and not in the lower end. Without such a log the heater is taken to burn whenever its fan runs, and the lower end is no heat.',
    constants: [
      'output of a heater: 10 % (standard error, own judgement)',
      'by the fan alone: 0.3 to 4 °C (0.5 to 7.2 °F), beyond what is published either way; told from 1 °C (1.8 °F) of the heater’s own on: off up to a third of it, on from two thirds (the kit’s choice)',
    ],
    sourceKeys: [],
    usedOn: ['overview', 'fan-energy'],
    ofHeaters: true,
  },
  {
    id: 'demand-ways',
    title: 'Demand, had the fans run in another order',
    statement:
      'The fans’ own runs are billed again by the same tariff. Starts apart: of fans that start within one quarter hour each next one starts a quarter hour later than it would have. In turns: each fan runs as long on each local day as it did, first in the quarter hours that no demand rule counts, then in those with the least running beside it, the strongest fan first; days that this does not help stay as they were. No order of the same hours of the day can bring the charge below what is told as the least: the fans’ hours that do not fit beside the counted time, spread evenly, and the weakest of as many fans as must meet. Of the fans alone; what the air of other hours does to the grain is not in it. Where a meter tells how many hours a fan ran, but not when, other orders are withheld.',
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
      'The fans’ part of a bill is their energy within its own time, their runs cut at its first and last moment, and what the tariff charges for it: energy, the demand of the fans’ own peak in that time with the ratchet of the eleven months before, and connected load by the month. The rest is billed less fans (and less fixed charges, in money). Time that no log tells while a bin holds grain widens the interval, but no further than to all of the bill. Where the fans explain more than was billed, the page names what most likely makes it so, in this order: the error of the logs; a heater that burned or draws less; what is assumed of a fan’s power; the days on which the meter was read; a factor of the meter or another meter.',
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
      'working range 5.9 to 18 kWh a tonne-point (0.15 to 0.45 kWh a bushel-point) of corn: the kit’s own judgement about 12 kWh a tonne-point (0.31 kWh a bushel-point) in North Dakota and about 39 kWh a tonne (1 kWh a bushel) in Minnesota',
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
];
