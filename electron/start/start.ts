import path from 'node:path';
import { sayRefusal } from '../../shared-core/result/words/say.ts';
import { ownFolder } from '../cli/command-host.ts';
import { composeHost } from '../host/compose-host.ts';
import { sweepHandedFolders } from '../host/handed-folders.ts';
import { realWorld } from '../host/real-world.ts';
import { buildWhenStale } from './build-when-stale.ts';
import { PROJECT } from './bundle.ts';
import { hasDisplay, openElectron, type WindowOutcome } from './open-electron.ts';
import { serveBrowser } from './serve-browser.ts';
import { readStartOptions, START_HELP, type StartOptions } from './start-options.ts';
import { PAGE_BUILD, WINDOW_BUILD } from './what-is-built.ts';

const say = (line: string): void => void process.stderr.write(`${line}\n`);

/** `npm start`: a window where one can be had, else the same dashboard for a browser. Answers the exit status. */
async function start(words: readonly string[]): Promise<number> {
  const options = readStartOptions(words);
  if (!options.ok) {
    say(`${options.why}\n\n${START_HELP}`);
    return 2;
  }
  if (options.value.help) {
    process.stdout.write(START_HELP);
    return 0;
  }
  await buildWhenStale(PROJECT, PAGE_BUILD, say);
  const window = options.value.browser ? null : await tryWindow(words, options.value);
  if (window?.opened === true) return window.status;
  if (window !== null) say(`${window.why} Serving the dashboard for a browser instead.`);
  return serve(options.value);
}

async function tryWindow(words: readonly string[], { window: insist }: StartOptions): Promise<WindowOutcome> {
  const { env, platform } = process;
  if (!hasDisplay(env, platform)) return { opened: false, why: 'No window: there is no display here.' };
  await buildWhenStale(PROJECT, WINDOW_BUILD, say);
  return openElectron({ project: PROJECT, package: path.join(PROJECT, 'node_modules', 'electron'), env, platform, args: words, insist }, say);
}

async function serve({ household, on }: StartOptions): Promise<number> {
  const host = composeHost(household ?? ownFolder(), realWorld(on));
  if (!host.ok) {
    say(sayRefusal(host.refusal));
    return 1;
  }
  sweepHandedFolders();
  await serveBrowser(host.value, path.join(PROJECT, 'dist', 'renderer'));
  say('Stopped.');
  return 0;
}

try {
  process.exitCode = await start(process.argv.slice(2));
} catch (error) {
  say(`Trunnion could not start: ${error instanceof Error ? error.message : String(error)}`);
  process.exitCode = 1;
}
