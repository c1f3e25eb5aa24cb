import type { MoistureSchedule } from '../../src/money/moisture-schedule.ts';

const OPEN = Number.POSITIVE_INFINITY;
const PLAIN = {
  baseWb: 0.15,
  perPoints: 1,
  stepPoints: null,
  banding: 'cumulative',
  bushels: 'wet',
  rejectOverWb: null,
} as const;

/** Schedules that elevators posted, read and made anonymous; where the page is silent on banding, cumulative is taken. */
export const POSTED = {
  /** an elevator's posted schedule, 2024: 5 cents for each started point to 20 %, then 2 cents */
  cornByPoint: {
    ...PLAIN,
    stepPoints: 1,
    bands: [
      { toWb: 0.2, rate: 0.05 },
      { toWb: OPEN, rate: 0.02 },
    ],
    unit: 'money',
  },
  /** an elevator's posted schedule, 2018: 3.75 cents a point on wet bushels */
  cornOnWet: { ...PLAIN, bands: [{ toWb: OPEN, rate: 0.0375 }], unit: 'money' },
  /** an elevator's posted schedule, year not stated: 3.5 cents a point by tenths */
  cornByTenths: { ...PLAIN, stepPoints: 0.1, bands: [{ toWb: OPEN, rate: 0.035 }], unit: 'money' },
  /** an elevator's posted schedule, 2020: 1.5 cents per half point over 15 %, 2.0 over 30 % */
  cornByHalves: {
    ...PLAIN,
    perPoints: 0.5,
    stepPoints: 0.5,
    bands: [
      { toWb: 0.3, rate: 0.015 },
      { toWb: OPEN, rate: 0.02 },
    ],
    unit: 'money',
  },
  /** an elevator's posted schedule, 2009: 4 cents a point from 15 to 18 %, 3 from 18 to 22 %, 2 above */
  cornFalling: {
    ...PLAIN,
    bands: [
      { toWb: 0.18, rate: 0.04 },
      { toWb: 0.22, rate: 0.03 },
      { toWb: OPEN, rate: 0.02 },
    ],
    unit: 'money',
  },
  /** an elevator's posted schedule, 2020: shrink of 0.7 % per half point */
  cornShrink: { ...PLAIN, perPoints: 0.5, stepPoints: 0.5, bands: [{ toWb: OPEN, rate: 0.007 }], unit: 'weight' },
  /** an elevator's posted schedule, year not stated: 1 % of the price per half point from 13 to 15 %, 2 % over, over 17 % not taken */
  soybeanOfPrice: {
    ...PLAIN,
    baseWb: 0.13,
    perPoints: 0.5,
    stepPoints: 0.5,
    bands: [
      { toWb: 0.15, rate: 0.01 },
      { toWb: 0.17, rate: 0.02 },
    ],
    unit: 'price',
    rejectOverWb: 0.17,
  },
} satisfies Record<string, MoistureSchedule>;
