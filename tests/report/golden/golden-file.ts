import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, extname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { DOCUMENT_STYLES } from '../../../src/report/html/document-styles.ts';
import { READ_OUT, READ_OUT_HASH } from '../../../src/report/html/read-out.ts';
import { STYLES } from '../../../src/report/html/styles.ts';

/** Where golden files stand. */
export const GOLDEN = fileURLToPath(new URL('../../golden/', import.meta.url));

export interface GoldenWays {
  /** in CI nothing new becomes golden */
  ci: boolean;
  /** take what there is now as golden; for a person who has looked at it */
  retake: boolean;
}

/** As the environment says. */
export const WAYS: GoldenWays = { ci: process.env.CI === 'true', retake: process.env.RETAKE_GOLDEN === 'yes' };

/** `x.svg` → `x-changed.svg`: where what differs is put, beside the golden file and not in git. */
export function changedPath(path: string): string {
  const end = extname(path);
  return `${path.slice(0, -end.length)}-changed${end}`;
}

/**
 * Hold a text against its golden file. One that is not there yet is made, but never in CI.
 *
 * @returns null where they are the same, else what a person should do
 */
export function heldAgainst(path: string, text: string, { ci, retake }: GoldenWays): string | null {
  const changed = changedPath(path);
  const there = existsSync(path);
  if (there && readFileSync(path, 'utf8') === text) {
    rmSync(changed, { force: true });
    return null;
  }
  if (ci && !there)
    return `${path} is not there. Run the test on your own machine, look at what it makes, and commit it.`;
  if (!there || (retake && !ci)) {
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, text);
    rmSync(changed, { force: true });
    return null;
  }
  writeFileSync(changed, text);
  return `${path} differs from ${changed}. Look at both; if the new one is right: RETAKE_GOLDEN=yes npx vitest run tests/report/golden`;
}

/** Attributes that say where and how large a mark is. */
const PLACES = /(?<= (?:d|x|y|[xy][12]|cx|cy|r|width|height|transform|points|viewBox)=")[^"]+(?=")/g;

/**
 * What may differ without anyone seeing it: positions finer than half a pixel, the sheet and the script (they have tests of their
 * own), the kit's version. What is read, aloud and by the pointer too, stays to the last digit.
 */
export function normalised(text: string): string {
  return [STYLES, DOCUMENT_STYLES, READ_OUT.text]
    .reduce((all, part) => all.replaceAll(part, '…'), text)
    .replaceAll(READ_OUT_HASH, '…')
    .replace(/content="fanbook [^"]*"/g, 'content="fanbook …"')
    .replace(PLACES, (places) => places.replace(/-?\d*\.\d+/g, (number) => String(wholePixel(Number(number)))))
    .replace(/></g, '>\n<');
}

/** Positions often lie on a half: the last digit of a machine must not choose the side. */
function wholePixel(position: number): number {
  return Math.floor(position + 0.637);
}
