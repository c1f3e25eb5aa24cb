import type { LoadedSeason } from '../../season/loaded.ts';
import { plenumRows } from '../air-rows.ts';
import type { FanSeason } from '../types.ts';
import { againstPlenum } from './against-plenum.ts';
import { binSpans } from './bin-spans.ts';
import { fanWithoutLog } from './fan-without-log.ts';

/** A log that has less than half of the hours that the plenum shows is no log of what the fan did; own judgement. */
const MOST_TIMES = 2;

/**
 * The fans, those that their bin's plenum contradicts for most of the time without their log: what they did is not known,
 * and why stands in `doubt`. Where the plenum is one of several fans' none of them can be told to be right.
 */
export function doubtedFans({ season, tables }: Pick<LoadedSeason, 'season' | 'tables'>, fans: readonly FanSeason[]) {
  const doubts = new Map<string, string>();
  for (const bin of season.bins) {
    const own = fans.filter((fan) => bin.fanIds.includes(fan.fanId) && fan.spans.state.length > 0);
    // A fan without a log may have made the pressure.
    if (own.length === 0 || own.length !== bin.fanIds.length) continue;
    const { time, static_pressure_pa, flags } = plenumRows(tables, bin.id).rows;
    const hours = againstPlenum(time, static_pressure_pa, flags, binSpans(own.map((fan) => fan.spans)));
    if (hours === null || hours.plenumHours <= MOST_TIMES * hours.logHours) continue;
    const names = own.length === 1 ? `fan ${own[0].fanId}` : 'its fans';
    const why = `The pressure in the plenum of ${bin.name} shows ${names} at work for ${show(hours.plenumHours)} h, the log for ${show(hours.logHours)} h of the same time: what the fans did, and what it cost, is not known. Check the sensor that tells the runs, and its unit in season.yaml.`;
    for (const { fanId } of own) if (!doubts.has(fanId)) doubts.set(fanId, why);
  }
  return withDoubts(fans, doubts);
}

/** The fans, those named in `doubts` (by id, with why) without their log. */
export function withDoubts(fans: readonly FanSeason[], doubts: ReadonlyMap<string, string>): FanSeason[] {
  return fans.map((fan) => {
    const doubt = doubts.get(fan.fanId);
    return doubt === undefined ? fan : { ...fanWithoutLog(fan.fanId, `Its log is left out. ${doubt}`), doubt };
  });
}

const show = (value: number) => String(Number(value.toPrecision(3)));
