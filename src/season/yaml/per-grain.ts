import type { z } from 'zod';
import { type PerGrain, perLegalBushel } from '../../base/per-grain.ts';
import { type QuantityResult, type UnitKind, unitsOf } from '../../base/units.ts';
import { cropOf } from '../../grain/crops.ts';
import { type Limits, quantityOf, readQuantity } from './quantity.ts';

/** What is stated for grain by the bushel, and the kind of the same by weight. */
const BY_WEIGHT = {
  'price per bushel': 'price per tonne',
  'price per bushel-point': 'price per tonne-point',
  'fuel per bushel-point': 'fuel per tonne-point',
  'energy per bushel-point': 'energy per tonne-point',
} as const satisfies Partial<Record<UnitKind, UnitKind>>;

export type GrainKind = keyof typeof BY_WEIGHT;

/** `4.35 USD/bu` or `171 USD/t`; what neither is gets told the units of both. */
export function readPerGrain(
  kind: GrainKind,
  text: string,
  currency: string,
): { ok: true; per: PerGrain; si: number; unit: string } | Extract<QuantityResult, { ok: false }> {
  const byWeight = readQuantity(BY_WEIGHT[kind], text, currency);
  if (byWeight.ok) return { ...byWeight, per: { amount: byWeight.si, of: 'kg' } };
  const byBushel = readQuantity(kind, text, currency, unitsOf(BY_WEIGHT[kind], currency));
  return byBushel.ok ? { ...byBushel, per: { amount: byBushel.si, of: 'bushel' } } : byBushel;
}

/** Text of an amount for grain, checked; stays text in the schema's output. */
export const perGrain = (kind: GrainKind, currency: string, description: string, limits?: Limits): z.ZodString =>
  quantityOf([kind, BY_WEIGHT[kind]], (text) => readPerGrain(kind, text, currency), currency, description, limits);

/** The amount of a text that has passed the schema. */
export function grainAmount(kind: GrainKind, text: string, currency: string): PerGrain {
  const read = readPerGrain(kind, text, currency);
  if (!read.ok) throw new Error(`unchecked ${kind}: ${read.reason}`);
  return read.per;
}

/** The same by a crop's legal bushel; null for an optional key left out. */
export function perBushelOf(kind: GrainKind, text: string | undefined, currency: string, crop: string): number | null {
  return text === undefined ? null : perLegalBushel(grainAmount(kind, text, currency), cropOf(crop).legalBushelKg);
}
