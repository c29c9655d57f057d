import { existsSync } from 'node:fs';
import path from 'node:path';
import process from 'node:process';
import { runNpm } from './npm.mjs';

/** The oldest Node that runs this project's TypeScript as it stands and opens its store. */
const GOOD_ENOUGH = 24;

/**
 * The Node that everything runs on: the pinned one of node_modules; else this one, if it is new enough. Null,
 * after a sentence, where neither is to be had. An older Node is never used: the store's library would crash it.
 */
export async function pinnedNode(root, say) {
  const pinned = path.join(root, 'node_modules', 'node', 'bin', process.platform === 'win32' ? 'node.exe' : 'node');
  if (existsSync(pinned)) return pinned;
  // Some npm settings skip install scripts, and then the package is there without its program.
  await runNpm(root, ['rebuild', 'node', '--loglevel=error']);
  if (existsSync(pinned)) return pinned;
  if (Number.parseInt(process.versions.node, 10) >= GOOD_ENOUGH) {
    say(`The pinned Node is not installed; using this one, ${process.version}.`);
    return process.execPath;
  }
  say(
    `Trunnion's own Node (24) is not installed, and this one, ${process.version}, is too old to open a household. ` +
      'Run "npm rebuild node --ignore-scripts=false", or install Node 24, then try again. Nothing was opened or changed.',
  );
  return null;
}
