import { copyFileSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { gunzipSync } from 'node:zlib';

const HOUR_MS = 3_600_000;

export interface MadeSeason {
  bins: number;
  cables: number;
  sensors: number;
  /** hours of log from startMs on; one reading an hour */
  hours: number;
  startMs: number;
  /** an ISD-Lite file to take the weather from; null: a made-up day and season */
  isdLite: string | null;
}

export const SMALL_SEASON: MadeSeason = {
  bins: 1,
  cables: 2,
  sensors: 4,
  hours: 24 * 30,
  startMs: Date.UTC(2024, 9, 4, 5),
  isdLite: null,
};

const stamp = (ms: number) => new Date(ms).toISOString().slice(0, 16);

/** Air temperature by hour, C: of the archive file (gaps carried on), else a daily wave on a falling season. */
function airByHour({ isdLite, hours, startMs }: MadeSeason): number[] {
  const known = new Map<number, number>();
  if (isdLite !== null) {
    for (const line of gunzipSync(readFileSync(isdLite)).toString('latin1').split('\n')) {
      const [year, month, day, hour, tenths] = line.trim().split(/\s+/).map(Number);
      if (line !== '' && tenths !== -9999) known.set(Date.UTC(year, month - 1, day, hour), tenths / 10);
    }
  }
  let last = 15;
  return Array.from({ length: hours }, (_, h) => {
    const wave = 14 - h / 160 + 6 * Math.sin((2 * Math.PI * (h - 9)) / 24);
    last = isdLite === null ? wave : (known.get(startMs + h * HOUR_MS) ?? last);
    return last;
  });
}

/**
 * A season folder of plain logs, for tests of the whole command: not a model of a bin, only a front that climbs while the fan
 * runs, moistures that follow it, a fan on two days of three.
 *
 * @returns the running hours of every fan, as the log's samples say it
 */
export function makeSeasonFolder(folder: string, made: MadeSeason = SMALL_SEASON): { fanHours: number } {
  const air = airByHour(made);
  const fanOn = air.map((_, h) => Math.floor(h / 24) % 3 !== 2 && h < made.hours - 48 && h > 24);
  mkdirSync(join(folder, 'logs'), { recursive: true });
  mkdirSync(join(folder, 'weather'), { recursive: true });
  const ids = Array.from({ length: made.bins }, (_, b) => `B${b + 1}`);
  for (const id of ids) writeFileSync(join(folder, 'logs', `${id}.csv`), cableLog(id, made, air, fanOn));
  const fans = ids.map((id) =>
    fanOn.map((on, h) => `${stamp(made.startMs + h * HOUR_MS)}Z,F${id.slice(1)},${on ? 38.5 : 0.2}\n`).join(''),
  );
  writeFileSync(join(folder, 'logs', 'fans.csv'), `time,fan,amps\n${fans.join('')}`);
  let weather =
    '  - { path: weather/site.csv, holds: weather, columns: { time: time, temperature: { column: t, unit: degC }, humidity: { column: rh, unit: "%" } } }';
  if (made.isdLite === null) {
    const rows = air.map((t, h) => `${stamp(made.startMs + h * HOUR_MS)}Z,${t.toFixed(1)},${(70 - t).toFixed(0)}\n`);
    writeFileSync(join(folder, 'weather', 'site.csv'), `time,t,rh\n${rows.join('')}`);
  } else {
    copyFileSync(made.isdLite, join(folder, 'weather', basename(made.isdLite)));
    weather = `  - { path: weather/${basename(made.isdLite)}, holds: weather, format: isd-lite }`;
  }
  writeFileSync(join(folder, 'season.yaml'), yamlText(made, ids, weather));
  return { fanHours: fanOn.filter((on) => on).length };
}

function cableLog(id: string, made: MadeSeason, air: readonly number[], fanOn: readonly boolean[]): string {
  const lines = ['time,bin,cable,sensor,t,mc'];
  let run = 0;
  for (let h = 0; h < made.hours; h++) {
    if (fanOn[h]) run += 1;
    for (let cable = 1; cable <= made.cables; cable++) {
      for (let sensor = 1; sensor <= made.sensors; sensor++) {
        const behind = 1 / (1 + Math.exp((60 * sensor) / made.sensors / 6 - run / 6));
        const wiggle = ((h * 7 + cable * 13 + sensor * 5) % 11) / 20;
        const t = 68 + (32 + 1.8 * Math.min(air[h], 12) - 68) * behind + wiggle;
        const mc = 18 - 2.5 * behind * Math.min(1, run / 500) + wiggle / 10;
        lines.push(`${stamp(made.startMs + h * HOUR_MS)}Z,${id},C${cable},${sensor},${t.toFixed(1)},${mc.toFixed(2)}`);
      }
    }
  }
  return `${lines.join('\n')}\n`;
}

function yamlText(made: MadeSeason, ids: readonly string[], weather: string): string {
  const cables = Array.from(
    { length: made.cables },
    (_, c) =>
      `      - { id: C${c + 1}, from_centre: ${2 * c + 4} ft, sensors: { count: ${made.sensors}, first: 2 ft, spacing: ${(16 / made.sensors).toFixed(2)} ft } }`,
  );
  const bins = ids.map(
    (id) => `  - id: ${id}
    name: Bin ${id.slice(1)}
    diameter: 36 ft
    grain: { crop: corn, depth: 18 ft, target_moisture: 15 %, filled: ${stamp(made.startMs).slice(0, 10)} }
    goal: dry
    fans: [F${id.slice(1)}]
    cables:
${cables.join('\n')}`,
  );
  const fans = ids.map(
    (id) =>
      `  - { id: F${id.slice(1)}, nameplate: 15 hp, supply: { phases: 3, volts: 230, power_factor: 0.85 }, tariff: farm }`,
  );
  return `format: 1
season: Made for a test
site: { latitude: 42, longitude: -88, elevation: 660 ft, time_zone: America/Chicago }
tariffs:
  - id: farm
    energy: [{ price: 0.08 USD/kWh, when: { hours: 22:00-06:00 } }, { price: 0.11 USD/kWh }]
bins:
${bins.join('\n')}
fans:
${fans.join('\n')}
files:
  - path: logs/B*.csv
    holds: grain
    columns: { time: time, bin: bin, cable: cable, sensor: sensor, temperature: { column: t, unit: degF }, moisture: { column: mc, unit: "%" } }
  - path: logs/fans.csv
    holds: fan
    columns: { time: time, fan: fan, current: { column: amps, unit: A } }
${weather}
`;
}
