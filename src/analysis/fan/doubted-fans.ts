import type { LoadedSeason } from '../../season/loaded.ts';
import type { Bin } from '../../season/season.ts';
import { plenumRows } from '../air-rows.ts';
import type { FanSeason } from '../types.ts';
import { type AgainstPlenum, againstPlenum } from './against-plenum.ts';
import { beyondPlenum } from './beyond-plenum.ts';
import { binSpans } from './bin-spans.ts';
import { fanWithoutLog } from './fan-without-log.ts';

/** A log that has less than half of the hours that the plenum shows, or over twice, is no log of what the fan did; own judgement. */
const MOST_TIMES = 2;

/**
 * The fans, those that their bin's plenum contradicts for most of the time without their log, be it that it says too little or too much: what they did is not known,
 * and why stands in `doubt`. Where the plenum is one of several fans' none of them can be told to be right.
 */
export function doubtedFans({ season, tables }: Pick<LoadedSeason, 'season' | 'tables'>, fans: readonly FanSeason[]) {
  const doubts = new Map<string, string>();
  for (const bin of season.bins) {
    const own = fans.filter((fan) => bin.fanIds.includes(fan.fanId) && fan.spans.state.length > 0);
    // A fan without a log may have made the pressure.
    if (own.length === 0 || own.length !== bin.fanIds.length) continue;
    const { time, static_pressure_pa, flags } = plenumRows(tables, bin.id).rows;
    const spans = binSpans(own.map((fan) => fan.spans));
    const log = [time, static_pressure_pa, flags, spans] as const;
    const why = tooFew(bin, own, againstPlenum(...log)) ?? tooMany(bin, own, beyondPlenum(...log));
    if (why === null) continue;
    for (const { fanId } of own) if (!doubts.has(fanId)) doubts.set(fanId, why);
  }
  return withDoubts(fans, doubts);
}

function tooFew(bin: Bin, own: readonly FanSeason[], hours: AgainstPlenum | null): string | null {
  if (hours === null || hours.plenumHours <= MOST_TIMES * hours.logHours) return null;
  return `${apart(bin, own, hours)} Check the sensor that tells the runs, and its unit in season.yaml.`;
}

function tooMany(bin: Bin, own: readonly FanSeason[], hours: AgainstPlenum | null): string | null {
  if (hours === null || hours.logHours <= MOST_TIMES * hours.plenumHours) return null;
  return `${apart(bin, own, hours)} The pressure rose and fell meanwhile, so it is alive. See whether the sensor that tells the runs stays on, and whether running_above in season.yaml lies above what it reads at rest.`;
}

function apart({ name }: Bin, own: readonly FanSeason[], { plenumHours, logHours }: AgainstPlenum): string {
  const names = own.length === 1 ? `fan ${own[0].fanId}` : 'its fans';
  return `The pressure in the plenum of ${name} shows ${names} at work for ${show(plenumHours)} h, the log for ${show(logHours)} h of the same time: what the fans did, and what it cost, is not known.`;
}

/** The fans, those named in `doubts` (by id, with why) without their log. */
export function withDoubts(fans: readonly FanSeason[], doubts: ReadonlyMap<string, string>): FanSeason[] {
  return fans.map((fan) => {
    const doubt = doubts.get(fan.fanId);
    return doubt === undefined ? fan : { ...fanWithoutLog(fan.fanId, `Its log is left out. ${doubt}`), doubt };
  });
}

const show = (value: number) => String(Number(value.toPrecision(3)));
