import { dialog, type BrowserWindow } from 'electron';
import { windowWords } from './window-words.ts';

/** Prints the page in the window by the system's own dialog; a person who cancels there is told nothing, a failure is said. */
export function printPage(window: BrowserWindow): void {
  window.webContents.print({ silent: false, printBackground: true }, (printed, why) => {
    if (printed || /cancell?ed/i.test(why) || window.isDestroyed()) return;
    void dialog.showMessageBox(window, { type: 'warning', message: windowWords('print-failed'), detail: windowWords('print-failed-do', { why }), buttons: [windowWords('box-fine')], noLink: true });
  });
}
