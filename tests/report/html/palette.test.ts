import { describe, expect, it } from 'vitest';
import { contrast, DARK, LIGHT, OKABE_ITO } from '../../../src/report/html/palette.ts';

describe('contrast', () => {
  // WCAG 2.2, contrast ratio: black on white is 21:1. #767676 is the lightest grey that passes 4.5:1 on white (common practice, W3C examples).
  it('is the one of WCAG', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 10);
    expect(contrast('#ffffff', '#ffffff')).toBe(1);
    expect(contrast('#767676', '#ffffff')).toBeGreaterThanOrEqual(4.5);
    expect(contrast('#777777', '#ffffff')).toBeLessThan(4.5);
  });
});

describe.each([
  ['light', LIGHT],
  ['dark', DARK],
])('the %s theme', (_name, theme) => {
  // WCAG 2.2, 1.4.3 (AA): text 4.5:1.
  it.each(['ink', 'soft', 'link'] as const)('lets %s be read on paper and wash', (name) => {
    expect(contrast(theme[name], theme.paper)).toBeGreaterThanOrEqual(4.5);
    expect(contrast(theme[name], theme.wash)).toBeGreaterThanOrEqual(4.5);
  });
  // WCAG 2.2, 1.4.11 (AA): lines and marks that carry meaning 3:1.
  it('lets rules, hatching and categories be seen', () => {
    for (const colour of [theme.rule, ...theme.categories]) {
      expect(contrast(colour, theme.paper), colour).toBeGreaterThanOrEqual(3);
    }
  });
  it('takes its categories from the Okabe-Ito set, at most six, none twice', () => {
    const known = new Set<string>(Object.values(OKABE_ITO));
    expect(theme.categories.every((colour) => known.has(colour))).toBe(true);
    expect(new Set(theme.categories).size).toBe(theme.categories.length);
    expect(theme.categories.length).toBeLessThanOrEqual(6);
  });
});

// Okabe & Ito 2008 give the set in RGB; from memory: orange 230/159/0, sky blue 86/180/233, bluish green 0/158/115,
// yellow 240/228/66, blue 0/114/178, vermilion 213/94/0, reddish purple 204/121/167.
it('the Okabe-Ito set has the published values (from memory)', () => {
  const rgb = (hex: string) => [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16));
  expect(rgb(OKABE_ITO.orange)).toEqual([230, 159, 0]);
  expect(rgb(OKABE_ITO.skyBlue)).toEqual([86, 180, 233]);
  expect(rgb(OKABE_ITO.green)).toEqual([0, 158, 115]);
  expect(rgb(OKABE_ITO.yellow)).toEqual([240, 228, 66]);
  expect(rgb(OKABE_ITO.blue)).toEqual([0, 114, 178]);
  expect(rgb(OKABE_ITO.vermilion)).toEqual([213, 94, 0]);
  expect(rgb(OKABE_ITO.purple)).toEqual([204, 121, 167]);
});
