import { execFileSync } from 'node:child_process';

/**
 * Bytes by name, as a script of measures prints them. In a process of its own, whose compiler works in the foreground: on a
 * busy machine compiled code would otherwise come after the last round.
 */
export function bytesOf(script: string): Record<string, number> {
  const flags = ['--no-concurrent-recompilation', '--no-concurrent-osr'];
  return JSON.parse(execFileSync(process.execPath, [...flags, '--import', 'tsx', script], { encoding: 'utf8' }));
}
