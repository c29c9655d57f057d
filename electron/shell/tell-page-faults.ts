import { dialog, type App, type BrowserWindow } from 'electron';
import { windowWords, type WindowWord } from './window-words.ts';

/** What is done where the page fails. */
export interface PageFaults {
  readonly quit: () => void;
  /** The person stays, rather than lose what was typed. */
  readonly stay: () => void;
  readonly note: (line: string) => void;
}

/** Tells the person when the page has ended or does not answer, and shows it anew or quits as they choose; the host goes on meanwhile. */
export function tellPageFaults(window: BrowserWindow, { quit, stay, note }: PageFaults): void {
  const { webContents } = window;
  let endedByUs = false;
  let silence: AbortController | null = null;
  webContents.on('render-process-gone', (_event, { reason, exitCode }) => {
    note(`the page ended: ${reason} (${exitCode})`);
    const asked = endedByUs;
    endedByUs = false;
    if (reason !== 'clean-exit' && !asked) void askOnce('page-ended', ['box-show-anew', 'box-quit']);
  });
  window.on('unresponsive', () => {
    if (silence === null) void askOnce('page-silent', ['box-wait', 'box-show-anew', 'box-quit']);
  });
  window.on('responsive', () => silence?.abort());
  webContents.on('will-prevent-unload', (event) => {
    if (maySay('typed-not-kept')) return event.preventDefault();
    stay();
  });
  const maySay = (key: WindowWord): boolean =>
    dialog.showMessageBoxSync(window, { type: 'question', message: windowWords(key), detail: windowWords('typed-not-kept-do'), buttons: [windowWords('box-stay'), windowWords('box-leave')], defaultId: 0, cancelId: 0, noLink: true }) === 1;
  const askOnce = async (key: WindowWord, choices: readonly WindowWord[]): Promise<void> => {
    silence?.abort();
    const asked = (silence = new AbortController());
    const { response } = await dialog.showMessageBox(window, { type: 'error', message: windowWords(key), detail: windowWords('page-fault-do'), buttons: choices.map((choice) => windowWords(choice)), defaultId: 0, cancelId: 0, noLink: true, signal: asked.signal });
    if (silence === asked) silence = null;
    const chosen = asked.signal.aborted ? undefined : choices[response];
    if (chosen === 'box-quit') return quit();
    if (chosen === 'box-show-anew' && !window.isDestroyed()) renew(key === 'page-silent');
  };
  /** A page that does not answer cannot load itself anew: its process is ended first. */
  const renew = (stillRuns: boolean): void => {
    endedByUs = stillRuns;
    if (stillRuns) webContents.forcefullyCrashRenderer();
    webContents.reload();
  };
}

/** Notes that a process beside the page ended; Chromium starts it again by itself. */
export function noteChildren(app: App, note: (line: string) => void): void {
  app.on('child-process-gone', (_event, { type, reason, exitCode }) => note(`${type} ended: ${reason} (${exitCode})`));
}
