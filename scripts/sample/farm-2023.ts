import { FARM_2024 } from './farm-2024.ts';
import { FANS_2024 } from './farm-fans.ts';
import { TARIFFS } from './farm-prices.ts';
import type { BinPlan, FanPlan, FarmPlan } from './farm-types.ts';

const bin = (id: string): BinPlan => FARM_2024.bins.find((one) => one.id === id)!;
const fan = (id: string): FanPlan => FANS_2024.find((one) => one.id === id)!;

/** The season before, for two of the bins: run to the end and by the manager's hand. */
export const FARM_2023: FarmPlan = {
  ...FARM_2024,
  measures: undefined,
  folder: 'sorrel-fork-2023',
  title: 'Harvest 2023',
  seed: 20230918,
  starts: '2023-09-15',
  ends: '2024-04-15',
  logsEnd: '2024-04-16',
  history: null,
  tariffs: [TARIFFS[0]],
  fans: [fan('F1'), { ...fan('F2A'), logs: ['current'] }, fan('F2B')],
  bins: [
    {
      ...bin('B1'),
      fills: [{ at: '2023-10-03 17:00', depthFt: 18.5, moisture: 17.4, tempC: 18 }],
      managedAs: 'fan on day and night until dry; filled less deep',
      cables: bin('B1').cables.map((cable) => ({ ...cable, heightsFt: cable.heightsFt.slice(0, 6) })),
      stages: [
        {
          from: '2023-10-04 17:30',
          to: '2023-12-05 09:00',
          rule: { kind: 'always' },
          fans: ['F1'],
          untilMoisture: 14.8,
        },
        {
          from: '2023-12-06 06:00',
          to: '2024-02-10 18:00',
          rule: { kind: 'front', dropK: 5, hours: 50, restAboveK: 0 },
          fans: ['F1'],
          front: 'cooling',
        },
      ],
      loggedFrom: '2023-10-02 12:00',
      everyHours: 3,
    },
    {
      ...bin('B2'),
      fills: [{ at: '2023-09-28 16:00', depthFt: 17.5, moisture: 16.8, tempC: 20 }],
      managedAs: 'one fan day and night, stopped at the target',
      strategy: 'always-on',
      stages: [
        {
          from: '2023-09-28 18:00',
          to: '2023-11-30 18:00',
          rule: { kind: 'always' },
          fans: ['F2A'],
          untilMoisture: 15,
        },
        {
          from: '2023-12-01 06:00',
          to: '2024-02-10 18:00',
          rule: { kind: 'front', dropK: 5, hours: 60, restAboveK: 0 },
          fans: ['F2B'],
          front: 'cooling',
        },
      ],
      loggedFrom: '2023-09-27 12:00',
    },
  ],
};
