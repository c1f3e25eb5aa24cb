import type { SeasonReview } from '../analysis/types.ts';
import type { Finding, LoadedSeason } from '../season/loaded.ts';

/** What the checks of the readings found, and where the analysis speaks against a fan's log. */
export function allFindings({ load, season }: LoadedSeason, { bins, fans }: SeasonReview): Finding[] {
  const told = new Set<string>();
  const ofLogs = fans.flatMap(({ fanId, doubt }): Finding[] => {
    if (doubt === undefined || told.has(doubt)) return [];
    told.add(doubt);
    const own = season.bins.filter((bin) => bin.fanIds.includes(fanId));
    const one = fans.filter((fan) => fan.doubt === doubt).map((fan) => `fan ${fan.fanId}`);
    return [contradicted(one.join(', '), own.length === 1 ? own[0].id : null, doubt)];
  });
  const ofEnergy = bins.flatMap(({ bin, unitEnergy }) =>
    unitEnergy?.plausible.doubtsLog === true
      ? [
          contradicted(
            bin.fanIds.map((id) => `fan ${id}`).join(', '),
            bin.id,
            `${bin.name}: ${unitEnergy.plausible.text.join(' ')}`,
          ),
        ]
      : [],
  );
  return [...load.findings, ...ofLogs, ...ofEnergy];
}

function contradicted(where: string, binId: string | null, text: string): Finding {
  return {
    kind: 'contradicted',
    where,
    binId,
    fromMs: null,
    toMs: null,
    cells: 0,
    text,
    advice: 'Hold the fan log against the bill, a run-hour meter or your own notes.',
  };
}
