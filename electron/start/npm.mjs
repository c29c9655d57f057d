import process from 'node:process';
import { runToEnd } from './run-to-end.mjs';

/**
 * Runs npm in the project: the npm that started us where there is one, on the Node that npm itself runs on (not
 * the pinned one, which an installation replaces). What npm prints goes to standard error.
 */
export function runNpm(root, args) {
  const options = { cwd: root, stdio: ['ignore', 2, 2] };
  const cli = process.env.npm_execpath;
  if (cli !== undefined && /npm-cli\.[cm]?js$/.test(cli)) {
    return runToEnd(process.env.npm_node_execpath ?? process.execPath, [cli, ...args], options);
  }
  const onWindows = process.platform === 'win32';
  return runToEnd(onWindows ? 'npm.cmd' : 'npm', args, { ...options, shell: onWindows });
}
