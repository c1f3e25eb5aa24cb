import type { MeasurePlan, TariffPlan } from './farm-types.ts';

/** A farm tariff by the hour with a ratcheted demand, and a plain one for the yard. */
export const TARIFFS: readonly TariffPlan[] = [
  {
    id: 'grain-tou',
    energy: [
      { price: 0.158, months: [6, 9], weekdays: true, hours: [13, 19] },
      { price: 0.074, hours: [22, 6] },
      { price: 0.109 },
    ],
    demand: { price: 8.75, hours: [7, 22], ratchet: 0.6 },
    fixed: 42,
    connectedPerHpYear: 12,
    minimum: 60,
    otherKw: [2.1, 3.4],
  },
  { id: 'yard', energy: [{ price: 0.128 }], fixed: 24, minimum: 35, otherKw: [0.9, 1.2] },
];

/** Invented: one controller for the whole meter, one for a bin, limits on two. */
export const MEASURES_2024: readonly MeasurePlan[] = [
  { measure: 'fans-in-turns', price: 1800 },
  { measure: 'other-rule', bins: ['B2'], price: 650 },
  { measure: 'useful-hours-only', bins: ['B1', 'B2'], price: 1200 },
];
