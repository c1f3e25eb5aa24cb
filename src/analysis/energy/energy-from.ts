import type { EnergySource } from '../types.ts';

/** Least sure first. */
const SURENESS: readonly EnergySource[] = ['nameplate', 'current', 'power', 'meter'];
/** A source with no more than this share of the energy does not name the whole. */
const MEANINGFUL_SHARE = 0.1;

const WORDS: Readonly<Record<EnergySource, string>> = {
  meter: 'a meter',
  power: 'logged power',
  current: 'logged current',
  nameplate: 'the nameplate alone',
};

export interface EnergyPart {
  fanId: string;
  from: EnergySource | null;
  energyKwh: number;
}

/**
 * One word for where a bin's energy comes from: the least sure way that carries more than a tenth of it; where none does
 * (no fan ran), the surest there is. Null without any.
 */
export function energyFrom(parts: readonly EnergyPart[]): EnergySource | null {
  const total = parts.reduce((sum, part) => sum + part.energyKwh, 0);
  const share = (source: EnergySource) =>
    parts.reduce((sum, part) => sum + (part.from === source ? part.energyKwh : 0), 0) / total;
  const weak = SURENESS.find((source) => share(source) > MEANINGFUL_SHARE);
  return weak ?? SURENESS.findLast((source) => parts.some((part) => part.from === source)) ?? null;
}

/** Which fan's energy comes from what, a whole sentence. */
export function energyFromText(parts: readonly EnergyPart[]): string {
  const known = parts.filter((part): part is EnergyPart & { from: EnergySource } => part.from !== null);
  if (known.length === 0) return 'Where its energy comes from is not known.';
  const sources = SURENESS.toReversed().filter((source) => known.some((part) => part.from === source));
  if (sources.length === 1) return `Its energy is from ${WORDS[sources[0]]}.`;
  const total = known.reduce((sum, part) => sum + part.energyKwh, 0);
  const told = sources.map((source) => {
    const own = known.filter((part) => part.from === source);
    const share = own.reduce((sum, part) => sum + part.energyKwh, 0) / total;
    const part = total > 0 ? ` (${Math.round(100 * share)} %)` : '';
    const fans = own.map((one) => one.fanId).join(' and ');
    return `of fan${own.length > 1 ? 's' : ''} ${fans}${part} from ${WORDS[source]}`;
  });
  return `Its energy is ${told.slice(0, -1).join(', ')} and ${told[told.length - 1]}.`;
}
