import { checked } from './fields.ts';
import { show } from './show.ts';

const EQUATIONS = ['Henderson', 'Chung-Pfost', 'Halsey', 'Oswin'] as const;
const FORM = /^modified (henderson|chung-pfost|halsey|oswin) (d245\.[456])$/i;
const TAKES = `"modified ${EQUATIONS.join(' | ')}" and the edition D245.4, D245.5 or D245.6, e.g. "modified Henderson D245.5"`;

/** Equation and edition of ASAE/ASABE D245; whether the crop has constants for it is the crop table's matter. */
export const isotherm = (description: string) =>
  checked(
    'SEASON_ISOTHERM',
    TAKES,
    (text) =>
      readIsotherm(text) === null ? { ok: false, reason: `is ${show(text)}; it takes ${TAKES}.` } : { ok: true },
    {
      description,
      pattern: '^ *[Mm]odified +(?:[Hh]enderson|[Cc]hung-[Pp]fost|[Hh]alsey|[Oo]swin) +[Dd]245\\.[456] *$',
    },
  );

/** `Modified henderson d245.5` in the spelling of the crop table; null for any other text. */
export function readIsotherm(text: string): string | null {
  const match = FORM.exec(text.trim().replace(/\s+/g, ' '));
  if (match === null) return null;
  const name = EQUATIONS.find((one) => one.toLowerCase() === match[1].toLowerCase());
  return `modified ${name} ${match[2].toUpperCase()}`;
}
