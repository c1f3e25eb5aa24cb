import { describe, expect, it } from 'vitest';
import { findChromium } from '../../../scripts/pdf/find-chromium.ts';
import { fixedDates } from '../../../scripts/pdf/fixed-dates.ts';
import { coverDate } from '../../../scripts/year-end/wishes.ts';

describe('the date of a cover', () => {
  it('is a day of the calendar', () => {
    expect(coverDate('2024-02-29')).toBe('29 February 2024');
    for (const wrong of ['2025-02-29', '2025-13-01', '20 May 2025', '2025-5-2', ''])
      expect(() => coverDate(wrong), wrong).toThrow(/^DATE --date is/);
  });
});

describe('the Chromium that prints', () => {
  // Any program that can be run stands for it here.
  const program = process.execPath;
  it('is the stated one, then CHROMIUM_PATH, then the usual places', () => {
    expect(findChromium(program, { CHROMIUM_PATH: '/no/such' }, [])).toBe(program);
    expect(findChromium(null, { CHROMIUM_PATH: program }, ['/no/such'])).toBe(program);
    expect(findChromium(null, {}, ['/no/such', program])).toBe(program);
    expect(findChromium(null, { PATH: '/no/such' }, ['/no/such'])).toBeNull();
  });
  it('is refused with a word where the named one cannot be run', () => {
    expect(() => findChromium('/no/such', {}, [program])).toThrow(/^CHROMIUM --chromium is "\/no\/such"/);
    expect(() => findChromium(null, { CHROMIUM_PATH: '/no/such' }, [program])).toThrow(/CHROMIUM_PATH is/);
  });
});

describe('the dates of a PDF', () => {
  it('are the stated time, and no byte moves', () => {
    const made = Buffer.from(
      "1 0 obj\n<</CreationDate (D:20261129023100+00'00')\n/ModDate (D:20261129023100+00'00')>>\n",
      'latin1',
    );
    const fixed = Buffer.from(fixedDates(made, Date.UTC(2025, 4, 20, 1, 2, 3))).toString('latin1');
    expect(fixed).toBe("1 0 obj\n<</CreationDate (D:20250520010203+00'00')\n/ModDate (D:20250520010203+00'00')>>\n");
    expect(fixed).toHaveLength(made.length);
  });
});
