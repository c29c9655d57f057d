import { EventEmitter } from 'node:events';

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

/** A page's contents as main.ts sees them: events, what was set and what was sent. */
export class Contents extends EventEmitter {
  readonly setWindowOpenHandler = noting(undefined);
  readonly send = noting(undefined);
}

interface WindowOptions {
  readonly webPreferences: Record<string, unknown>;
}

/** The window that was opened, with its options and the address it loaded. */
export class StandInWindow extends EventEmitter {
  static readonly opened: StandInWindow[] = [];
  readonly webContents = new Contents();
  readonly options: WindowOptions;
  readonly isMinimized = noting(true);
  readonly restore = noting(undefined);
  readonly focus = noting(undefined);
  readonly show = noting(undefined);
  readonly loadURL = noting(Promise.resolve());
  constructor(options: WindowOptions) {
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

/**
 * A stand-in for the parts of the `electron` module that main.ts uses. It shows that our side sets everything it should and how it
 * answers; it is no proof of what the true program does with it.
 */
export const standIn = {
  app: Object.assign(new EventEmitter(), {
    isPackaged: false,
    enableSandbox: noting(undefined, () => order.push('sandbox')),
    requestSingleInstanceLock: noting(true),
    whenReady: noting(Promise.resolve(), () => order.push('ready')),
    quit: noting(undefined),
    exit: noting(undefined),
  }),
  session: {
    defaultSession: {
      setPermissionRequestHandler: noting(undefined),
      setPermissionCheckHandler: noting(undefined),
      setDevicePermissionHandler: noting(undefined),
      webRequest: { onBeforeRequest: noting(undefined) },
    },
  },
  protocol: { registerSchemesAsPrivileged: noting(undefined, () => order.push('scheme')), handle: noting(undefined) },
  ipcMain: { handle: (channel: string, handler: Handler) => handlers.set(channel, handler), removeHandler: (channel: string) => handlers.delete(channel) },
  dialog: { showErrorBox: noting(undefined) },
  BrowserWindow: StandInWindow,
  Notification: StandInNotification,
};
