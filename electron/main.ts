import { fileURLToPath } from 'node:url';
import { app, dialog, protocol, screen, session, type BrowserWindow } from 'electron';
import { operationNames } from '../shared-core/contract/contract.ts';
import { sayRefusal } from '../shared-core/result/words/say.ts';
import { spokenLocale } from '../shared-core/result/words/speaking.ts';
import { ownFolder } from './cli/command-host.ts';
import { composeHost, type ComposedHost } from './host/compose-host.ts';
import { sweepHandedFolders } from './host/handed-folders.ts';
import { paperFinder } from './host/find-paper.ts';
import { realWorld } from './host/real-world.ts';
import { serveContract } from './host/serve-contract.ts';
import { speakAsHousehold } from './host/speak-as-household.ts';
import { tellReminders } from './host/tell-reminders.ts';
import { pageFiles } from './loopback/page-files.ts';
import { faultEnds, hearFaults } from './shell/end-on-fault.ts';
import { denyAll, guardContents } from './shell/guard-contents.ts';
import { guardDownloads } from './shell/guard-downloads.ts';
import { keepPlace, placeFile, readPlace } from './shell/kept-place.ts';
import { noteFault, noteLine } from './shell/note-fault.ts';
import { openOtherHousehold } from './shell/open-other-household.ts';
import { bringToFront, openWindow } from './shell/open-window.ts';
import { emptyProgram, letGo, type Program } from './shell/program.ts';
import { quitInOrder, type Quitting } from './shell/quit-in-order.ts';
import { relaunchFor } from './shell/relaunch.ts';
import { remindDaily } from './shell/remind-daily.ts';
import { askedAtStart, hearSecondStart } from './shell/second-start.ts';
import { PRIVILEGED_SCHEME, servePage } from './shell/serve-page.ts';
import { licencesPlace, setMenu, type ProgramMenu } from './shell/set-menu.ts';
import { noteChildren, tellPageFaults } from './shell/tell-page-faults.ts';
import { placeInView } from './shell/window-place.ts';
import { windowWords } from './shell/window-words.ts';
import { startedWithoutSandbox } from './shell/without-sandbox.ts';
import { readWindowOptions } from './start/start-options.ts';
import { REFUSED_STATUS } from './start/window-status.ts';

// Both files lie beside this one's own folder once they are bundled.
const PRELOAD = fileURLToPath(new URL('../preload/preload.cjs', import.meta.url));
const PAGE = fileURLToPath(new URL('../renderer/', import.meta.url));

const options = readWindowOptions(process.argv.slice(app.isPackaged ? 1 : 2));
const world = realWorld(options.ok ? options.value.on : null);

function run(): void {
  const program = emptyProgram();
  const quitting = quitInOrder(app, () => letGo(program), noteFault);
  const onFault = faultEnds(quitting.endWith);
  hearFaults(onFault);
  noteChildren(app, noteLine);
  const startAgain = (folder: string) => quitting.atLast(() => relaunchFor(app, folder));
  hearSecondStart(app, { window: () => program.window, home: () => program.host?.context.home ?? null, startAgain });
  // Not awaited: the program counts as ready only once this file has run to its end.
  void start(program, quitting).catch(onFault);
}

async function start(program: Program, quitting: Quitting): Promise<void> {
  await app.whenReady();
  const host = (program.host = openHost());
  if (host === null) return;
  denyAll(session.defaultSession);
  guardDownloads(session.defaultSession, () => app.getPath('downloads'));
  servePage(protocol, pageFiles(PAGE), paperFinder(host));
  const served = (program.served = serveContract(host, operationNames));
  const kept = readPlace(placeFile(app.getPath('userData')));
  const opened = await openWindow({
    preload: PRELOAD,
    place: kept === null ? null : placeInView(kept, screen.getAllDisplays().map(({ workArea }) => workArea)),
    beforeLoading: (window) => {
      program.window = window;
      served.add(window.webContents);
      furnish(window, host, quitting);
    },
  });
  if (!opened.isDestroyed()) program.stopReminding = remindDaily({ next: () => tellReminders(host.context), onClick: () => bringToFront(program.window), onFault: noteFault });
}

/** What the window has around its page: its place, its menu, and words for a page that fails. */
function furnish(window: BrowserWindow, host: ComposedHost, { quit, stay }: Quitting): void {
  keepPlace(window, placeFile(app.getPath('userData')), noteFault);
  tellPageFaults(window, { quit: () => quit(), stay, note: noteLine });
  const goTo = (folder: string) => quit(() => relaunchFor(app, folder));
  const menu: ProgramMenu = {
    app,
    window,
    folder: () => host.context.household().folder,
    openOther: () => void openOtherHousehold({ window, home: host.context.home, world, goTo }).catch(noteFault),
    quit: () => quit(),
    licencesFile: licencesPlace(app),
  };
  keepMenuSpoken(menu, host);
}

/** The menu in the household's words, and anew when those change. */
function keepMenuSpoken(menu: ProgramMenu, host: ComposedHost): void {
  speakAsHousehold(host.context.household().facts);
  let spoken = spokenLocale();
  setMenu(menu);
  host.onPush(() => {
    speakAsHousehold(host.context.household().facts);
    if (spoken === spokenLocale()) return;
    spoken = spokenLocale();
    setMenu(menu);
  });
}

/** The household's host; where it cannot be opened, the reason is shown and the program ends. */
function openHost(): ComposedHost | null {
  if (startedWithoutSandbox(app)) return refuseToOpen(windowWords('without-sandbox'));
  if (!options.ok) return refuseToOpen(options.why);
  sweepHandedFolders();
  const opened = composeHost(options.value.household ?? ownFolder(), world);
  return opened.ok ? opened.value : refuseToOpen(sayRefusal(opened.refusal));
}

function refuseToOpen(why: string): null {
  dialog.showErrorBox('Trunnion', why);
  app.exit(REFUSED_STATUS);
  return null;
}

app.enableSandbox();
protocol.registerSchemesAsPrivileged([PRIVILEGED_SCHEME]);
guardContents(app);
app.on('window-all-closed', () => app.quit());
if (app.requestSingleInstanceLock(askedAtStart(options))) run();
else app.quit();
