import { binFan } from '../../../src/analysis/energy/bin-fan.ts';
import { fanSeason } from '../../../src/analysis/fan/fan-season.ts';
import type { BinFan } from '../../../src/analysis/types.ts';
import type { Fan } from '../../../src/bin/fan.ts';
import type { Tariff } from '../../../src/money/tariff.ts';
import type { Bin, Season } from '../../../src/season/season.ts';
import { FAN, fanTable, H, type Row, SEASON } from '../fan/known-fan.ts';

export const TARIFF: Tariff = {
  id: 'T',
  energy: [{ pricePerKwh: 0.1, when: null }],
  demand: [{ pricePerKw: 10, when: null, ratchet: 0.5 }],
  fixedPerMonth: 20,
  connectedPerHpYear: 12,
  minimumPerMonth: 150,
};
export const FAN_T: Fan = { ...FAN, tariffId: 'T' };
export const bin = (id: string, fanIds: string[], filledMs: number | null = null): Bin =>
  ({ id, fanIds, grain: { filledMs, unloadedMs: null, depthSteps: [] } }) as unknown as Bin;
export const seasonOf = (fans: Fan[], bins: Bin[], tariffs: Tariff[] = [TARIFF]): Season =>
  ({ ...SEASON, fans, bins, tariffs }) as unknown as Season;
export const start = Date.UTC(2024, 9, 10, 5); // 10 October 2024, local midnight
/** hourly power samples: `[hours, watt]` one after another */
export const powerRows = (parts: readonly (readonly [number, number])[], fan = 'F1'): Row[] => {
  const rows: Row[] = [];
  let h = 0;
  for (const [hours, watt] of parts)
    for (let i = 0; i < hours; i++) rows.push({ time: start + h++ * H, fan, power: watt });
  rows.push({ time: start + h * H, fan, power: 0 });
  return rows;
};
export function review(rows: Row[], season: Season, of = 0, bushels: number | null = 10_000): BinFan {
  const table = fanTable(rows);
  const fans = season.fans.map((fan) => fanSeason(fan, table));
  return binFan(season.bins[of], season, fans, bushels);
}
export const rest = (hours: number) => [hours, 0] as const;
