import { dialog, shell, type BrowserWindow } from 'electron';
import { windowWords, type WindowWord } from './window-words.ts';

/** Opens a folder or a file of our own by the system's program for it; where that fails, its place is said. Never an address, and never one that a page names. */
export async function openPath(window: BrowserWindow, place: string, failed: WindowWord): Promise<void> {
  const why = await shell.openPath(place);
  if (why === '' || window.isDestroyed()) return;
  await dialog.showMessageBox(window, { type: 'warning', message: windowWords(failed), detail: windowWords('not-shown-why', { path: place }), buttons: [windowWords('box-fine')], noLink: true });
}
