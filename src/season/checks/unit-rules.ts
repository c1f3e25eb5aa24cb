import { DOUBTED_SENSORS } from './check-doubted-columns.ts';
import { type CheckRule, celsius, kelvin, percent } from './check-rule.ts';
import { SWAPPED_AIR_FIT, SWAPPED_AIR_IMPOSSIBLE, SWAPPED_APART_K, SWAPPED_JOIN_K } from './check-swapped-air.ts';
import {
  SWAPPED_AIR_MOVED_K,
  SWAPPED_FIT,
  SWAPPED_IMPOSSIBLE,
  SWAPPED_MOISTURE_WB,
  SWAPPED_NEAR_AIR_K,
  SWAPPED_PART_POINTS,
  SWAPPED_PLAIN_SWING,
  SWAPPED_PLAIN_TIMES,
  SWAPPED_SWING,
} from './check-swapped-columns.ts';
import { PRICE_PER_KWH, PRICE_TIMES_BILL } from './check-tariffs.ts';
import { LEVEL_AIR_DAYS, LEVEL_APART_K, LEVEL_JOIN_K, LEVEL_NEAR_AIR_K } from './unit-level.ts';
import { UNIT_HOTTEST_C, UNIT_JOIN_K, UNIT_JUMP_K, UNIT_READINGS, UNIT_SENSORS } from './unit-stretch.ts';

/** Readings and columns in another unit, or of another quantity, than season.yaml says. */
export const UNIT_RULES: readonly CheckRule[] = [
  {
    flag: 'unit',
    title: 'The other unit',
    rule: `Temperatures that jump by ${kelvin(UNIT_JUMP_K)} or more and join to within ${kelvin(UNIT_JOIN_K)} (or a fifth of the jump) when read as °C for °F, or the reverse, for ${UNIT_READINGS} readings or more on ${percent(UNIT_SENSORS)} of a cable's sensors at once, unless a tenth of what is so read would be hotter than ${celsius(UNIT_HOTTEST_C)}; a whole cable ${kelvin(LEVEL_APART_K)} off another of its bin and within ${kelvin(LEVEL_JOIN_K)} of it when read so; a whole bin likewise within ${kelvin(LEVEL_NEAR_AIR_K)} of the outdoor air's mean of ${LEVEL_AIR_DAYS} days. Moisture and humidity that make sense only a hundredfold.`,
    constants: {
      UNIT_JUMP_K,
      UNIT_JOIN_K,
      UNIT_HOTTEST_C,
      UNIT_READINGS,
      UNIT_SENSORS: Number(UNIT_SENSORS.toFixed(3)),
      LEVEL_APART_K,
      LEVEL_JOIN_K,
      LEVEL_NEAR_AIR_K,
      LEVEL_AIR_DAYS,
    },
  },
  {
    flag: 'unit',
    title: 'Columns swapped',
    rule: `On most sensors of a file at least ${percent(SWAPPED_IMPOSSIBLE)} of the moistures cannot be, and not by one number that a failed sensor repeats; ${percent(SWAPPED_FIT)} of the numbers told as moisture can be temperatures, ${percent(SWAPPED_FIT)} of those told as temperature moistures of ${SWAPPED_MOISTURE_WB.map(percent).join(' to ')}, and the former swing ${SWAPPED_SWING} times as far as the latter. Where fewer cannot be they must swing over ${SWAPPED_PLAIN_SWING} and ${SWAPPED_PLAIN_TIMES} times as far, and as temperatures keep within ${kelvin(SWAPPED_NEAR_AIR_K)} of the outdoor air’s mean of ${LEVEL_AIR_DAYS} days while that moved by ${kelvin(SWAPPED_AIR_MOVED_K)} or more, the numbers told as temperatures parting by ${SWAPPED_PART_POINTS} or more between sensors. Both columns are flagged. In a plenum’s file columns of temperature and humidity are swapped where ${percent(SWAPPED_AIR_FIT)} of the rows can be the other way round, the temperatures are ${kelvin(SWAPPED_APART_K)} or more off the outdoor air as said and within ${kelvin(SWAPPED_JOIN_K)} of it the other way round, in the median, and move with it more closely that way; without weather, where ${percent(SWAPPED_AIR_IMPOSSIBLE)} of the rows cannot be as said.`,
    constants: {
      SWAPPED_IMPOSSIBLE,
      SWAPPED_FIT,
      swappedMoistureLowWb: SWAPPED_MOISTURE_WB[0],
      swappedMoistureHighWb: SWAPPED_MOISTURE_WB[1],
      SWAPPED_SWING,
      SWAPPED_PLAIN_SWING,
      SWAPPED_PLAIN_TIMES,
      SWAPPED_AIR_MOVED_K,
      SWAPPED_PART_POINTS,
      SWAPPED_NEAR_AIR_K,
      LEVEL_AIR_DAYS,
      SWAPPED_APART_K,
      SWAPPED_JOIN_K,
      SWAPPED_AIR_FIT,
      SWAPPED_AIR_IMPOSSIBLE,
    },
  },
  {
    flag: 'unit',
    title: 'Columns in doubt',
    rule: `Most readings of one quantity cannot be on most sensors of a file, ${DOUBTED_SENSORS} or more: a column or a unit is likely wrong, which is told beside the readings.`,
    constants: { DOUBTED_SENSORS },
  },
  {
    flag: 'unit',
    title: 'A price in another unit',
    rule: `An energy price of a tariff other than 0 that lies outside ${PRICE_PER_KWH[0]} to ${PRICE_PER_KWH[1]} a kWh (in dollars, euros, pounds or francs; common practice), or whose mean over the time of the tariff’s bills is more than ${PRICE_TIMES_BILL} times what the bills came to for a kWh, all charges in it. It is used as it stands.`,
    constants: { priceLow: PRICE_PER_KWH[0], priceHigh: PRICE_PER_KWH[1], PRICE_TIMES_BILL },
  },
];
