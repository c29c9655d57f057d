import { EventEmitter } from 'node:events';
import path from 'node:path';
import { takeLock } from './single-instance.ts';
import { stage } from './stage-line.ts';

/** A folder of the person's, as the stage lays it out. */
function folderOf(name: string): string {
  return path.join(process.env['REHEARSAL_HOME'] ?? '', name);
}

/** An event whose ordinary course can be prevented. */
export function preventable(): { preventDefault(): void; readonly defaultPrevented: boolean } {
  let defaultPrevented = false;
  return {
    preventDefault: () => void (defaultPrevented = true),
    get defaultPrevented() {
      return defaultPrevented;
    },
  };
}

let quitting = false;

/** The program's life: ready once its first file has run, ended by quitting in order or at once. */
class RehearsedApp extends EventEmitter {
  readonly isPackaged = false;
  readonly commandLine = { hasSwitch: (name: string) => process.argv.includes(`--${name}`) };
  name = 'Trunnion';
  sandboxed = false;
  #isReady = false;
  readonly #ready = new Promise<void>((resolve) => setImmediate(() => resolve(void (this.#isReady = true))));

  enableSandbox(): void {
    if (this.#isReady) throw new Error('app.enableSandbox() can only be called before app is ready');
    this.sandboxed = true;
  }
  whenReady(): Promise<void> {
    return this.#ready;
  }
  isReady(): boolean {
    return this.#isReady;
  }
  requestSingleInstanceLock(data: unknown = {}): boolean {
    return takeLock(folderOf('user-data'), data, (first) => this.emit('second-instance', preventable(), first.argv, first.cwd, first.data));
  }
  getPath(name: string): string {
    return folderOf(name === 'userData' ? 'user-data' : name);
  }
  getVersion(): string {
    return '0.1.0';
  }
  getName(): string {
    return this.name;
  }
  getAppPath(): string {
    return path.resolve(import.meta.dirname, '../../../..');
  }
  setAboutPanelOptions(): void {}
  showAboutPanel(): void {
    stage.tell('about');
  }
  setAppUserModelId(): void {}
  relaunch(options: { readonly args?: readonly string[] } = {}): void {
    stage.tell('relaunch', options.args ?? process.argv.slice(1));
  }
  focus(): void {
    stage.tell('focus-app');
  }
  quit(): void {
    if (quitting) return;
    quitting = true;
    const before = preventable();
    this.emit('before-quit', before);
    if (before.defaultPrevented || !closeAll()) return void (quitting = false);
    const will = preventable();
    this.emit('will-quit', will);
    if (will.defaultPrevented) return void (quitting = false);
    this.emit('quit', preventable(), 0);
    this.exit(0);
  }
  exit(status = 0): void {
    process.exit(status);
  }
}

/** Filled by the windows: closes them all; false where one would not be closed. */
let closeAll = (): boolean => true;
export function whenQuitting(close: () => boolean): void {
  closeAll = close;
}

/** Whether the program is ending, so that the last window's closing asks nothing more. */
export function isQuitting(): boolean {
  return quitting;
}

export const app = new RehearsedApp();
for (const signal of ['SIGINT', 'SIGTERM'] as const) process.on(signal, () => app.quit());
