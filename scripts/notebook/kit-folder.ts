import { fileURLToPath } from 'node:url';

/** The kit's own folder, absolute, without a slash at its end. */
export const KIT = fileURLToPath(new URL('../..', import.meta.url)).replace(/\/$/, '');

/** Whether a file is the kit's own code, which notebooks import and share. */
export function isKitSource(path: string): boolean {
  return path.startsWith(`${KIT}/src/`);
}
