import { type UnloggedFans, unloggedFans } from '../analysis/fan/unlogged-fans.ts';
import type { BinReview } from '../analysis/types.ts';
import { agreeing } from '../base/agreeing.ts';
import { listed } from '../base/listed.ts';

const CONSEQUENCES = {
  fronts: (others: string, lacking: string) =>
    `Campaigns, arrivals and fan hours here are by the runs of ${others} alone: where ${lacking} ran without it the hours are too few, and a front may be told late or not at all.`,
  moisture: (others: string, lacking: string) =>
    `Still air here is that of ${others} at rest, and fan hours are its hours: where ${lacking} ran meanwhile, readings taken for those of still air lean towards the air that passed.`,
} as const;

/** Bins of which one fan has no log while another has: what the page tells by the other's hours, as warnings. */
export function unloggedNotes(bins: readonly BinReview[], page: keyof typeof CONSEQUENCES): string[] {
  return bins.flatMap(({ bin, fan }) => {
    const unlogged = unloggedFans(bin, fan);
    return unlogged === null ? [] : [`${bin.name}: ${unlogged.said}. ${consequence(unlogged, page)}`];
  });
}

function consequence({ ids, others }: UnloggedFans, page: keyof typeof CONSEQUENCES): string {
  return CONSEQUENCES[page](others, `${agreeing(ids.length, 'fan', 'fans')} ${listed(ids)}`);
}
