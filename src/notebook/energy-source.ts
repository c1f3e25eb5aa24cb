import { fanRelSd } from '../analysis/energy/fan-cost.ts';
import type { EnergySource, FanSeason, RunSource, SeasonReview } from '../analysis/types.ts';
import { estimate, Z90 } from '../base/estimate.ts';
import { listed } from '../base/listed.ts';
import type { SectionBody } from '../report/page.ts';
import type { LoadedSeason } from '../season/loaded.ts';
import { counted } from './words.ts';

const ENERGY: Readonly<Record<EnergySource, string>> = {
  meter: '1. energy meter',
  power: '2. logged power',
  current: '3. logged current',
  nameplate: '4. nameplate alone',
};
const RUNS: Readonly<Record<RunSource, string>> = {
  current: 'logged current',
  power: 'logged power',
  state: 'logged state',
  run_hours: 'run-hours meter',
  meter: 'energy meter',
};

/** Fan by fan: which of the ways its hours and its energy were had by, surest first, and how sure that is. */
export function sourceSection({ season }: LoadedSeason, { fans }: SeasonReview): SectionBody {
  const told = fans.filter((fan) => fan.energyFrom !== null);
  const counts = (Object.keys(ENERGY) as EnergySource[]).map((from) => ({
    from,
    fans: told.filter((fan) => fan.energyFrom === from),
  }));
  const said = counts
    .filter((one) => one.fans.length > 0)
    .map((one) => `${ENERGY[one.from].slice(3)} for ${listed(one.fans.map((fan) => fan.fanId))}`);
  return {
    lead:
      told.length === 0
        ? 'Can’t tell where energy comes from: no fan has a log that could be used.'
        : `Energy is taken from the surest way that a fan’s log has: ${listed(said)}.`,
    table: {
      id: 'fan-energy-sources',
      caption: 'Where each fan’s hours and energy come from',
      columns: [
        { key: 'fan', label: 'Fan', quantity: null },
        { key: 'bins', label: 'Bin', quantity: null },
        { key: 'runs', label: 'Runs told by', quantity: null },
        { key: 'from', label: 'Energy from', quantity: null },
        { key: 'energy', label: 'Energy', quantity: 'energy' },
        { key: 'error', label: 'Error of its power', quantity: 'share', known: '90 % limit' },
      ],
      rows: season.fans.map((stated) => {
        const fan = fans.find((one) => one.fanId === stated.id);
        const why = fan?.doubt ?? 'No log of this fan.';
        return {
          fan: stated.id,
          bins: listed(season.bins.filter((bin) => bin.fanIds.includes(stated.id)).map((bin) => bin.name)),
          runs: fan?.runsFrom == null ? '' : RUNS[fan.runsFrom],
          from:
            fan?.energyFrom == null
              ? fan?.doubt === undefined
                ? 'no log'
                : 'its log is left out'
              : ENERGY[fan.energyFrom],
          energy: fan?.energyFrom == null ? { value: null, why } : energyOf(fan),
          error: fan?.energyFrom == null ? { value: null, why } : Z90 * fan.energyRelSd,
        };
      }),
      empty: 'there is no fan in season.yaml.',
    },
    notes: [
      'The order, surest first: an energy meter; logged power; logged current (√3 · volts · amperes · power factor on three phases, volts · amperes · power factor on one); the nameplate. The errors are assumed by the way of measuring, not measured themselves. How on was told from off, and the power had, stands with each bin.',
      ...(told.length < season.fans.length
        ? [
            `${counted(season.fans.length - told.length, 'fan')} without a log${fans.some(({ doubt }) => doubt !== undefined) ? ' that could be used' : ''}: in no number of this page.`,
          ]
        : []),
      ...(told.some((fan) => fan.energyFrom === 'nameplate')
        ? [
            'A day’s reading of an energy meter, or a current taken once with a clamp by a licensed electrician, would halve the error of a fan known by its nameplate alone.',
          ]
        : []),
    ],
  };
}

function energyOf(fan: FanSeason) {
  const half = Z90 * fanRelSd(fan) * fan.energyKwh;
  const more = fan.onHours > 0 ? (fan.unknownHours * fan.energyKwh) / fan.onHours : 0;
  return estimate(fan.energyKwh, Math.max(0, fan.energyKwh - half), fan.energyKwh + half + more);
}
