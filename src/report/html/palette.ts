/** The colours of one theme. All text and line pairs are held against WCAG AA by a test. */
export interface Theme {
  paper: string;
  /** ground of tables' heads, code, folded parts */
  wash: string;
  ink: string;
  /** second text */
  soft: string;
  /** rules, ticks */
  rule: string;
  link: string;
  /** categories 1 to 6, from the Okabe-Ito set (2008) */
  categories: readonly string[];
}

/** Okabe & Ito 2008, "Color Universal Design": eight colours told apart by most colour-blind readers. */
export const OKABE_ITO = {
  black: '#000000',
  orange: '#e69f00',
  skyBlue: '#56b4e9',
  green: '#009e73',
  yellow: '#f0e442',
  blue: '#0072b2',
  vermilion: '#d55e00',
  purple: '#cc79a7',
} as const;

const { orange, skyBlue, green, yellow, blue, vermilion, purple, black } = OKABE_ITO;

export const LIGHT: Theme = {
  paper: '#fffefb',
  wash: '#f3f1ea',
  ink: '#1d1f20',
  soft: '#555a5c',
  rule: '#858a8c',
  link: '#0a558c',
  // Of the eight, those that reach 3:1 on paper; black ends the list.
  categories: [blue, vermilion, green, purple, black],
};

export const DARK: Theme = {
  paper: '#15181a',
  wash: '#212629',
  ink: '#eceae4',
  soft: '#b0b3b2',
  rule: '#7b8083',
  link: '#8cc4ee',
  categories: [skyBlue, orange, green, purple, yellow],
};

/** Relative luminance of `#rrggbb`. @source WCAG 2.2, definition of relative luminance */
export function luminance(colour: string): number {
  const [r, g, b] = [1, 3, 5].map((at) => {
    const channel = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

/** Contrast of two colours, 1 to 21. @source WCAG 2.2, definition of contrast ratio */
export function contrast(one: string, other: string): number {
  const [low, high] = [luminance(one), luminance(other)].sort((a, b) => a - b);
  return (high + 0.05) / (low + 0.05);
}
