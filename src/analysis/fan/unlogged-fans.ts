import { agreeing } from '../../base/agreeing.ts';
import { listed } from '../../base/listed.ts';
import type { Bin } from '../../season/season.ts';
import type { BinFan } from '../types.ts';

/** Fans of a bin that no log tells of, where others have one: what goes by fan hours then goes by those of the others alone. */
export interface UnloggedFans {
  ids: readonly string[];
  /** `No log tells what fan F2 did` */
  said: string;
  /** `fan F1` */
  others: string;
}

/** @returns null where all of the bin's fans have a log that counts, or none has */
export function unloggedFans(
  { fanIds }: Pick<Bin, 'fanIds'>,
  { fans, doubt }: Pick<BinFan, 'fans' | 'doubt'>,
): UnloggedFans | null {
  const logged = fanIds.filter((id) => fans.some(({ fanId, runsFrom }) => fanId === id && runsFrom !== null));
  const ids = fanIds.filter((id) => !logged.includes(id));
  if (doubt !== undefined || logged.length === 0 || ids.length === 0) return null;
  const named = (of: readonly string[]) => `${agreeing(of.length, 'fan', 'fans')} ${listed(of)}`;
  return { ids, said: `No log tells what ${named(ids)} did`, others: named(logged) };
}
