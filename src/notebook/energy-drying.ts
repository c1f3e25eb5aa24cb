import type { BinReview } from '../analysis/types.ts';
import { NATURAL_AIR_TEXT } from '../analysis/unit-costs/plausible-energy.ts';
import { withheld } from '../base/estimate.ts';
import { listed } from '../base/listed.ts';
import type { SectionBody } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import { perGrain, perWater } from './per-grain.ts';

/** Electricity for what drying did, beside published figures. */
export function dryingSection(bins: readonly BinReview[], units: Units): SectionBody {
  const grain = units.system === 'us' ? 'bushel' : 'tonne';
  const none = (one: BinReview) => withheld(one.failure ?? 'It was not worked out.');
  const told = bins.filter((one) => one.unitEnergy?.kwhPerBushelPoint.value != null);
  const beside = told.filter((one) => one.unitEnergy?.plausible.stands !== null);
  const outside = beside.filter((one) => ['below', 'above'].includes(one.unitEnergy?.plausible.stands ?? ''));
  const said = told.map(
    (one, i) =>
      `${one.bin.name}${i === 0 ? ' took' : ''} ${units.say('energy per grain point', perGrain(one.unitEnergy?.kwhPerBushelPoint ?? none(one), one, units))}`,
  );
  return {
    lead:
      told.length === 0
        ? 'Can’t tell what a point took: no bin was dried by points that can be told from none.'
        : `${listed(said)}. ${besideSaid(beside, outside)}`,
    table: {
      id: 'drying-energy',
      caption: 'Electricity of the fans for the grain, for what was taken out, and for its water',
      columns: [
        { key: 'bin', label: 'Bin', quantity: null },
        { key: 'goal', label: 'Goal', quantity: null },
        { key: 'grain', label: `For a ${grain}`, quantity: 'energy per grain' },
        { key: 'point', label: `For a ${grain}-point`, quantity: 'energy per grain point' },
        { key: 'water', label: 'For its water', quantity: 'energy per water' },
      ],
      rows: bins.map((one) => ({
        bin: one.bin.name,
        goal: one.bin.goal,
        grain: perGrain(one.fan.kwhPerBushel, one, units),
        point: perGrain(one.unitEnergy?.kwhPerBushelPoint ?? none(one), one, units),
        water: perWater(one.unitEnergy?.kwhPerKgWater ?? none(one), units),
      })),
      empty: 'there is no bin in season.yaml.',
    },
    notes: [
      ...bins.flatMap((one) =>
        // Without a number there is nothing to hold beside; a number that nothing is held beside says why.
        one.bin.goal !== 'dry' || one.unitEnergy === undefined || !told.includes(one)
          ? []
          : [`${one.bin.name}: ${one.unitEnergy.plausible.text.join(' ')}`],
      ),
      ...(beside.length > 0 ? [NATURAL_AIR_TEXT] : []),
      'Water is that of the sensors: dry matter times the change of moisture, dry basis. A heater’s fuel is in none of these.',
    ],
  };
}

function besideSaid(beside: readonly BinReview[], outside: readonly BinReview[]): string {
  if (beside.length === 0) return 'No published figures of such drying stand beside it.';
  if (outside.length === 0) return 'None can be told to lie outside what fits published figures.';
  return `${listed(outside.map((one) => one.bin.name))} ${outside.length === 1 ? 'lies' : 'lie'} outside what fits published figures.`;
}

/** Keys of what the bins were held beside. */
export function dryingSources(bins: readonly BinReview[]): string[] {
  return bins.flatMap((one) => [...(one.unitEnergy?.plausible.sourceKeys ?? [])]);
}
