import { EventEmitter } from 'node:events';
import { stage } from './stage-line.ts';

/** The system's dialogs: the stage answers as a person would; an error box is noted. */
export const dialog = {
  showErrorBox: (title: string, content: string) => stage.tell('error-box', title, content),
  showMessageBox: (...given: readonly unknown[]) => {
    const { signal, ...options } = given.at(-1) as { readonly signal?: AbortSignal };
    const answer = stage.ask('dialog', 'message', options);
    return signal === undefined ? answer : Promise.race([answer, new Promise((resolve) => signal.addEventListener('abort', () => resolve({ response: 0 })))]);
  },
  showMessageBoxSync: () => 0,
  showOpenDialog: (...given: readonly unknown[]) => stage.ask('dialog', 'open', given.at(-1)),
  showSaveDialog: (...given: readonly unknown[]) => stage.ask('dialog', 'save', given.at(-1)),
};

/** A notification, noted on the stage; a press of it there comes back as a click. */
export class Notification extends EventEmitter {
  static readonly shown: Notification[] = [];
  static readonly isSupported = () => true;
  readonly options: { readonly title?: string; readonly body?: string };
  constructor(options: { readonly title?: string; readonly body?: string } = {}) {
    super();
    this.options = options;
  }
  show(): void {
    stage.tell('notification', Notification.shown.push(this) - 1, this.options);
  }
}

/** One screen of the size of the window that is shown on it. */
const SCREEN = { id: 1, bounds: { x: 0, y: 0, width: 1920, height: 1080 }, workArea: { x: 0, y: 0, width: 1920, height: 1040 }, scaleFactor: 1 };
export const screen = Object.assign(new EventEmitter(), {
  getAllDisplays: () => [SCREEN],
  getPrimaryDisplay: () => SCREEN,
  getDisplayMatching: () => SCREEN,
});

/** What would open outside the program. */
export const shell = {
  openPath: (path: string) => stage.ask('open-path', path).then(() => ''),
  showItemInFolder: (path: string) => stage.tell('show-item', path),
  openExternal: (url: string) => stage.ask('open-external', url),
};

export const nativeTheme = Object.assign(new EventEmitter(), { shouldUseDarkColors: false, themeSource: 'system' });
