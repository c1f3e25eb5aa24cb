import { DateTime } from 'luxon';
import { isoStamp, type Stamp } from './iso-stamp.ts';
import { suggestFormat } from './suggest-format.ts';

/** Reads a stamp, or says in a sentence why it cannot. */
export type StampParser = (text: string) => Stamp | string;

const EARLIEST_MS = Date.UTC(1900, 0, 1);
const LATEST_MS = Date.UTC(2200, 0, 1);

/**
 * The parser for a file's `time_format`, with every stamp remembered: logs repeat one stamp for each sensor.
 *
 * @param format     null: ISO 8601 forms; `epoch seconds` or `epoch milliseconds`; else field tokens of Unicode TR35
 *                   (`MM/dd/yyyy hh:mm a`), English month names
 * @param needsTime  a date without a time of day is not enough (with a format, the format has said so)
 */
export function stampParser(format: string | null, needsTime: boolean): StampParser {
  const parse = format === null ? isoParser(needsTime) : formatParser(format.trim());
  const remembered = new Map<string, Stamp | string>();
  return (text) => {
    let stamp = remembered.get(text);
    if (stamp === undefined) {
      stamp = parse(text.trim());
      if (typeof stamp !== 'string' && !(stamp.ms >= EARLIEST_MS && stamp.ms < LATEST_MS)) {
        stamp = 'lies outside the years 1900 to 2199';
      }
      remembered.set(text, stamp);
    }
    return stamp;
  };
}

function isoParser(needsTime: boolean): StampParser {
  return (text) => {
    const stamp = isoStamp(text);
    if (stamp === null) {
      const format = suggestFormat(text);
      if (format !== null && needsTime && !/[Hhe]/.test(format)) return dateAlone(format);
      const advice = format === null ? 'set time_format to how the file writes times' : `set time_format: ${format}`;
      return `is no time of the form 2024-10-04T13:00; ${advice}`;
    }
    return stamp.dateOnly && needsTime ? dateAlone('yyyy-MM-dd') : stamp;
  };
}

function dateAlone(format: string): string {
  return `has a date but no time of day; bring date and time into one column, or for one reading a day set time_format: ${format}`;
}

function formatParser(format: string): StampParser {
  const epoch = /^epoch (seconds|milliseconds)$/i.exec(format);
  if (epoch !== null) return epochParser(epoch[1].toLowerCase() === 'seconds' ? 1000 : 1);
  // `MM` is strict about its two digits; a token that stands alone can be read with one digit too without any doubt.
  const relaxed = format.replace(/(?<![A-Za-z])(MM|dd|HH|hh)(?![A-Za-z])/g, (token) => token[0]);
  const options = { zone: 'utc', locale: 'en-US' };
  const parsers = [format, relaxed].map((one) => DateTime.buildFormatParser(one, { locale: 'en-US' }));
  const bare = format.replace(/'[^']*'/g, '');
  const kind = /[Zz]|[Xx]/.test(bare) ? 'instant' : 'local';
  const dateOnly = !/[HhXxTtS]/.test(bare);
  return (text) => {
    // A stamp that says its offset is taken by it, whatever the format.
    const iso = kind === 'local' ? isoStamp(text) : null;
    if (iso !== null && iso.kind === 'instant') return iso;
    for (const parser of parsers) {
      const found = DateTime.fromFormatParser(text, parser, options);
      if (found.isValid) return { kind, ms: found.toMillis(), dateOnly };
    }
    return `does not fit time_format ${format}`;
  };
}

function epochParser(msPerUnit: number): StampParser {
  return (text) => {
    if (!/^-?\d+(\.\d+)?$/.test(text)) return 'is no count of seconds or milliseconds since 1970';
    return { kind: 'instant', ms: Math.round(Number(text) * msPerUnit), dateOnly: false };
  };
}
