import { createHash } from 'node:crypto';
import { hostname } from 'node:os';

/** A folder may be shared by machines, and each counts its processes by itself. */
const HOST = createHash('sha256').update(hostname()).digest('hex').slice(0, 8);

/** Ends the names of what this process is still writing. */
export const PROCESS_MARK = `${process.pid}-${HOST}`;

/** Such a mark, of any process. */
export const ANY_MARK = String.raw`\d{1,10}-[0-9a-f]{8}`;

/** Whether the process that a mark names has ended; of another machine's nothing is known, so it has not. */
export function hasEnded(mark: string): boolean {
  const [pid, host] = mark.split('-');
  if (host !== HOST) return false;
  // An earlier process had this one's number.
  if (mark === PROCESS_MARK) return true;
  try {
    process.kill(Number(pid), 0);
    return false;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'ESRCH';
  }
}
