import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, extname } from 'node:path';

export interface GoldenWays {
  /** in CI nothing new becomes golden */
  ci: boolean;
  /** take what there is now as golden; for a person who has looked at it */
  retake: boolean;
}

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

/**
 * What may differ without anyone seeing it: ids by their prefix, positions finer than half a pixel, the sheet and the script (they have
 * tests of their own), the kit's version.
 */
export function normalised(text: string): string {
  return text
    .replace(/<style>[\s\S]*?<\/style>/g, '<style>…</style>')
    .replace(/<script>[\s\S]*?<\/script>/g, '<script>…</script>')
    .replace(/sha256-[A-Za-z0-9+/=]+/g, 'sha256-…')
    .replace(/content="fanbook [^"]*"/g, 'content="fanbook …"')
    .replace(/(?<=[ MLHVhv,(="-])-?\d+\.\d+(?=[^<>]*>)/g, (number) => String(Math.round(Number(number))))
    .replace(/></g, '>\n<');
}
