import { fileURLToPath } from 'node:url';
import { app, dialog, protocol, session } from 'electron';
import { operationNames } from '../shared-core/contract/contract.ts';
import { sayRefusal } from '../shared-core/result/words/say.ts';
import { ownFolder } from './cli/command-host.ts';
import { composeHost, type ComposedHost } from './host/compose-host.ts';
import { sweepHandedFolders } from './host/handed-folders.ts';
import { paperFinder } from './host/find-paper.ts';
import { realWorld } from './host/real-world.ts';
import { serveContract } from './host/serve-contract.ts';
import { tellReminders } from './host/tell-reminders.ts';
import { pageFiles } from './loopback/page-files.ts';
import { denyAll, guardContents } from './shell/guard-contents.ts';
import { openWindow } from './shell/open-window.ts';
import { remindDaily } from './shell/remind-daily.ts';
import { PRIVILEGED_SCHEME, servePage } from './shell/serve-page.ts';
import { REFUSED_STATUS } from './start/window-status.ts';
import { readWindowOptions } from './start/start-options.ts';

// Both files lie beside this one's own folder once they are bundled.
const PRELOAD = fileURLToPath(new URL('../preload/preload.cjs', import.meta.url));
const PAGE = fileURLToPath(new URL('../renderer/', import.meta.url));

async function start(): Promise<void> {
  await app.whenReady();
  const host = openHost();
  if (host === null) return;
  denyAll(session.defaultSession);
  servePage(protocol, pageFiles(PAGE), paperFinder(host));
  const windows = serveContract(host, operationNames);
  app.on('will-quit', () => {
    windows.close();
    void host.close();
  });
  const window = await openWindow(PRELOAD, ({ webContents }) => windows.add(webContents));
  const toFront = () => {
    if (window.isMinimized()) window.restore();
    window.focus();
  };
  app.on('second-instance', toFront);
  const stopReminding = remindDaily({ next: () => tellReminders(host.context), onClick: toFront, onFault: report });
  app.on('will-quit', stopReminding);
}

/** The household's host; where it cannot be opened, the reason is shown and the program ends. */
function openHost(): ComposedHost | null {
  sweepHandedFolders();
  const options = readWindowOptions(process.argv.slice(app.isPackaged ? 1 : 2));
  if (!options.ok) return refuseToOpen(options.why);
  const opened = composeHost(options.value.household ?? ownFolder(), realWorld(options.value.on));
  return opened.ok ? opened.value : refuseToOpen(sayRefusal(opened.refusal));
}

function refuseToOpen(why: string): null {
  dialog.showErrorBox('Trunnion', why);
  app.exit(REFUSED_STATUS);
  return null;
}

/** What went wrong beside the work in hand. */
function report(error: unknown): void {
  process.stderr.write(`${error instanceof Error ? (error.stack ?? error.message) : String(error)}\n`);
}

/** What went wrong before there was a window to show it in. */
function fail(error: unknown): void {
  report(error);
  app.exit(1);
}

app.enableSandbox();
protocol.registerSchemesAsPrivileged([PRIVILEGED_SCHEME]);
guardContents(app);
app.on('window-all-closed', () => app.quit());
// Not awaited: the program counts as ready only once this file has run to its end.
if (app.requestSingleInstanceLock()) void start().catch(fail);
else app.quit();
