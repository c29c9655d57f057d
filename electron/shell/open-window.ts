import { BrowserWindow, type BrowserWindowConstructorOptions } from 'electron';
import { PAGE_ADDRESS } from './page-address.ts';
import { LEAST_SIZE, type WindowPlace } from './window-place.ts';

/**
 * How the window is made: a page in a sandbox, in a world of its own, without Node; where it was left, or in the middle.
 *
 * Source: Electron's security checklist, items 2 to 4, 6, 8 to 11 (seen); defaults are written out so that no later default can change them.
 */
export function windowOptions(preload: string, place: WindowPlace | null): BrowserWindowConstructorOptions {
  return {
    ...(place === null ? { width: 1280, height: 800 } : { x: place.x, y: place.y, width: place.width, height: place.height }),
    minWidth: LEAST_SIZE.width,
    minHeight: LEAST_SIZE.height,
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

export interface Opening {
  readonly preload: string;
  /** Where it was left; null where nobody knows. */
  readonly place: WindowPlace | null;
  /** What must stand before the page is loaded. */
  readonly beforeLoading: (window: BrowserWindow) => void;
}

/** Opens the one window; it is shown when its page can be drawn. One that is closed before that breaks its loading off, which is no fault. */
export async function openWindow({ preload, place, beforeLoading }: Opening): Promise<BrowserWindow> {
  const window = new BrowserWindow(windowOptions(preload, place));
  window.once('ready-to-show', () => show(window, place));
  beforeLoading(window);
  await window.loadURL(PAGE_ADDRESS).catch((error: unknown) => {
    if (!window.isDestroyed()) throw error;
  });
  return window;
}

function show(window: BrowserWindow, place: WindowPlace | null): void {
  if (place?.maximised === true) window.maximize();
  window.show();
  if (place?.fullScreen === true) window.setFullScreen(true);
}

/** Brings the window before the person, if it is still there. */
export function bringToFront(window: BrowserWindow | null): void {
  if (window === null || window.isDestroyed()) return;
  if (window.isMinimized()) window.restore();
  window.show();
  window.focus();
}
