/** A row's name, what is said behind it, and whether both are in bold. */
export interface Labelled {
  name: string;
  text: string;
  bold: boolean;
}

/** Where labels stand over the whiskers of a narrow figure, px. */
export interface LabelsAbove {
  /** from row to row */
  step: number;
  /** of the label's middle, from the row's */
  label: number;
  /** of the whisker, from the row's middle */
  whisker: number;
  words: (row: { name: string; text: string }) => string;
}

/** What a letter takes at most in a narrow figure, px; bold ones take more. */
const LETTER = { plain: 5.6, bold: 6.4 };
/** What a line has room for in the narrowest window, px. */
const LINE = 325;

/** On one line while all labels of a figure have room on it; else the name over what is said of it. */
export function labelsAbove(rows: readonly Labelled[]): LabelsAbove {
  const tooLong = rows.some(
    ({ name, text, bold }) => `${name}: ${text}`.length * (bold ? LETTER.bold : LETTER.plain) > LINE,
  );
  return tooLong
    ? { step: 54, label: -12, whisker: 12, words: ({ name, text }) => `${name}\n${text}` }
    : { step: 42, label: -11, whisker: 6, words: ({ name, text }) => `${name}: ${text}` };
}
