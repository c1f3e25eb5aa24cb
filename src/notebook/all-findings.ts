import { contradictionSaid } from '../analysis/surface/surface-said.ts';
import type { BinReview, SeasonReview } from '../analysis/types.ts';
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
  const ofPower = fans.flatMap(({ fanId, misfit }): Finding[] => {
    const own = season.bins.filter((bin) => bin.fanIds.includes(fanId));
    return misfit === undefined
      ? []
      : [contradicted(`fan ${fanId}`, own.length === 1 ? own[0].id : null, misfit, NAMEPLATE)];
  });
  // The page of data quality stands where the analysis broke.
  const ofEnergy = (bins ?? []).flatMap(({ bin, unitEnergy }) =>
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
  const ofDepth = (bins ?? []).flatMap((review) => {
    const { bin, surface } = review;
    const said = contradictionSaid(surface);
    return said === null
      ? []
      : [contradicted('depth of the grain', bin.id, `${bin.name}: ${said}`, depthAdvice(review))];
  });
  return [...load.findings, ...ofLogs, ...ofPower, ...ofEnergy, ...ofDepth];
}

const HOLD = 'Hold the fan log against the bill, a run-hour meter or your own notes.';
const NAMEPLATE =
  'Read the nameplate at the motor, with the fan locked out; a current is taken by someone licensed to open the panel.';

/** Nobody measures grain that is out, and where loads were weighed the bushels are theirs. */
function depthAdvice({ bin, grain }: BinReview): string {
  const look =
    bin.grain.unloadedMs === null
      ? 'Measure from the hatch how deep the grain lies, without going in'
      : 'The grain is out by now: hold the weights of its loads against the stated depth';
  const stands =
    grain.from === 'tickets'
      ? 'means by height and the airflow stand on it'
      : 'bushels, and what is told for each, stand on it';
  return `${look}, and check the heights of the sensors: ${stands}.`;
}

function contradicted(where: string, binId: string | null, text: string, advice = HOLD): Finding {
  return {
    kind: 'contradicted',
    where,
    binId,
    fromMs: null,
    toMs: null,
    cells: 0,
    text,
    advice,
  };
}
