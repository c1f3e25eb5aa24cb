import { CORN_BINS_2024 } from './corn-bins-2024.ts';
import { FANS_2024 } from './farm-fans.ts';
import { MEASURES_2024, TARIFFS } from './farm-prices.ts';
import type { FarmPlan } from './farm-types.ts';
import { OTHER_BINS_2024 } from './other-bins-2024.ts';

export const FARM_2024: FarmPlan = {
  folder: 'sorrel-fork',
  title: 'Harvest 2024',
  seed: 20240815,
  starts: '2024-08-15',
  ends: '2025-05-15',
  logsEnd: '2025-05-19',
  history: [2014, 2023],
  tariffs: TARIFFS,
  measures: MEASURES_2024,
  fans: FANS_2024,
  bins: [...CORN_BINS_2024, ...OTHER_BINS_2024],
};
