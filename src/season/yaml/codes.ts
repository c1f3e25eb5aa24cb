/** Every code that a problem of season.yaml can carry, and what it means. Codes are stable; texts may improve. */
export const SEASON_CODES = {
  SEASON_FILE: 'season.yaml or its folder is not there, cannot be opened, is empty, too large, or no UTF-8 text',
  SEASON_YAML: 'the text is not YAML that this kit reads: syntax, tags, several documents, merge keys, endless aliases',
  SEASON_KEY: 'a key that is not known at its place',
  SEASON_KEY_TWICE: 'a key that stands twice in one map',
  SEASON_FORMAT: '`format: 1` does not open the file, or another format is asked for',
  SEASON_TYPE: 'a value of the wrong form: a list where a text is due, a word where a number is due, or nothing at all',
  SEASON_MISSING: 'a key, or an entry of a list, that must be there is not',
  SEASON_UNIT: 'a quantity without unit, with a unit of another kind, or a unit where none belongs',
  SEASON_RANGE: 'a number outside what is possible, or numbers out of order',
  SEASON_CHOICE: 'a word that is none of the allowed ones',
  SEASON_CROP: 'a crop that is not in the crop table',
  SEASON_ZONE: 'a time zone that is not known',
  SEASON_ISOTHERM: 'an isotherm that is not written as equation and edition',
  SEASON_DATE: 'a date or time that is not on the calendar or clock, or dates out of order',
  SEASON_WHEN: 'months, days or hours of a tariff rule that cannot be read',
  SEASON_TARIFF: 'energy rules that leave hours without a price, or rules that can never match',
  SEASON_ID: 'an id used twice, or a text that cannot be an id',
  SEASON_REFERENCE: 'the id of a bin, fan, cable or tariff that is not there',
  SEASON_CONFLICT: 'two keys that cannot stand together, or a key that does not fit this kind of file',
  SEASON_PATH: 'a path that leads, or could lead, out of the season folder, or to something that is no file',
  SEASON_PATTERN: 'a file pattern that matches nothing',
  SEASON_OVERLAP: 'one file matched twice',
  SEASON_TIME: 'a `time_format` that cannot place a stamp',
} as const;

export type SeasonCode = keyof typeof SEASON_CODES;
