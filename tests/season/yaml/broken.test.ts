import { afterAll, describe, expect, it } from 'vitest';
import { SEASON_CODES } from '../../../src/season/yaml/codes.ts';
import { EXAMPLE, EXAMPLE_FILES } from './contract-example.ts';
import { placeOf, problemsOf, removeFolders, seasonFolder } from './season-folder.ts';

afterAll(removeFolders);

/**
 * One fault put into the example: what is replaced by what; the code, the text at which line and column must point
 * (`text#2`: where it stands the second time), and a part of the message.
 */
type Fault = [from: string, to: string, code: string, at: string, message: string];

const FAULTS: readonly Fault[] = [
  // quantities
  [
    'diameter: 36 ft',
    'diameter: 36',
    'SEASON_UNIT',
    '36\n    eave',
    'bins[0].diameter is "36"; a length needs a unit (units: ft, in, m, cm, mm). Write e.g. "36 ft".',
  ],
  ['diameter: 36 ft', 'diameter: 36 hp', 'SEASON_UNIT', '36 hp', '"hp" is no unit of length'],
  ['diameter: 36 ft', 'diameter: wide', 'SEASON_UNIT', 'wide\n', 'must be a number with a unit'],
  ['diameter: 11 m', 'diameter: 10,9 m', 'SEASON_UNIT', '10,9 m', 'a comma only parts thousands'],
  ['price: 0.112 USD/kWh', 'price: 1e300 USD/kWh', 'SEASON_UNIT', '1e300 USD', 'that is too large'],
  ['price: 0.112 USD/kWh', 'price: 0.112 EUR/kWh', 'SEASON_UNIT', '0.112 EUR', 'USD/kWh'],
  ['accuracy: 1 degF', 'accuracy: 1', 'SEASON_UNIT', '1 }\n  moisture', 'sensors.temperature.accuracy'],
  ['price: 1.80 USD/gal', 'price: 1.80 USD/bu', 'SEASON_UNIT', '1.80 USD/bu', 'propane is priced in USD/gal'],
  ['bearing: 0 deg', 'bearing: 0', 'SEASON_UNIT', '0,   sensors', 'bearing'],
  ['moisture_in: 17.8 %', 'moisture_in: 178 %', 'SEASON_RANGE', '178 %', 'between 0 % and 60 %'],
  [
    'eave_height: 21 ft',
    'eave_height: -21 ft',
    'SEASON_RANGE',
    '-21 ft',
    'bins[0].eave_height is "-21 ft"; it must lie between',
  ],
  ['depth: 20 ft', 'depth: 20 m', 'SEASON_RANGE', '20 m\n', 'the eave is at "21 ft"'],
  ['latitude: 42.1', 'latitude: 142.1', 'SEASON_RANGE', '142.1', 'between -90 and 90'],
  ['latitude: 42.1', 'latitude: 42.1 N', 'SEASON_TYPE', '42.1 N', 'without unit'],
  ['spacing: 3 ft', 'spacing: 0 ft', 'SEASON_RANGE', '0 ft } }\n', 'must be above zero'],
  [
    'heights: [2 ft, 5 ft,',
    'heights: [2 ft, 0 ft,',
    'SEASON_RANGE',
    '0 ft, 8 ft',
    'cables[1].sensors.heights[1] is "0 ft"',
  ],
  ['heights: [2 ft, 5 ft,', 'heights: [5 ft, 2 ft,', 'SEASON_RANGE', '[5 ft', 'must rise'],
  ['from_centre: 9 ft', 'from_centre: 19 ft', 'SEASON_RANGE', '19 ft', 'beyond the wall'],
  ['- [4 inH2O', '- [0 inH2O', 'SEASON_RANGE', '- [0 inH2O, 17800', 'two airflows at one pressure'],
  // U+202E, the right-to-left override of Unicode Standard Annex 9, plain and as an escape; U+2066, an isolate
  [
    'name: North 36',
    'name: North \u202e63',
    'SEASON_YAML',
    'North \u202e63',
    'bins[0].name holds the unseen character U+202E',
  ],
  [
    'name: North 36',
    'name: "North \\u202e63"',
    'SEASON_YAML',
    '"North',
    'U+202E, which turns the direction of the text',
  ],
  [
    'season: Harvest 2024 ',
    'season: Harvest \u20662024 ',
    'SEASON_YAML',
    'Harvest',
    'Delete the value and type it anew',
  ],
  // keys
  ['eave_height:', 'eave_hieght:', 'SEASON_KEY', 'eave_hieght', 'Did you mean "eave_height"?'],
  ['binz', 'binz', 'SEASON_KEY', 'binz', 'Did you mean "bins"?'],
  ['current: { column', 'curent: { column', 'SEASON_KEY', 'curent', 'Did you mean "current"?'],
  ['    diameter: 36 ft\n', '', 'SEASON_MISSING', 'id: B1', 'bins[0].diameter is missing'],
  ['season: Harvest 2024 ', 'x-season: Harvest 2024 ', 'SEASON_MISSING', 'format: 1', 'season is missing'],
  ['  time_zone: America/Chicago\nshow', 'show', 'SEASON_MISSING', 'latitude', 'site.time_zone is missing'],
  ['    open_floor: 60 %\n', '', 'SEASON_MISSING', 'id: B2', 'open_floor'],
  ['season: Harvest 2024                  # a title', 'season:', 'SEASON_TYPE', '\nstarts', 'is empty'],
  ['floor: full\n', 'floor: full\n    open_floor: 60 %\n', 'SEASON_CONFLICT', '60 %\n    grain', 'the floor is full'],
  ['goal: dry', 'goal: dyr', 'SEASON_CHOICE', 'dyr', 'Did you mean "dry"?'],
  [
    'strategy: equilibrium-window',
    'strategy: dry-it',
    'SEASON_CHOICE',
    'dry-it',
    'is "dry-it"; it is no strategy that the kit can simulate (always-on, daytime-hours,',
  ],
  [
    'strategy: equilibrium-window',
    'strategy: equilibrium_windo',
    'SEASON_CHOICE',
    'equilibrium_windo',
    'Did you mean "equilibrium-window"?',
  ],
  ['phases: 3', 'phases: 2', 'SEASON_CHOICE', '2, volts', 'one of 1, 3'],
  ['crop: soybean', 'crop: soybeen', 'SEASON_CROP', 'soybeen', 'Did you mean "soybean"?'],
  ['  corn:    {', '  korn:    {', 'SEASON_CROP', 'korn', 'Did you mean "corn"?'],
  [
    'isotherm: modified Henderson D245.5\n',
    'isotherm: Henderson\n',
    'SEASON_ISOTHERM',
    'Henderson',
    'modified Henderson D245.5',
  ],
  [
    'time_zone: America/Chicago\nshow',
    'time_zone: America/Chigaco\nshow',
    'SEASON_ZONE',
    'America/Chigaco',
    'Did you mean "America/Chicago"?',
  ],
  ['time_zone: America/Chicago\nshow', 'time_zone: -06:00\nshow', 'SEASON_ZONE', '-06:00', 'IANA'],
  ['currency: USD', 'currency: dollars', 'SEASON_CHOICE', 'dollars', 'ISO 4217'],
  // form
  ['format: 1', 'format: 2', 'SEASON_FORMAT', '2', 'reads format 1'],
  ['format: 1\nseason: Harvest 2024 ', 'season: Harvest 2024\nformat: 1', 'SEASON_FORMAT', 'format: 1', 'first key'],
  ['fans: [F1]', 'fans: F1', 'SEASON_TYPE', 'F1\n', 'a list of fan ids'],
  ['curve:\n      - [0 inH2O, 17800 cfm]', 'curve:\n      - 17800 cfm', 'SEASON_TYPE', '17800 cfm', 'a pair like'],
  // dates
  ['filled: 2024-10-04', 'filled: 10/04/2024', 'SEASON_DATE', '10/04/2024', 'year-month-day'],
  ['filled: 2024-10-04', 'filled: 2024-02-30', 'SEASON_DATE', '2024-02-30', 'no such day'],
  ['ends:   2025-04-30', 'ends:   2024-04-30', 'SEASON_DATE', '2024-04-30', 'before starts'],
  ['unloaded: 2025-03-18', 'unloaded: 2024-03-18', 'SEASON_DATE', '2024-03-18', 'not after filled'],
  [
    'unloaded: 2025-03-18',
    'unloaded: 2025-03-09 02:30',
    'SEASON_DATE',
    '2025-03-09',
    'clocks in America/Chicago jump over',
  ],
  ['on: 2024-10-03 14:30', 'on: 2024-09-03', 'SEASON_DATE', '2024-09-03', 'dates in order'],
  // tariffs
  ['months: 6-9', 'months: 6-13', 'SEASON_WHEN', '6-13', 'months 1 to 12'],
  ['days: mon-fri', 'days: mon-fry', 'SEASON_WHEN', 'mon-fry', 'days like mon-fri'],
  ['hours: 22:00-06:00', 'hours: 22:00-25:00', 'SEASON_WHEN', '22:00-25:00', 'hours like'],
  ['hours: 22:00-06:00', 'hours: 22:00-22:00', 'SEASON_WHEN', '22:00-22:00', 'no length'],
  [
    'price: 0.112 USD/kWh }',
    'price: 0.112 USD/kWh, when: { days: sun } }',
    'SEASON_TARIFF',
    'when: { days: sun',
    'have no price',
  ],
  [', when: { hours: 22:00-06:00 }', '', 'SEASON_TARIFF', '{ price: 0.081', 'never match'],
  // ids and references
  ['- id: B2', '- id: B1', 'SEASON_ID', 'B1\n    diameter: 11', 'an id of its own'],
  ['id: C5', 'id: C1', 'SEASON_ID', 'C1, from_centre: 0', 'cable'],
  ['id: K1', 'id: "{K}"', 'SEASON_ID', '"{K}"', '64 characters'],
  ['fans: [F1]', 'fans: [F1, F2]', 'SEASON_REFERENCE', 'F2]', 'no fan has that id (there is F1)'],
  ['tariff: rural-tou\n', 'tariff: rural-tuo\n', 'SEASON_REFERENCE', 'rural-tuo', 'Did you mean "rural-tou"?'],
  ['bin: B2\n', 'bin: B3\n', 'SEASON_REFERENCE', 'B3', 'files[1].bin is "B3"'],
  // files
  ['path: logs/plenum.csv', 'path: logs/plenums.csv', 'SEASON_PATTERN', 'logs/plenums.csv', 'there is no such file'],
  [
    'path: logs/cables-*.csv',
    'path: logs/cabels-*.csv',
    'SEASON_PATTERN',
    'logs/cabels',
    'no file of the season folder matches',
  ],
  ['path: logs/cables-*.csv', 'path: logs/*.csv', 'SEASON_OVERLAP', 'logs/b2.csv', 'read once'],
  ['path: tickets.csv', 'path: /etc/passwd', 'SEASON_PATH', '/etc/passwd', 'absolute'],
  ['path: tickets.csv', 'path: C:/tickets.csv', 'SEASON_PATH', 'C:/tickets.csv', 'absolute'],
  ['path: tickets.csv', 'path: logs/../tickets.csv', 'SEASON_PATH', 'logs/../', 'leads out'],
  ['path: tickets.csv', 'path: logs\\tickets.csv', 'SEASON_PATH', 'logs\\tickets', 'parted by /'],
  ['path: tickets.csv', 'path: review/tables/a.csv', 'SEASON_PATH', 'review/', 'the kit itself'],
  ['path: tickets.csv', 'path: ./loaded/rejects.csv', 'SEASON_PATH', './loaded/', 'the kit itself'],
  ['path: tickets.csv', 'path: logs', 'SEASON_PATH', 'logs\n', 'a folder'],
  [
    'current: { column: amps, unit: A }',
    'current: amps',
    'SEASON_UNIT',
    'amps',
    'a column of current needs one (units: A, mA)',
  ],
  [
    '{ column: amps, unit: A }',
    '{ column: amps, unit: degF }',
    'SEASON_UNIT',
    'degF } }\n  - path: logs/plenum',
    'no unit of current',
  ],
  ['time: time, fan: fan', 'time: { column: time, unit: h }, fan: fan', 'SEASON_UNIT', 'h }, fan', 'takes no unit'],
  [
    '{ time: time, fan: fan,',
    '{ time: time,',
    'SEASON_MISSING',
    '{ time: time, current',
    '`fan: …` for the whole file',
  ],
  [', current: { column: amps, unit: A }', '', 'SEASON_MISSING', '{ time: time, fan: fan }', 'name no measurement'],
  ['"T {cable}-{sensor}"', '"T {cable}"', 'SEASON_CHOICE', '"T {cable}"', '{sensor}'],
  [
    '    format: epw\n',
    '    format: epw\n    columns: { time: t }\n',
    'SEASON_CONFLICT',
    'columns: { time: t }',
    'settled by the format epw',
  ],
  [
    'holds: fan\n',
    'holds: fan\n    shape: wide\n',
    'SEASON_CONFLICT',
    'shape: wide\n    columns: { time: time',
    'hold grain',
  ],
  ['time_format: MM/dd/yyyy hh:mm a', 'time_format: MM/DD/YYYY HH:mm', 'SEASON_TIME', 'MM/DD', 'small letters'],
  ['time_format: MM/dd/yyyy hh:mm a', 'time_format: MM/dd/yyyy hh:mm', 'SEASON_TIME', 'MM/dd/yyyy', 'AM or PM'],
  // YAML
  ['goal: dry', 'goal: [dry', 'SEASON_YAML', '[dry', 'the bracket [ opens here and is not closed before line'],
  [
    'currency: USD',
    'currency: [USD,\nEUR]',
    'SEASON_YAML',
    '[USD',
    'lines within it must be indented further than its key',
  ],
  ['currency: USD', 'currency: [USD', 'SEASON_YAML', '[USD', 'the bracket [ opens here'],
  ['diameter: 36 ft', 'diameter: { size: 36 ft', 'SEASON_YAML', '{ size', 'the bracket { opens here'],
  ['goal: dry', 'goal: "dry', 'SEASON_YAML', '"dry', 'is not closed'],
  ['unit: "%" } }\n  - path: logs/b2', 'unit: % } }\n  - path: logs/b2', 'SEASON_YAML', '% } }', 'quotes'],
  ['    goal: dry', '\tgoal: dry', 'SEASON_YAML', '\tgoal', 'tab'],
  ['    goal: dry', '    goal: dry\n    goal: cool', 'SEASON_KEY_TWICE', 'goal: cool', 'first on line'],
  ['goal: dry', 'goal: *purpose', 'SEASON_YAML', '*purpose', 'no anchor'],
  ['goal: dry', 'goal: !word dry', 'SEASON_YAML', '!word', 'tag'],
  ['goal: dry', '<<: { goal: dry }', 'SEASON_YAML', '<<', 'merge key'],
  ['show_units: us', '---\nshow_units: us', 'SEASON_YAML', '---', 'second document'],
];

function placed(text: string, at: string): { line: number; column: number } {
  const [, needle, nth] = /^([\s\S]*?)(?:#(\d))?$/.exec(at) as RegExpExecArray;
  return placeOf(text, needle, Number(nth ?? 1));
}

/** A fault that replaces itself is a key more. */
function withFault(from: string, to: string): string {
  return from === to ? `${EXAMPLE}${to}: []\n` : EXAMPLE.replace(from, () => to);
}

describe('season.yaml with one fault', () => {
  it.each(FAULTS)('%j → %j: %s', async (from, to, code, at, message) => {
    const text = withFault(from, to);
    expect(text).not.toBe(EXAMPLE);
    const problems = await problemsOf(seasonFolder({ ...EXAMPLE_FILES, 'season.yaml': text }));
    const found = problems.find((one) => one.code === code && one.message.includes(message));
    expect(found, JSON.stringify(problems, null, 1)).toMatchObject({ file: 'season.yaml', ...placed(text, at) });
  });

  it('is told once: a fault brings no follow-up problems', async () => {
    const several: string[] = [];
    // These truly say two things: the file is gone from one pattern, or the tree is broken for good.
    const mayBeMore = new Set(['SEASON_YAML', 'SEASON_OVERLAP', 'SEASON_FORMAT']);
    for (const [from, to, code] of FAULTS.filter((fault) => !mayBeMore.has(fault[2]))) {
      const text = withFault(from, to);
      const problems = await problemsOf(seasonFolder({ ...EXAMPLE_FILES, 'season.yaml': text }));
      if (problems.length !== 1) several.push(`${code} ${to}: ${problems.map((one) => one.message).join(' | ')}`);
    }
    expect(several).toEqual([]);
  });

  it('covers every code', () => {
    const covered = new Set([...FAULTS.map((fault) => fault[2]), 'SEASON_FILE']); // SEASON_FILE: source.test.ts
    expect(Object.keys(SEASON_CODES).filter((code) => !covered.has(code))).toEqual([]);
    expect([...covered].filter((code) => !(code in SEASON_CODES))).toEqual([]);
  });
});

it('a fan curve written the wrong way round is told once, with all that rises', async () => {
  const text = EXAMPLE.replace('- [0 inH2O, 17800 cfm]', '- [0 inH2O, 3000 cfm]\n      - [2 inH2O, 8300 cfm]');
  const problems = await problemsOf(seasonFolder({ ...EXAMPLE_FILES, 'season.yaml': text }));
  // The example's own second point is [4 inH2O, 11900 cfm]: both steps rise.
  expect(problems.map((one) => one.message)).toEqual([
    'fans[0].curve has an airflow that rises with pressure: [0 inH2O, 3000 cfm] and [2 inH2O, 8300 cfm]; [2 inH2O, 8300 cfm] and [4 inH2O, 11900 cfm]. A fan gives less air against more pressure; put the pressures beside their own airflows.',
  ]);
});

it('a text where a list must stand is told once, as no list', async () => {
  const text = EXAMPLE.replace(/curve:(\n +- \[.*)+/, 'curve: 7');
  const problems = await problemsOf(seasonFolder({ ...EXAMPLE_FILES, 'season.yaml': text }));
  expect(problems.map((one) => one.message)).toEqual([
    expect.stringMatching(/^fans\[0\]\.curve is "7"; it takes a list of pairs/),
  ]);
});

it('a shape that is none is told once, and not as columns that another shape has', async () => {
  const text = EXAMPLE.replace('shape: wide', 'shape: wyde');
  const problems = await problemsOf(seasonFolder({ ...EXAMPLE_FILES, 'season.yaml': text }));
  expect(problems.map((one) => one.code)).toEqual(['SEASON_CHOICE']);
});

describe('a misspelt key', () => {
  const told = async (...edits: [string, string][]) => {
    const text = edits.reduce((yaml, [from, to]) => yaml.replaceAll(from, to), EXAMPLE);
    const problems = await problemsOf(seasonFolder({ ...EXAMPLE_FILES, 'season.yaml': text }));
    return problems.map(({ code, message }) => [code, message.split(' ')[0]]);
  };
  // What hangs on the key (that it is missing, that all prices have no unit, that no fan has an id) follows from its spelling.
  it.each<[string, string, string]>([
    ['\ncurrency: USD', '\ncurency: EUR', 'curency'],
    ['\nfans:', '\nfanz:', 'fanz'],
    ['\nbins:', '\nbns:', 'bns'],
    ['nameplate: 15 hp', 'namplate: 15 hp', 'fans[0].namplate'],
    ['net: {', 'nett: {', 'files[6].columns.nett'],
  ])('%j → %j is told once', async (from, to, key) => {
    expect(await told([from, to], ...(key === 'curency' ? [['USD', 'EUR'] as [string, string]] : []))).toEqual([
      ['SEASON_KEY', key],
    ]);
  });

  it('a currency that is no code spoils no price, but a price in another currency is told', async () => {
    expect(await told(['\ncurrency: USD', '\ncurrency: euro'], ['USD', 'EUR'])).toEqual([
      ['SEASON_CHOICE', 'currency'],
    ]);
    expect(await told(['\ncurrency: USD', '\ncurrency: euro'], ['0.112 USD/', '0.112 EUR/'])).toEqual([
      ['SEASON_CHOICE', 'currency'],
      ['SEASON_UNIT', 'tariffs[0].energy[2].price'],
    ]);
    // A key of one's own is no misspelling of the kit's.
    expect(await told(['\ncurrency: USD', '\nx-currency: EUR'])).toEqual([]);
  });
});

describe('season.yaml with many faults', () => {
  it('tells them all, in the order of the file', async () => {
    const edits: [string, string][] = [
      ['latitude: 42.1', 'latitude: north'],
      ['elevation: 1050 ft', 'elevation: 1050'],
      ['months: 6-9', 'months: 0'],
      ['ratchet: 60 %', 'ratchet: 160 %'],
      ['diameter: 36 ft', 'diametre: 36 ft'],
      ['crop: corn', 'crop: maize'],
      ['fans: [F1]', 'fans: [F9]'],
      ['nameplate: 15 hp', 'nameplate: 15'],
      ['path: bills.csv', 'path: ../bills.csv'],
      ['{ column: kwh, unit: kWh }', 'kwh'],
    ];
    const text = edits.reduce((yaml, [from, to]) => yaml.replace(from, () => to), EXAMPLE);
    const problems = await problemsOf(seasonFolder({ ...EXAMPLE_FILES, 'season.yaml': text }));
    expect(problems.map((one) => [one.code, one.message.split(' ')[0]])).toEqual([
      ['SEASON_TYPE', 'site.latitude'],
      ['SEASON_UNIT', 'site.elevation'],
      ['SEASON_WHEN', 'tariffs[0].energy[0].when.months'],
      ['SEASON_RANGE', 'tariffs[0].demand[0].ratchet'],
      ['SEASON_KEY', 'bins[0].diametre'],
      ['SEASON_CROP', 'bins[0].grain.crop'],
      ['SEASON_REFERENCE', 'bins[0].fans[0]'],
      ['SEASON_UNIT', 'fans[0].nameplate'],
      ['SEASON_PATH', 'files[8].path'],
      ['SEASON_UNIT', 'files[8].columns.energy'],
    ]);
    const lines = problems.map((one) => one.line as number);
    expect(lines).toEqual(lines.toSorted((a, b) => a - b));
  });
});
