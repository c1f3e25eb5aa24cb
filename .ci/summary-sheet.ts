import { readFileSync } from 'node:fs';
import { sheetsOf } from '../tests/support/pdf-sheets.ts';

// The tests print the year-end report without models, as fitting takes minutes; with them the summary has more to say and has to fit too.
const pages = await sheetsOf(readFileSync(process.argv[2]));
const heads = pages.map(({ lines }) => lines.slice(0, 3).join(' / '));
if (heads[1]?.includes('1 Summary') && heads[2]?.includes('2 The farm and its bins')) process.exit(0);
console.error(
  `The summary of ${process.argv[2]} does not stand on the one sheet after the cover: ${heads.slice(1, 4).join(' | ')}`,
);
process.exit(1);
