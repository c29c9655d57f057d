import { spawnSync } from 'node:child_process';

/** Whether an outside tool can be run here; tests that need it say which one is absent and are skipped. */
export function isPresent(tool: string, ...args: readonly string[]): boolean {
  const run = spawnSync(tool, [...args], { encoding: 'utf8' });
  if (run.error === undefined && run.status === 0) return true;
  console.warn(`Skipped: ${tool} is not to be had here.`);
  return false;
}
