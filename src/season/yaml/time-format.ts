import { show } from './show.ts';

const TOKENS =
  /^(?:'[^']*'|yyyy|yy|y|MMMM|MMM|MM|M|dd|d|ooo|o|EEEE|EEE|HH|H|hh|h|mm|m|ss|s|SSS|S|u|uu|uuu|a|ZZZ|ZZ|Z|z|X|x|[^A-Za-z'])+$/;

/** What is wrong with the form of a stamp (Unicode date field letters), or null. `epoch seconds` counts from 1970. */
export function timeFormatProblem(form: string): string | null {
  if (/^epoch (?:seconds|milliseconds)$/i.test(form.trim())) return null;
  const like = 'Write e.g. MM/dd/yyyy hh:mm a, yyyy-MM-dd HH:mm:ss or dd.MM.yyyy HH:mm, or epoch seconds.';
  if (/YY|DD/.test(form)) {
    return `is ${show(form)}; years are yyyy and days dd, in small letters. ${like}`;
  }
  if (!TOKENS.test(form)) return `is ${show(form)}; not all of its letters stand for a part of a time. ${like}`;
  const letters = form.replace(/'[^']*'/g, '');
  if (/^[Xx]$/.test(letters.trim())) return null; // seconds or milliseconds since 1970
  const day = /o/.test(letters) || (/M/.test(letters) && /d/.test(letters));
  if (!/y/.test(letters) || !day) return `is ${show(form)}; it lacks the year, the month or the day. ${like}`;
  if (/h/.test(letters) && !/a/.test(letters)) {
    return `is ${show(form)}; hours from 1 to 12 (hh) need AM or PM (a). For hours from 0 to 23 write HH. ${like}`;
  }
  return null;
}
