import { groupedCount } from '../../base/grouped-count.ts';
import { FLAGS } from '../../tables/flags.ts';
import type { Finding } from '../loaded.ts';
import type { Season } from '../season.ts';
import type { FanSeen } from './check-fans.ts';
import { meterFaults, meterLeaps } from './meters.ts';
import { countText } from './wording.ts';

/** A meter of running time counts no faster than the clock; an energy meter not so many times the nameplate, with what its heater draws. */
const MOST_RUNNING = 1.02;
export const MOST_NAMEPLATES = 10;
const NEW_METER = 'Where a meter was changed, note what the old one showed last and the new one first.';

/** Running meters of a fan that began anew, jumped ahead or slipped. `flags` is by row of the fan table. */
export function checkMeters(season: Season, fan: FanSeen, binId: string | null, flags: Uint8Array): Finding[] {
  const spec = season.fans.find(({ id }) => id === fan.id);
  const heaterW = spec?.heater?.fuel === 'electric' ? spec.heater.outputW / spec.heater.efficiency : 0;
  const mostW = spec === undefined ? Number.POSITIVE_INFINITY : MOST_NAMEPLATES * spec.nameplateW + heaterW;
  return [
    ...checkMeter(fan, { column: 'energy_j', name: 'energy meter', unit: 'kWh', unitSi: 3.6e6, perSecond: mostW }),
    ...checkMeter(fan, { column: 'run_s', name: 'run-hour meter', unit: 'h', unitSi: 3600, perSecond: MOST_RUNNING }),
  ];

  function checkMeter({ log, rows }: FanSeen, { column, name, unit, unitSi, perSecond }: Meter): Finding[] {
    const values = log[column];
    const use = values.map((value) => (Number.isFinite(value) ? 1 : 0));
    const { resets, slips } = meterFaults(values, use);
    const leaps = meterLeaps(values, log.time, perSecond, new Set(slips));
    for (const i of slips) flags[rows.rows[i]] |= FLAGS.spike;
    const read = (i: number) => `${groupedCount(values[i] / unitSi)} ${unit}`;
    const times = (at: readonly number[]) => {
      const before = values.subarray(0, at[0]).findLastIndex((_, j) => use[j] === 1 && !slips.includes(j));
      const step = `from ${read(before)} to ${read(at[0])}`;
      return at.length === 1 ? `once, ${step}` : `${at.length} times, first ${step}`;
    };
    const told = (at: readonly number[], one: Pick<Finding, 'kind' | 'cells' | 'advice'>, text: () => string) =>
      at.length === 0
        ? []
        : [
            {
              ...one,
              where: `fan ${fan.id}`,
              binId,
              fromMs: log.time[at[0]],
              toMs: log.time[at[at.length - 1]],
              text: text(),
            },
          ];
    return [
      ...told(
        leaps,
        { kind: 'meter-reset', cells: 0, advice: NEW_METER },
        () =>
          `The ${name} jumped ahead ${times(leaps)}, by more than it can have counted meanwhile: another meter stands in its place, or the reading is wrong. What was counted between the two readings is lost.`,
      ),
      ...told(
        resets,
        {
          kind: 'meter-reset',
          cells: 0,
          advice: `Compare with the bill where there is one; a meter that resets on power cuts needs a battery. ${NEW_METER}`,
        },
        () =>
          `The ${name} jumped back ${times(resets)}, and counted on from there: it was reset, or replaced by another. What it counted between the last reading before and the first after is lost.`,
      ),
      ...told(
        slips,
        { kind: 'spike', cells: slips.length, advice: null },
        () =>
          `${countText(slips.length, 'reading')} of the ${name} slipped while the meter before and after counted on; they are left out.`,
      ),
    ];
  }
}

interface Meter {
  column: 'energy_j' | 'run_s';
  /** in words */
  name: string;
  /** that people read it in, and the same in SI */
  unit: string;
  unitSi: number;
  /** the most that it can count in a second, SI */
  perSecond: number;
}
