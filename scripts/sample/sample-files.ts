import { FARM_2023 } from './farm-2023.ts';
import { FARM_2024 } from './farm-2024.ts';
import { folderReadme } from './folder-readme.ts';
import { fileBytes, type SampleFile } from './log-text.ts';
import { make2023 } from './make-2023.ts';
import { make2024 } from './make-2024.ts';
import { runFarm } from './run-farm.ts';
import { seasonYaml } from './season-yaml.ts';
import { inventWeather, type Weather } from './weather.ts';

export interface SampleSeason {
  folder: string;
  files: { path: string; bytes: Buffer }[];
}

/** One weather for history, the past season and the season, without a seam. */
const sampleWeather = (): Weather => inventWeather(FARM_2024.seed, Date.UTC(2014, 0, 1), Date.UTC(2025, 5, 2));

const packed = (files: readonly SampleFile[]) => files.map((file) => ({ path: file.path, bytes: fileBytes(file) }));
const json = (value: unknown): string => `${JSON.stringify(value, null, 1)}\n`;

export function past(weather: Weather): SampleSeason {
  const made = make2023(FARM_2023, weather, runFarm(FARM_2023, weather));
  return {
    folder: FARM_2023.folder,
    files: packed([
      ...made.files,
      { path: 'season.yaml', text: seasonYaml(FARM_2023, made.fileLines) },
      { path: 'truth.json', text: json(made.truth) },
      {
        path: 'README.md',
        text: `# Sorrel Fork, the season before\n\nTwo bins of the invented farm next door (\`../${FARM_2024.folder}\`), a year earlier, without planted faults; made by \`npm run make-sample\`, seed ${FARM_2023.seed}. To set it beside the later season: \`npm run review -- data-samples/${FARM_2024.folder} --previous data-samples/${FARM_2023.folder}\`.\n`,
      },
    ]),
  };
}

function present(weather: Weather): SampleSeason {
  const made = make2024(FARM_2024, weather, runFarm(FARM_2024, weather));
  return {
    folder: FARM_2024.folder,
    files: packed([
      ...made.files,
      { path: 'season.yaml', text: seasonYaml(FARM_2024, made.fileLines) },
      { path: 'truth.json', text: json(made.truth) },
      { path: 'README.md', text: folderReadme(FARM_2024, made.faults) },
    ]),
  };
}

/** Both seasons, whole. */
export function sampleFiles(say: (line: string) => void): SampleSeason[] {
  say('inventing eleven years of weather');
  const weather = sampleWeather();
  say(`running ${FARM_2023.folder}`);
  const before = past(weather);
  say(`running ${FARM_2024.folder}`);
  return [before, present(weather)];
}
