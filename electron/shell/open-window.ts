import { BrowserWindow, type BrowserWindowConstructorOptions } from 'electron';
import { PAGE_ADDRESS } from './page-address.ts';

/**
 * How the window is made: a page in a sandbox, in a world of its own, without Node.
 *
 * Source: Electron's security checklist, items 2 to 4, 6, 8 to 11 (seen); defaults are written out so that no later default can change them.
 */
export function windowOptions(preload: string): BrowserWindowConstructorOptions {
  return {
    width: 1280,
    height: 800,
    minWidth: 640,
    minHeight: 480,
    show: false,
    title: 'Trunnion',
    webPreferences: {
      preload,
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      allowRunningInsecureContent: false,
      experimentalFeatures: false,
      webviewTag: false,
      navigateOnDragDrop: false,
      spellcheck: false,
    },
  };
}

/** Opens the one window; it is shown when its page can be drawn. */
export async function openWindow(preload: string, beforeLoading: (window: BrowserWindow) => void): Promise<BrowserWindow> {
  const window = new BrowserWindow(windowOptions(preload));
  window.once('ready-to-show', () => window.show());
  beforeLoading(window);
  await window.loadURL(PAGE_ADDRESS);
  return window;
}
