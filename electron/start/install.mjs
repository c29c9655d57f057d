import { runNpm } from './npm.mjs';
import { isInstalled, stampInstalled } from './installed-state.mjs';

/** Installs from the lock file where node_modules is missing or older than it; false, after a sentence, where that failed. */
export async function installIfNeeded(root, say) {
  if (isInstalled(root)) return true;
  say('Installing what Trunnion needs from its lock file. This is done once and takes about a minute.');
  const status = await runNpm(root, ['ci', '--include=dev', '--no-audit', '--no-fund', '--loglevel=error']);
  if (status !== 0) {
    say(`The installation did not finish (npm ended with ${status}). Its own message stands above; nothing else was changed. Try again, or run "npm ci".`);
    return false;
  }
  stampInstalled(root);
  return true;
}
