import * as z from 'zod';
import type { Zone } from '../../base/zone.ts';
import { standardBulkDensityKgM3 } from '../../grain/bulk.ts';
import type { BinGrain, DepthStep } from '../season.ts';
import type { Check } from './check.ts';
import { crop } from './crop.ts';
import { dateOrTime, instant, readInstant } from './dates.ts';
import type { Draft } from './draft.ts';
import { list, map } from './fields.ts';
import { isotherm, readIsotherm } from './isotherm.ts';
import type { YamlPath } from './path-text.ts';
import { MOISTURE, quantity, si, siOrNull } from './quantity.ts';

const DEPTH_TAKES = 'a depth with its unit, e.g. "20 ft", or a list of { on: 2024-10-04, depth: 12 ft }';
const TALLEST = 'it must lie between 0 and 60 m';

export const grainSchema = (currency: string) =>
  map(
    {
      crop: crop('what is stored'),
      depth: z
        .union(
          [
            quantity('length', currency, 'levelled depth', {
              above: 0,
              max: 60,
              words: 'it must be above zero and at most 60 m',
            }),
            list(
              map(
                {
                  on: dateOrTime('from when the grain stands so deep'),
                  depth: quantity('length', currency, 'levelled depth from then on', {
                    min: 0,
                    max: 60,
                    words: TALLEST,
                  }),
                },
                'a depth and since when',
              ),
              'levelled depth as the bin is filled and emptied',
              DEPTH_TAKES,
              1,
            ),
          ],
          { error: DEPTH_TAKES },
        )
        .meta({ description: 'levelled depth, or a list of depths with their dates' }),
      test_weight: quantity('bulk density', currency, 'test weight; the crop’s legal bushel else', {
        min: 200,
        max: 1100,
        words: 'it must lie between 200 and 1100 kg/m3 (16 and 85 lb/bu)',
      }).optional(),
      moisture_in: quantity(
        'moisture',
        currency,
        'moisture when filled, where no sensor or ticket says it',
        MOISTURE,
      ).optional(),
      moisture_out: quantity(
        'moisture',
        currency,
        'moisture at the end, where no sensor or ticket says it',
        MOISTURE,
      ).optional(),
      isotherm: isotherm('equilibrium moisture equation and edition; the crop’s default else').optional(),
      target_moisture: quantity('moisture', currency, 'moisture aimed at', MOISTURE).optional(),
      target_temperature: quantity('temperature', currency, 'temperature aimed at', {
        min: -40,
        max: 60,
        words: 'it must lie between -40 and 60 degC',
      }).optional(),
      filled: dateOrTime('when the bin was full; a date is its first local minute').optional(),
      unloaded: dateOrTime('when unloading began; a date is its first local minute').optional(),
    },
    'the grain in the bin',
  );

type GrainText = z.infer<ReturnType<typeof grainSchema>>;

export function checkGrain(grain: Draft<GrainText>, path: YamlPath, zone: Zone, { report }: Check): void {
  const at = (text: string | undefined, where: YamlPath): number | null => {
    if (text === undefined) return null;
    const result = readInstant(text, zone);
    if (!result.ok) report('SEASON_DATE', where, result.reason);
    return result.ok ? result.ms : null;
  };
  const filled = at(grain.filled, [...path, 'filled']);
  const unloaded = at(grain.unloaded, [...path, 'unloaded']);
  if (filled !== null && unloaded !== null && !(unloaded > filled)) {
    const text = `is "${grain.unloaded}", not after filled ("${grain.filled}"). Check both dates.`;
    report('SEASON_DATE', [...path, 'unloaded'], text);
  }
  if (!Array.isArray(grain.depth)) return;
  let before: number | null = null;
  for (const [i, step] of grain.depth.entries()) {
    const now = at(step?.on, [...path, 'depth', i, 'on']);
    if (now !== null && before !== null && !(now > before)) {
      const text = `is "${step?.on}", not after the entry before it. Put the dates in order, each once.`;
      report('SEASON_DATE', [...path, 'depth', i, 'on'], text);
    }
    before = now ?? before;
  }
}

export function toGrain(text: GrainText, zone: Zone, currency: string): BinGrain {
  const stated = siOrNull('bulk density', text.test_weight, currency);
  const when = (value: string | undefined) => (value === undefined ? null : instant(value, zone));
  return {
    crop: text.crop,
    depthSteps: toDepthSteps(text.depth, zone, currency),
    bulkDensityKgM3: stated ?? standardBulkDensityKgM3(text.crop),
    bulkDensityFrom: stated === null ? 'crop' : 'stated',
    moistureInWb: siOrNull('moisture', text.moisture_in, currency),
    moistureOutWb: siOrNull('moisture', text.moisture_out, currency),
    isotherm: text.isotherm === undefined ? null : readIsotherm(text.isotherm),
    targetMoistureWb: siOrNull('moisture', text.target_moisture, currency),
    targetTempC: siOrNull('temperature', text.target_temperature, currency),
    filledMs: when(text.filled),
    unloadedMs: when(text.unloaded),
  };
}

function toDepthSteps(depth: GrainText['depth'], zone: Zone, currency: string): DepthStep[] {
  if (typeof depth === 'string') {
    return [{ fromMs: Number.NEGATIVE_INFINITY, depthM: si('length', depth, currency) }];
  }
  return depth.map((step) => ({ fromMs: instant(step.on, zone), depthM: si('length', step.depth, currency) }));
}
