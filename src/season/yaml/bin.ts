import type * as z from 'zod';
import type { Zone } from '../../base/zone.ts';
import { cropOf } from '../../grain/crops.ts';
import type { Bin } from '../season.ts';
import { STRATEGY_IDS } from '../strategy-ids.ts';
import { cableSchema, checkCable, toCable } from './cable.ts';
import type { Check } from './check.ts';
import type { Draft } from './draft.ts';
import { checked, choice, id, list, map, number, text } from './fields.ts';
import { checkGrain, grainSchema, toGrain } from './grain.ts';
import { checkIds } from './ids.ts';
import { didYouMean } from './nearest.ts';
import type { YamlPath } from './path-text.ts';
import { quantity, si, siOrNull } from './quantity.ts';
import { show } from './show.ts';

export const binSchema = (currency: string) =>
  map(
    {
      id: id('name of the bin, as in the logs'),
      name: text('name of the bin on pages; the id else').optional(),
      diameter: quantity('length', currency, 'inside diameter', {
        min: 1,
        max: 80,
        words: 'it must lie between 1 and 80 m (3 and 262 ft)',
      }),
      eave_height: quantity('length', currency, 'height of the eave above the floor', {
        min: 0.5,
        max: 60,
        words: 'it must lie between 0.5 and 60 m',
      }).optional(),
      floor: choice(['full', 'partial'], 'full: air enters over the whole floor; partial: over open_floor').optional(),
      open_floor: quantity('fraction', currency, 'share of the floor that lets air through', {
        above: 0,
        max: 1,
        words: 'it must be above 0 % and at most 100 %',
      }).optional(),
      grain: grainSchema(currency),
      goal: choice(
        ['dry', 'cool', 'condition', 'hold'],
        'what the fans were run for; decides which unit costs make sense; hold when left out',
      ).optional(),
      air: choice(['up', 'down'], 'up: pushed in below; down: drawn out below; up when left out').optional(),
      airflow_factor: number('resistance multiplier for packing and fines; the crop’s usual one when left out', {
        min: 0.5,
        max: 5,
      }).optional(),
      managed_as: text('how the manager ran it').optional(),
      strategy: checked(
        'SEASON_CHOICE',
        `one of ${STRATEGY_IDS.join(', ')}`,
        (value) =>
          STRATEGY_IDS.includes(value)
            ? { ok: true }
            : {
                ok: false,
                reason: `is ${show(value)}; it is no strategy that the kit can simulate (${STRATEGY_IDS.join(', ')}).${didYouMean(value, STRATEGY_IDS)} Leave it out where none fits; managed_as takes any words.`,
              },
        {
          description: 'id of the strategy that the kit can simulate, e.g. equilibrium-window',
          enum: [...STRATEGY_IDS],
        },
      ).optional(),
      fans: list(id('id of a fan'), 'ids of the fans of this bin', 'a list of fan ids, e.g. [F1]').optional(),
      cables: list(cableSchema(currency), 'the cables in this bin', 'a list of cables').optional(),
    },
    'a bin and what was in it',
  );

export type BinText = z.infer<ReturnType<typeof binSchema>>;

export function checkBin(bin: Draft<BinText>, path: YamlPath, zone: Zone, check: Check): void {
  checkFloor(bin, path, check);
  if (bin.grain !== undefined) checkGrain(bin.grain, [...path, 'grain'], zone, check);
  checkLevel(bin, path, check);
  const radiusM = bin.diameter === undefined ? null : si('length', bin.diameter, check.currency) / 2;
  checkIds('cable', bin.cables, [...path, 'cables'], check);
  bin.cables?.forEach((cable, i) => {
    if (cable !== undefined) checkCable(cable, [...path, 'cables', i], radiusM, check);
  });
}

function checkFloor(bin: Draft<BinText>, path: YamlPath, { report, bad, currency }: Check): void {
  const open = bin.open_floor;
  if (bin.floor === 'partial' && open === undefined && !bad.under([...path, 'open_floor'])) {
    const text = 'is missing; a partial floor takes the share that lets air through, e.g. open_floor: 60 %.';
    report('SEASON_MISSING', [...path, 'open_floor'], text, 'parent');
  }
  if (bin.floor === 'full' && open !== undefined && si('fraction', open, currency) < 1) {
    const text = `is ${show(open)}, but the floor is full. Write floor: partial, or leave open_floor out.`;
    report('SEASON_CONFLICT', [...path, 'open_floor'], text);
  }
}

/** Grain half as high again as the eave is a wrong unit, not a peak: even a steep roof holds less. */
function checkLevel(bin: Draft<BinText>, path: YamlPath, { report, currency }: Check): void {
  const eave = siOrNull('length', bin.eave_height, currency);
  const depth = bin.grain?.depth;
  if (eave === null || depth === undefined) return;
  const levels =
    typeof depth === 'string'
      ? [{ text: depth, at: ['depth'] }]
      : depth.map((step, i) => ({ text: step?.depth, at: ['depth', i, 'depth'] }));
  for (const { text, at } of levels) {
    if (text !== undefined && si('length', text, currency) > 1.5 * eave) {
      const why = `is ${show(text)}, but the eave is at ${show(bin.eave_height)}. Check the units of both.`;
      report('SEASON_RANGE', [...path, 'grain', ...at], why);
    }
  }
}

export function toBin(text: BinText, zone: Zone, currency: string): Bin {
  const openFloor = siOrNull('fraction', text.open_floor, currency);
  return {
    id: text.id,
    name: text.name ?? text.id,
    diameterM: si('length', text.diameter, currency),
    eaveHeightM: siOrNull('length', text.eave_height, currency),
    openFloor: openFloor ?? 1,
    grain: toGrain(text.grain, zone, currency),
    goal: text.goal ?? 'hold',
    air: text.air ?? 'up',
    airflowFactor:
      text.airflow_factor === undefined ? cropOf(text.grain.crop).airflowFactor : Number(text.airflow_factor),
    airflowFactorFrom: text.airflow_factor === undefined ? 'crop' : 'stated',
    managedAs: text.managed_as ?? null,
    strategy: text.strategy ?? null,
    fanIds: text.fans ?? [],
    cables: (text.cables ?? []).map((cable) => toCable(cable, currency)),
  };
}
