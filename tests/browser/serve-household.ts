import { spawn } from 'node:child_process';
import { once } from 'node:events';

const ROOT = new URL('../../', import.meta.url).pathname;

/** The dashboard of a household, served by the real command. */
export interface ServedHousehold {
  readonly link: string;
  stop(): Promise<void>;
  /** Ends it at once, as when the power fails: nothing of it can tidy up. */
  kill(): Promise<void>;
}

/** Serves, with the page that was built before the tests (tests/build-page.ts), a household's folder on a fixed day. */
export async function serveHousehold(folder: string, on: string): Promise<ServedHousehold> {
  const program = spawn(process.execPath, ['electron/cli/trunnion.ts', 'serve', '--json', '--household', folder, '--on', on], { cwd: ROOT, stdio: ['ignore', 'pipe', 'pipe'] });
  let said = '';
  program.stderr.on('data', (piece: Buffer) => (said += piece.toString('utf8')));
  const ended = once(program, 'exit').then(() => Promise.reject(new Error(`serve ended: ${said}`)));
  ended.catch(() => undefined);
  const [first] = (await Promise.race([once(program.stdout, 'data'), ended])) as [Buffer];
  return {
    link: (JSON.parse(first.toString('utf8')) as { url: string }).url,
    stop: async () => {
      const exit = once(program, 'exit');
      program.kill('SIGINT');
      await exit;
    },
    kill: async () => {
      const exit = once(program, 'exit');
      program.kill('SIGKILL');
      await exit;
    },
  };
}
