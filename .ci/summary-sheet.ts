import { readFileSync } from 'node:fs';
import { printDocument } from '../scripts/pdf/print-document.ts';
import { sheetsOf } from '../tests/support/pdf-sheets.ts';

// The tests print the year-end report without models, as fitting takes minutes; with them the summary has more to say and has to fit too.
const [path] = process.argv.slice(2);
const html = readFileSync(path, 'utf8');
const pdf = await printDocument(() => html, [], { browser: '/usr/bin/chromium', madeMs: 0 });
const heads = (await sheetsOf(pdf)).map(({ lines }) => lines.slice(0, 3).join(' / '));
const fits = heads[1]?.includes('1 Summary') && heads[2]?.includes('2 The farm and its bins');
if (!fits) console.error(`${path}: the summary is not the one sheet after the cover: ${heads.slice(1, 4).join(' | ')}`);
process.exitCode = fits ? 0 : 1;
