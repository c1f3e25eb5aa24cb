import { expect, test } from 'vitest';
import { centralOffset, fromLocal, HOUR, localText, usMinute } from '../../scripts/sample/calendar.ts';

// Against the IANA zone as Node's ICU has it, an outside source: every six hours of eleven years, and around the changes.
test('the written-out Central time is America/Chicago', () => {
  const format = new Intl.DateTimeFormat('en-CA', {
    timeZone: 'America/Chicago',
    hourCycle: 'h23',
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
  });
  const check = (ms: number) => {
    const part = Object.fromEntries(format.formatToParts(ms).map((one) => [one.type, one.value]));
    expect(localText(ms)).toBe(`${part.year}-${part.month}-${part.day} ${part.hour}:${part.minute}`);
  };
  for (let ms = Date.UTC(2014, 0, 1); ms < Date.UTC(2025, 6, 1); ms += 6 * HOUR) check(ms);
  for (const change of [Date.UTC(2024, 10, 3), Date.UTC(2025, 2, 9)]) {
    for (let ms = change; ms < change + 24 * HOUR; ms += HOUR / 2) check(ms);
  }
});

test('local text goes there and back, and noon and midnight are PM and AM', () => {
  for (let ms = Date.UTC(2024, 7, 15); ms < Date.UTC(2025, 4, 15); ms += 7 * HOUR) {
    const repeated = ms >= Date.UTC(2024, 10, 3, 7) && ms < Date.UTC(2024, 10, 3, 8);
    expect(fromLocal(localText(ms))).toBe(repeated ? ms - HOUR : ms);
  }
  expect(centralOffset(Date.UTC(2024, 6, 1))).toBe(-5 * HOUR);
  expect(usMinute(new Date(Date.UTC(2024, 9, 6, 0, 5)))).toBe('10/06/2024 12:05 AM');
  expect(usMinute(new Date(Date.UTC(2024, 9, 6, 12, 5)))).toBe('10/06/2024 12:05 PM');
});
