import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';

/** When the child dies: so many milliseconds after it was started, or after so many confirmed steps and then a little. */
export type KillMoment = { readonly after: 'start' | number; readonly milliseconds: number };

/** What came of a child: the numbers of the steps it confirmed, in order, and the signal that ended it. */
export interface Killed {
  readonly confirmed: readonly number[];
  readonly signal: NodeJS.Signals | null;
  readonly said: string;
}

const CHILD = fileURLToPath(new URL('./kill-child.ts', import.meta.url));

/** Starts a child that makes the entries of a seed, kills it at the moment, and gives what it had confirmed by then. */
export function killChild(folder: string, seed: number, moment: KillMoment): Promise<Killed> {
  const child = spawn(process.execPath, [CHILD, folder, String(seed)], { stdio: ['ignore', 'pipe', 'pipe'] });
  let [out, said, timer] = ['', '', moment.after === 'start' ? setTimeout(() => child.kill('SIGKILL'), moment.milliseconds) : null];
  child.stdout.setEncoding('utf8').on('data', (text: string) => {
    out += text;
    if (timer === null && out.split('\n').length > Number(moment.after)) timer = setTimeout(() => child.kill('SIGKILL'), moment.milliseconds);
  });
  child.stderr.setEncoding('utf8').on('data', (text: string) => (said += text));
  return new Promise((resolve) => {
    child.on('close', (_code, signal) => resolve({ confirmed: wholeLines(out).filter((line) => line !== 'all').map(Number), signal, said }));
  });
}

/** A line that was cut off in the middle confirms nothing. */
function wholeLines(text: string): readonly string[] {
  return text.split('\n').slice(0, -1);
}
