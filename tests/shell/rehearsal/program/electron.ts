import { app, preventable } from './app.ts';
import { Notification } from './around-the-page.ts';
import { BrowserWindow, type Bounds } from './browser-window.ts';
import { DownloadItem } from './download-item.ts';
import { invoked, type AskingFrame } from './ipc-main.ts';
import { pressMenu, seenMenu } from './menu.ts';
import { answerScheme } from './protocol.ts';
import { session } from './session.ts';
import { stage } from './stage-line.ts';
import type { RehearsedContents, WindowAsked } from './web-contents.ts';

/**
 * Stands in for the module `electron` in the program's own process: the real main.ts runs under Node, and its windows are real pages of
 * Chromium on the stage (../rehearse.ts). It follows the module's documentation as far as the program uses it; what the true program
 * does beneath (its sandbox, its own browser process, the system's dialogs) it cannot show.
 */
export { app } from './app.ts';
export { dialog, nativeTheme, Notification, screen, shell } from './around-the-page.ts';
export { BrowserWindow } from './browser-window.ts';
export { ipcMain } from './ipc-main.ts';
export { Menu, MenuItem } from './menu.ts';
export { protocol } from './protocol.ts';
export { session } from './session.ts';

function contentsOf(window: number): RehearsedContents {
  const found = BrowserWindow.open.get(window)?.webContents;
  if (found === undefined) throw new Error(`no window ${window}`);
  return found;
}

// What the stage tells of its pages, and what a test does in a person's place.
stage.answer({
  invoke: (window: number, frame: AskingFrame | null, channel: string, given: readonly unknown[]) => invoked(contentsOf(window), frame, channel, given),
  answer: answerScheme,
  lets: (url: string, method: string, resourceType: string) => session.defaultSession.lets(url, method, resourceType),
  grants: (window: number, permission: string, origin: string) => session.defaultSession.grants(contentsOf(window), permission, origin),
  'may-navigate': (window: number, names: readonly string[], details: { url: string; isMainFrame: boolean }) => contentsOf(window).mayNavigate(names, details),
  'may-open': (window: number, details: WindowAsked) => contentsOf(window).mayOpen(details),
  download: (window: number, url: string, name: string) => {
    const item = new DownloadItem(url, name);
    const event = preventable();
    session.defaultSession.emit('will-download', event, item, contentsOf(window));
    return { goesOn: !event.defaultPrevented && !item.cancelled, dialog: item.saveDialog };
  },
  'page-gone': (window: number, reason: string) => void contentsOf(window).emit('render-process-gone', preventable(), { reason, exitCode: 1 }),
  'moved-to': (window: number, bounds: Partial<Bounds>) => BrowserWindow.open.get(window)?.setBounds(bounds),
  'close-window': (window: number) => BrowserWindow.open.get(window)?.close(),
  minimise: (window: number) => BrowserWindow.open.get(window)?.minimize(),
  state: (window: number) => {
    const found = BrowserWindow.open.get(window);
    return found === undefined ? null : { bounds: found.getBounds(), minimised: found.isMinimized(), visible: found.isVisible() };
  },
  'press-menu': pressMenu,
  menu: () => seenMenu(),
  'press-notification': (at: number) => void Notification.shown[at]?.emit('click'),
  quit: () => app.quit(),
});
