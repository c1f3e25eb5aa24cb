import { NO_CURRENT_READINGS } from './check-fans.ts';
import { SILENT_END_MS } from './check-gaps.ts';
import { MOST_NAMEPLATES } from './check-meters.ts';
import { PROBE_ABOVE_M } from './check-probes.ts';
import { type CheckRule, celsius, hours, kelvin, percent, points } from './check-rule.ts';
import { TICKET_MOISTURE_WB, TICKET_MOST_KG } from './check-tickets.ts';
import { ZONE_OFF_SUN_H } from './check-zone.ts';
import { DEAD_CURRENT_MS, NO_CURRENT_SHARE, WORKING_PRESSURE_PA, WORKING_SHARE } from './dead-current.ts';
import {
  CLOCK_ALIKE_SHARE,
  CLOCK_CLEAR_TIMES,
  CLOCK_EDGE_MS,
  CLOCK_LEFT_SHARE,
  CLOCK_MISFITS,
  CLOCK_MOST_HOURS,
  CLOCK_SHARP_SHARE,
} from './fan-clock.ts';
import { SETTLING_MS } from './fan-state.ts';
import { GAP_INTERVALS } from './gaps.ts';
import { MISFIT_MOST, MISFIT_RH } from './humidity-misfits.ts';
import { LIMITS } from './limits.ts';
import { SLIP_READINGS } from './meters.ts';
import {
  SPIKE_GRAIN_COARSE_K,
  SPIKE_GRAIN_K,
  SPIKE_MOISTURE_FAN_WB,
  SPIKE_MOISTURE_UNKNOWN_WB,
  SPIKE_MOISTURE_WB,
  SPIKE_OUTDOOR_K,
  SPIKE_PLENUM_K,
  SPIKE_READINGS,
  SPIKE_TIMES_USUAL,
} from './spikes.ts';
import {
  STUCK_CHANCE,
  STUCK_JUMP_K,
  STUCK_JUMP_WB,
  STUCK_MOVED_K,
  STUCK_MOVED_STEPS,
  STUCK_MOVED_WB,
  STUCK_MS,
  STUCK_READINGS,
} from './stuck.ts';
import {
  STUCK_AIR_MS,
  STUCK_AIR_READINGS,
  STUCK_PLENUM_FAN_MS,
  STUCK_SATURATED_MS,
  STUCK_WITNESS_K,
  STUCK_WITNESS_RH,
} from './stuck-air.ts';
import { SWING_CORRELATION, SWING_DAYS, SWING_GAIN, SWING_LEAST_DAYS } from './swing.ts';
import { DAY_MS } from './track.ts';
import { UNIT_RULES } from './unit-rules.ts';

export const CHECK_RULES: readonly CheckRule[] = [
  {
    flag: 'duplicate',
    title: 'Logged twice',
    rule: 'Of rows for the same sensor, fan, bin or hour with the same time, the first in the file counts and the later ones are flagged. In the repeated hour of autumn the order in the file decides; such rows are no duplicates.',
    constants: {},
  },
  {
    flag: 'duplicate',
    title: 'Several reports of one hour',
    rule: 'Of the reports of an airport that are nearest to one hour the routine one counts. Special reports, which crowd into bad weather, and synoptic ones, which repeat the routine report, are flagged beside it and used where it is lacking.',
    constants: {},
  },
  {
    flag: 'clock',
    title: 'A clock that cannot be',
    rule: "A time in spring's missing hour, or against the order of a log that else runs forward, is flagged; so is a twentieth of a log's rows or fewer that stand more than a year from all the others.",
    constants: {},
  },
  {
    flag: 'clock',
    title: 'A time zone of another place',
    rule: `The time zone’s own time, without summer time, more than ${ZONE_OFF_SUN_H} hours off the sun at the longitude of the site. Nothing is shifted.`,
    constants: { ZONE_OFF_SUN_H },
  },
  {
    flag: 'clock',
    title: 'A fan log on another clock',
    rule: `All fans of a bin, moved by whole hours up to ${CLOCK_MOST_HOURS} either way, held against the pressure in its plenum (${WORKING_PRESSURE_PA} Pa is a fan at work): told where ${CLOCK_MISFITS} readings or more contradict the log, a shift leaves ${percent(CLOCK_LEFT_SHARE)} of them or fewer, and any other shift ${CLOCK_CLEAR_TIMES} times as many. Readings within a quarter of an hour of a start or stop do not count; of shifts alike the one that the starts and stops clearly fit (${percent(CLOCK_SHARP_SHARE)} of the misfits), else the smallest, is told. Nothing is shifted.`,
    constants: {
      CLOCK_MOST_HOURS,
      CLOCK_MISFITS,
      CLOCK_LEFT_SHARE,
      CLOCK_CLEAR_TIMES,
      CLOCK_EDGE_MS,
      CLOCK_ALIKE_SHARE,
      CLOCK_SHARP_SHARE,
    },
  },
  {
    flag: 'headspace',
    title: 'Above the grain, by the stated level',
    rule: 'A sensor at or above the level of the grain at the time, by season.yaml, reads the air over it. Before the bin was filled and after it was unloaded every sensor does.',
    constants: {},
  },
  {
    flag: 'headspace',
    title: 'Above the grain, by its daily swing',
    rule: `While the fan has stood still for ${hours(SETTLING_MS)}, a sensor whose departures from the day's mean are at least ${percent(SWING_GAIN)} of the outdoor air's and keep step with them (correlation ${SWING_CORRELATION} or more over ${SWING_DAYS} days), for ${SWING_LEAST_DAYS} days or longer, hangs in air; only if all sensors above it on the cable do too.`,
    constants: { SWING_GAIN, SWING_CORRELATION, SWING_DAYS, SWING_LEAST_DAYS, SETTLING_MS },
  },
  {
    flag: 'spike',
    title: 'Impossible values',
    rule: `A value that neither grain nor air can have: temperature outside ${celsius(LIMITS.tempC[0])} to ${celsius(LIMITS.tempC[1])}, moisture outside ${percent(LIMITS.moistureWb[0])} to ${percent(LIMITS.moistureWb[1])}, humidity outside ${percent(LIMITS.rh[0])} to ${percent(LIMITS.rh[1])}, static pressure beyond ${LIMITS.staticPressurePa[1]} Pa either way, air pressure outside ${LIMITS.pressurePa[0] / 1000} to ${LIMITS.pressurePa[1] / 1000} kPa, a fan's current outside ${LIMITS.currentA[0]} to ${LIMITS.currentA[1]} A, its power outside ${LIMITS.powerW[0]} W to ${LIMITS.powerW[1] / 1000} kW. Failure codes fall under it.`,
    constants: {
      tempLowC: LIMITS.tempC[0],
      tempHighC: LIMITS.tempC[1],
      moistureLowWb: LIMITS.moistureWb[0],
      moistureHighWb: LIMITS.moistureWb[1],
      rhLow: LIMITS.rh[0],
      rhHigh: LIMITS.rh[1],
      staticPressurePa: LIMITS.staticPressurePa[1],
      currentLowA: LIMITS.currentA[0],
      currentHighA: LIMITS.currentA[1],
      powerLowW: LIMITS.powerW[0],
      powerHighW: LIMITS.powerW[1],
    },
  },
  {
    flag: 'spike',
    title: 'Humidity that does not fit its dew point',
    rule: `An hour of weather whose humidity is more than ${points(MISFIT_RH)} off the one that its temperature and dew point give (over water), and by more than the rounding of the two can make. Where it is so in more than ${percent(MISFIT_MOST)} of the rows, it is told and they are kept.`,
    constants: { MISFIT_RH, MISFIT_MOST },
  },
  {
    flag: 'spike',
    title: 'Marked by the archive',
    rule: 'A value that a weather archive itself marks as suspect.',
    constants: {},
  },
  {
    flag: 'spike',
    title: 'Hand samples that cannot be',
    rule: 'A hand sample with a moisture or temperature outside the limits of impossible values, or a place below the floor or beyond the wall.',
    constants: {},
  },
  {
    flag: 'headspace',
    title: 'Hand samples above the grain',
    rule: `A hand sample more than ${PROBE_ABOVE_M} m (1 ft) above the levelled depth that season.yaml states for its day.`,
    constants: { PROBE_ABOVE_M },
  },
  {
    flag: 'spike',
    title: 'Scale tickets that cannot be',
    rule: `A ticket with a net weight of zero or less, or above ${TICKET_MOST_KG / 1000} t (more than the longest road trains carry, from memory): the load counts as one not weighed. One with a moisture outside ${percent(TICKET_MOISTURE_WB[0])} to ${percent(TICKET_MOISTURE_WB[1])} (common practice): its moisture is not used, its weight is.`,
    constants: {
      TICKET_MOST_KG,
      ticketMoistureLowWb: TICKET_MOISTURE_WB[0],
      ticketMoistureHighWb: TICKET_MOISTURE_WB[1],
    },
  },
  {
    flag: 'duplicate',
    title: 'A scale ticket twice',
    rule: 'A ticket with the bin, time, direction, weight and moisture of another: a scale weighs one truck at a time, so the first counts. Where the tickets bear a date alone (midnight) they are told and not flagged.',
    constants: {},
  },
  {
    flag: 'spike',
    title: 'Bills that cannot be',
    rule: 'A bill with an energy or a demand below zero is told; of one with an energy below zero no share is worked out. An amount below zero may be a credit.',
    constants: {},
  },
  {
    flag: 'duplicate',
    title: 'Bills over each other',
    rule: 'Two bills of one tariff whose times overlap are told and shown, and the days count once: one or two shared days are the reading of the meter and go with the earlier bill; else the later bill stays out of sums.',
    constants: {},
  },
  {
    flag: 'spike',
    title: 'Out and straight back',
    rule: `One to ${SPIKE_READINGS} readings that leave the ones before and after by ${kelvin(SPIKE_GRAIN_K)} in grain (${kelvin(SPIKE_GRAIN_COARSE_K)} where the log is slow and the fan runs), ${kelvin(SPIKE_OUTDOOR_K)} outdoors, ${kelvin(SPIKE_PLENUM_K)} in a plenum, or ${points(SPIKE_MOISTURE_WB)} of moisture (${points(SPIKE_MOISTURE_FAN_WB)} while the fan starts or stops, ${points(SPIKE_MOISTURE_UNKNOWN_WB)} without a fan log), and by ${SPIKE_TIMES_USUAL} times the sensor's usual step. A front does not come back.`,
    constants: {
      SPIKE_READINGS,
      SPIKE_GRAIN_K,
      SPIKE_GRAIN_COARSE_K,
      SPIKE_OUTDOOR_K,
      SPIKE_PLENUM_K,
      SPIKE_MOISTURE_WB,
      SPIKE_MOISTURE_FAN_WB,
      SPIKE_MOISTURE_UNKNOWN_WB,
      SPIKE_TIMES_USUAL,
    },
  },
  {
    flag: 'spike',
    title: 'A meter that slips',
    rule: `Up to ${SLIP_READINGS} readings of a running meter that fall out of line while the meter before and after counts on.`,
    constants: { SLIP_READINGS },
  },
  {
    flag: 'stuck',
    title: 'Stuck in the grain',
    rule: `One and the same value for ${hours(STUCK_MS)} and ${STUCK_READINGS} readings or more, though both next sensors on the cable moved the same way by ${kelvin(STUCK_MOVED_K)} or ${points(STUCK_MOVED_WB)} (and ${STUCK_MOVED_STEPS} of the sensor's own steps), or the sensor's own flicker makes such a run less likely than ${STUCK_CHANCE}, or it ends in a jump, in still air, of ${kelvin(STUCK_JUMP_K)} or ${points(STUCK_JUMP_WB)}. Grain in still air may hold a value for days; that alone is no fault.`,
    constants: {
      STUCK_MS,
      STUCK_READINGS,
      STUCK_MOVED_K,
      STUCK_MOVED_WB,
      STUCK_MOVED_STEPS,
      STUCK_CHANCE,
      STUCK_JUMP_K,
      STUCK_JUMP_WB,
    },
  },
  {
    flag: 'stuck',
    title: 'Stuck in the air',
    rule: `Outdoor temperature or humidity that keeps one value for ${hours(STUCK_AIR_MS)} and ${STUCK_AIR_READINGS} readings (saturated air: ${hours(STUCK_SATURATED_MS)} while the temperature moved by ${kelvin(STUCK_WITNESS_K)}); plenum air likewise while the outdoor air moved by ${kelvin(STUCK_WITNESS_K)} or ${percent(STUCK_WITNESS_RH)} of humidity and the fan ran for ${hours(STUCK_PLENUM_FAN_MS)} or the sensor's steps are fine. A static pressure that stays one while the fan runs and stands is told, and its rows are kept.`,
    constants: {
      STUCK_AIR_MS,
      STUCK_AIR_READINGS,
      STUCK_SATURATED_MS,
      STUCK_WITNESS_K,
      STUCK_WITNESS_RH,
      STUCK_PLENUM_FAN_MS,
    },
  },
  {
    flag: 'stuck',
    title: 'A current sensor that died',
    rule: `Less than ${percent(NO_CURRENT_SHARE)} of the usual running current for ${hours(DEAD_CURRENT_MS)} or more in which the fan's meter shows at least ${percent(WORKING_SHARE)} of its nameplate (then the rows are kept for their meter), or else the plenum a pressure of ${WORKING_PRESSURE_PA} Pa (then the rows are left out, save where it shows the fan at rest too).`,
    constants: { NO_CURRENT_SHARE, DEAD_CURRENT_MS, WORKING_SHARE, WORKING_PRESSURE_PA },
  },
  ...UNIT_RULES,
  {
    flag: 'gap',
    title: 'Gap',
    rule: `No reading for longer than ${GAP_INTERVALS} usual intervals (the median of a log's steps), or for that long at the start or end while the logs around go on. A fan log that writes only changes has none. A log that lies wholly before or after the grain's is told as one gap. A sensor that is silent to the end of its bin's log, for ${SILENT_END_MS / DAY_MS} days or more with grain in the bin, has failed and is to be repaired.`,
    constants: { GAP_INTERVALS, SILENT_END_MS },
  },
  {
    flag: 'silent',
    title: 'Never heard',
    rule: 'A sensor, fan, plenum or weather that season.yaml names or the analysis needs, and that no log ever mentions.',
    constants: {},
  },
  {
    flag: 'silent',
    title: 'A current of nothing at all',
    rule: `A log of current alone that reads exactly 0 A in all of its readings, ${NO_CURRENT_READINGS} or more: a fan that never ran, or a dead sensor. The fan counts as standing, and both are said; where the pressure in its plenum shows a day of work or more, what it did counts as not known.`,
    constants: { NO_CURRENT_READINGS },
  },
  {
    flag: 'duplicate',
    title: 'A hand sample twice',
    rule: 'A hand sample with the bin, time, height, distance from the centre, moisture and temperature of another counts once.',
    constants: {},
  },
  {
    flag: 'meter-reset',
    title: 'A meter that starts again',
    rule: `A running meter (energy, run time) that jumps back and counts on from there was reset or replaced; so was one that jumps ahead by more than the clock, or ${MOST_NAMEPLATES} times the nameplate, lets it count. What it had counted since the reading before is not known.`,
    constants: { MOST_NAMEPLATES },
  },
];
