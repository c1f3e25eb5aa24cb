import type { Finding } from '../loaded.ts';
import type { Season } from '../season.ts';
import { listed } from './places.ts';
import { countText } from './wording.ts';

/** What a season's logs told anything of. */
export interface Heard {
  /** `bin cable sensor` of sensors with at least one value */
  sensors: ReadonlySet<string>;
  fans: ReadonlySet<string>;
  /** bin ids */
  plenums: ReadonlySet<string>;
  weather: boolean;
}

/** Things that season.yaml names and no log ever mentions. */
export function checkSilent(season: Season, heard: Heard): Finding[] {
  const out: Finding[] = [];
  const entering = heard.weather
    ? 'the outdoor air stands for the air that enters the grain'
    : 'with no weather either, nothing tells the air that enters the grain';
  for (const bin of season.bins) {
    const lacking: string[] = [];
    let count = 0;
    let all = 0;
    for (const cable of bin.cables) {
      const numbers = cable.sensorHeightsM.map((_, i) => i + 1);
      const silent = numbers.filter((number) => !heard.sensors.has(`${bin.id} ${cable.id} ${number}`));
      all += numbers.length;
      count += silent.length;
      if (silent.length === 0) continue;
      const which = silent.length === numbers.length ? '' : ` sensor${silent.length > 1 ? 's' : ''} ${listed(silent)}`;
      lacking.push(`${cable.id}${which}`);
    }
    if (count > 0 && count === all) {
      out.push(
        silentFinding(
          bin.id,
          bin.id,
          `No cable log has a reading of ${bin.id}.`,
          'Check the bin id and the path of its log in season.yaml.',
        ),
      );
    } else if (count > 0) {
      const text = `${countText(count, 'sensor')} named in season.yaml never show${count === 1 ? 's' : ''} a value: ${listed(lacking)}.`;
      out.push(
        silentFinding(
          bin.id,
          bin.id,
          text,
          'Check cable ids and sensor numbers against the log; else have the sensors checked.',
        ),
      );
    }
    if (heard.plenums.size > 0 && !heard.plenums.has(bin.id) && bin.fanIds.length > 0) {
      const text = `No plenum log; ${entering}.`;
      out.push(silentFinding(bin.id, bin.id, text, null));
    }
  }
  for (const fan of season.fans) {
    if (heard.fans.has(fan.id)) continue;
    const bins = season.bins.filter((bin) => bin.fanIds.includes(fan.id));
    const text = `No log of fan ${fan.id}; when it ran is not known.`;
    out.push(
      silentFinding(
        `fan ${fan.id}`,
        bins.length === 1 ? bins[0].id : null,
        text,
        'Check the fan id and the path of its log in season.yaml.',
      ),
    );
  }
  if (heard.plenums.size === 0 && season.bins.some((bin) => bin.fanIds.length > 0)) {
    const text = `No plenum was logged; ${entering}.`;
    out.push(
      silentFinding(
        'plenum',
        null,
        text,
        'A temperature, humidity and pressure sensor under the floor would show what the fan brought in.',
      ),
    );
  }
  if (!heard.weather) {
    const text = 'No weather of the season was logged; nothing can be held against the outdoor air.';
    out.push(silentFinding('weather', null, text, 'Add hourly weather of the nearest station to season.yaml.'));
  }
  return out;
}

function silentFinding(where: string, binId: string | null, text: string, advice: string | null): Finding {
  return { kind: 'silent', where, binId, fromMs: null, toMs: null, cells: 0, text, advice };
}
