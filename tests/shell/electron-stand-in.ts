import { EventEmitter } from 'node:events';
import os from 'node:os';
import path from 'node:path';

/** A function that notes what it is called with and answers a fixed value. */
function noting<Answer>(answer: Answer, alsoDo: () => void = () => undefined): ((...given: unknown[]) => Answer) & { readonly calls: unknown[][] } {
  const calls: unknown[][] = [];
  const note = (...given: unknown[]): Answer => {
    calls.push(given);
    alsoDo();
    return answer;
  };
  return Object.assign(note, { calls });
}

/** A function that notes what it is called with and answers as the test last said. */
function asked<Answer>(answer: Answer): ((...given: unknown[]) => Answer) & { readonly calls: unknown[][]; readonly willAnswer: (next: Answer) => void } {
  const calls: unknown[][] = [];
  let next = answer;
  const ask = (...given: unknown[]): Answer => {
    calls.push(given);
    return next;
  };
  return Object.assign(ask, { calls, willAnswer: (said: Answer) => void (next = said) });
}

/** A page's contents as main.ts sees them: events, what was set and what was sent. */
export class Contents extends EventEmitter {
  readonly setWindowOpenHandler = noting(undefined);
  readonly send = noting(undefined);
  readonly downloadURL = noting(undefined);
  readonly print = noting(undefined);
  readonly reload = noting(undefined);
  readonly forcefullyCrashRenderer = noting(undefined);
}

interface WindowOptions {
  readonly webPreferences: Record<string, unknown>;
  readonly [name: string]: unknown;
}

/** The window that was opened, with its options and the address it loaded. */
export class StandInWindow extends EventEmitter {
  static readonly opened: StandInWindow[] = [];
  readonly webContents = new Contents();
  readonly options: WindowOptions;
  bounds = { x: 10, y: 20, width: 1000, height: 700 };
  state = { maximised: false, fullScreen: false, destroyed: false };
  readonly isMinimized = noting(true);
  readonly isMaximized = () => this.state.maximised;
  readonly isFullScreen = () => this.state.fullScreen;
  readonly isDestroyed = () => this.state.destroyed;
  readonly getNormalBounds = () => this.bounds;
  readonly maximize = noting(undefined);
  readonly setFullScreen = noting(undefined);
  readonly restore = noting(undefined);
  readonly focus = noting(undefined);
  readonly show = noting(undefined);
  readonly loadURL = noting(Promise.resolve());
  constructor(options: WindowOptions = { webPreferences: {} }) {
    super();
    this.options = options;
    StandInWindow.opened.push(this);
    standIn.app.emit('web-contents-created', {}, this.webContents);
  }
}

/** The notifications that were made, with how often each was shown. */
export class StandInNotification extends EventEmitter {
  static readonly made: StandInNotification[] = [];
  static readonly isSupported = () => true;
  readonly options: { readonly title: string; readonly body: string };
  readonly show = noting(undefined);
  constructor(options: { readonly title: string; readonly body: string }) {
    super();
    this.options = options;
    StandInNotification.made.push(this);
  }
}

/** In what order the program was set up. */
export const order: string[] = [];

type Handler = (event: unknown, request: unknown) => Promise<unknown>;
/** What listens on each channel. */
export const handlers = new Map<string, Handler>();

/** The program's own folder here, one for each run. */
const userData = path.join(os.tmpdir(), `trunnion-stand-in-${process.pid}-${performance.now()}`);

/**
 * A stand-in for the parts of the `electron` module that main.ts uses. It shows that our side sets everything it should and how it
 * answers; it is no proof of what the true program does with it.
 */
export const standIn = {
  app: Object.assign(new EventEmitter(), {
    isPackaged: false,
    commandLine: { hasSwitch: () => false },
    enableSandbox: noting(undefined, () => order.push('sandbox')),
    requestSingleInstanceLock: noting(true),
    whenReady: noting(Promise.resolve(), () => order.push('ready')),
    quit: noting(undefined),
    exit: noting(undefined),
    relaunch: noting(undefined),
    getVersion: noting('0.1.0'),
    getPath: (name: string) => path.join(userData, name),
  }),
  session: {
    defaultSession: Object.assign(new EventEmitter(), {
      setPermissionRequestHandler: noting(undefined),
      setPermissionCheckHandler: noting(undefined),
      setDevicePermissionHandler: noting(undefined),
      webRequest: { onBeforeRequest: noting(undefined) },
    }),
  },
  protocol: { registerSchemesAsPrivileged: noting(undefined, () => order.push('scheme')), handle: noting(undefined) },
  ipcMain: { handle: (channel: string, handler: Handler) => handlers.set(channel, handler), removeHandler: (channel: string) => handlers.delete(channel) },
  dialog: {
    showErrorBox: noting(undefined),
    showMessageBox: asked(Promise.resolve({ response: 0 })),
    showMessageBoxSync: asked(0),
    showOpenDialog: asked<Promise<{ canceled: boolean; filePaths: string[] }>>(Promise.resolve({ canceled: true, filePaths: [] })),
  },
  screen: { getAllDisplays: noting([{ workArea: { x: 0, y: 0, width: 1920, height: 1040 } }]) },
  shell: { openPath: asked(Promise.resolve('')) },
  Menu: { buildFromTemplate: (template: unknown) => template, setApplicationMenu: noting(undefined) },
  BrowserWindow: StandInWindow,
  Notification: StandInNotification,
};
