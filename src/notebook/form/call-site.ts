import { dirname } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

/** A place in a notebook, counted from 1. */
export interface CallSite {
  /** path on disk */
  file: string;
  line: number;
  column: number;
}

const KIT = `${pathToFileURL(dirname(dirname(dirname(fileURLToPath(import.meta.url))))).href}/`;

/**
 * The first place of a stack that lies in somebody's notebook and not in the kit, a package or the runtime.
 *
 * @returns null where there is none
 */
export function callSite(stack: string | undefined): CallSite | null {
  for (const line of (stack ?? '').split('\n')) {
    const found = /(?:\(|at (?:async )?)((?:file:\/\/|\/)[^()\s]+?):(\d+):(\d+)\)?$/.exec(line.trim());
    if (found === null) continue;
    const url = found[1].startsWith('file:') ? found[1].split('?')[0] : pathToFileURL(found[1]).href;
    if (url.startsWith(KIT) || url.includes('/node_modules/')) continue;
    return { file: fileURLToPath(url), line: Number(found[2]), column: Number(found[3]) };
  }
  return null;
}

/** `my-page.ts:12`, for a message. */
export function siteSaid({ file, line }: CallSite): string {
  return `${file.split('/').at(-1)}:${line}`;
}
