import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { expect, test } from 'vitest';

const FILE = new URL('../../electron/loopback/until-stopped.ts', import.meta.url).href;

/** A program that takes a while to end in order: what it said last, once it was sent signals, each after a wait. */
async function stopped(takesMs: number, signals: readonly (readonly [number, NodeJS.Signals])[]): Promise<readonly unknown[]> {
  const program = spawn(process.execPath, ['-e', `import('${FILE}').then(async ({ untilStopped }) => { const stop = untilStopped(); const work = setInterval(() => 0, 1000); process.send('up'); await stop; setTimeout(() => process.exit(7), ${takesMs}, work); })`], { stdio: ['ignore', 'ignore', 'inherit', 'ipc'] });
  await once(program, 'message');
  const exit = once(program, 'exit');
  for (const [waitMs, signal] of signals) {
    await new Promise((resolve) => setTimeout(resolve, waitMs));
    program.kill(signal);
  }
  return exit;
}

test.each([
  { case: 'once', signals: [[0, 'SIGINT']] },
  { case: 'twice at once, as a terminal that closes and what passes it on do', signals: [[0, 'SIGHUP'], [30, 'SIGHUP']] },
  { case: 'in two ways at once, as at the end of a session', signals: [[0, 'SIGHUP'], [30, 'SIGTERM'], [30, 'SIGHUP']] },
] as const)('asked $case, a program ends in order', async ({ signals }) => {
  expect(await stopped(300, signals)).toEqual([7, null]);
});

test('asked again later, in whatever way, it ends without waiting', async () => {
  expect(await stopped(20_000, [[0, 'SIGINT'], [900, 'SIGTERM']])).toEqual([null, 'SIGTERM']);
});
