import { createInterface } from 'node:readline';
import { operationNames } from '../../shared-core/contract/contract.ts';
import type { ComposedHost } from '../host/compose-host.ts';
import { paperFinder } from '../host/find-paper.ts';
import { stopJobs } from '../host/running-jobs.ts';
import { serveLoopback } from '../loopback/serve-loopback.ts';
import { untilStopped } from '../loopback/until-stopped.ts';
import { openBrowser } from './open-browser.ts';

/**
 * Serves the dashboard to a browser until the person or the system stops the program; nothing entered is lost. The address is printed on
 * standard output, and in a terminal Enter prints a fresh one, as each lets one browser in, once.
 */
export async function serveBrowser(host: ComposedHost, page: string): Promise<void> {
  const loopback = await serveLoopback({ host, operations: operationNames, paper: paperFinder(host), page });
  const link = loopback.freshLink();
  process.stdout.write(`Trunnion is at ${link}\n`);
  openBrowser(link, process.env, process.platform);
  const keys = process.stdin.isTTY ? createInterface({ input: process.stdin }) : null;
  process.stderr.write(`The link lets one browser in, once. ${keys === null ? '' : 'Enter prints another. '}Ctrl-C stops the program; everything entered is kept.\n`);
  keys?.on('line', () => process.stdout.write(`${loopback.freshLink()}\n`));
  await untilStopped();
  keys?.close();
  stopJobs(host.context);
  await loopback.close();
  await host.close();
}
