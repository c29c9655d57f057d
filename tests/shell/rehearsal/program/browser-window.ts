import { EventEmitter } from 'node:events';
import { app, isQuitting, preventable, whenQuitting } from './app.ts';
import { stage } from './stage-line.ts';
import { RehearsedContents } from './web-contents.ts';

export interface Bounds {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface WindowOptions extends Partial<Bounds> {
  readonly show?: boolean;
  readonly title?: string;
  readonly webPreferences?: Readonly<Record<string, unknown>>;
}

/** Its state as a person would see it. */
type Shown = 'normal' | 'minimised' | 'maximised' | 'full-screen';

let windows = 0;

/** A window whose page is a real one on the stage, made with the options that the program gave. */
export class BrowserWindow extends EventEmitter {
  static readonly open = new Map<number, BrowserWindow>();
  static getAllWindows(): BrowserWindow[] {
    return [...BrowserWindow.open.values()];
  }
  static getFocusedWindow(): BrowserWindow | null {
    return BrowserWindow.getAllWindows()[0] ?? null;
  }
  static fromWebContents(contents: RehearsedContents): BrowserWindow | null {
    return BrowserWindow.getAllWindows().find((window) => window.webContents === contents) ?? null;
  }

  readonly id = (windows += 1);
  readonly webContents = new RehearsedContents(this.id);
  readonly #made: Promise<unknown>;
  #bounds: Bounds;
  #shown: Shown = 'normal';
  #visible: boolean;

  constructor(options: WindowOptions = {}) {
    super();
    this.#bounds = { x: options.x ?? 0, y: options.y ?? 0, width: options.width ?? 800, height: options.height ?? 600 };
    this.#visible = options.show ?? true;
    BrowserWindow.open.set(this.id, this);
    this.#made = stage.ask('open-window', this.id, options);
    this.#made.catch((error: unknown) => app.emit('rehearsal-fault', error));
    app.emit('web-contents-created', preventable(), this.webContents);
  }
  async loadURL(url: string): Promise<void> {
    await this.#made;
    await stage.ask('load', this.id, url);
    this.webContents.isAt(url);
    this.emit('ready-to-show');
    this.webContents.emit('did-finish-load');
  }
  show(): void {
    this.#mustBeThere();
    this.#visible = true;
    this.emit('show');
  }
  isVisible(): boolean {
    return this.#visible;
  }
  focus(): void {
    this.#mustBeThere();
    stage.tell('focus', this.id);
    this.emit('focus');
  }
  getBounds(): Bounds {
    return this.#bounds;
  }
  getNormalBounds(): Bounds {
    this.#mustBeThere();
    return this.#bounds;
  }
  setBounds(bounds: Partial<Bounds>): void {
    this.#bounds = { ...this.#bounds, ...bounds };
    stage.tell('bounds', this.id, this.#bounds);
    this.emit('resize');
    this.emit('move');
  }
  isMinimized = () => (this.#mustBeThere(), this.#shown === 'minimised');
  isMaximized = () => this.#shown === 'maximised';
  isFullScreen = () => this.#shown === 'full-screen';
  minimize = () => this.#become('minimised', 'minimize');
  maximize = () => this.#become('maximised', 'maximize');
  unmaximize = () => this.#become('normal', 'unmaximize');
  restore = () => this.#become('normal', 'restore');
  setFullScreen = (full: boolean) => this.#become(full ? 'full-screen' : 'normal', full ? 'enter-full-screen' : 'leave-full-screen');
  #become(shown: Shown, event: string): void {
    this.#mustBeThere();
    this.#shown = shown;
    this.emit(event);
  }
  #mustBeThere(): void {
    if (this.isDestroyed()) throw new TypeError('Object has been destroyed');
  }
  isDestroyed(): boolean {
    return this.webContents.isDestroyed();
  }
  /** As a person closes it; false where that was prevented. */
  close(): boolean {
    const event = preventable();
    this.emit('close', event);
    if (!event.defaultPrevented) this.destroy();
    return !event.defaultPrevented;
  }
  destroy(): void {
    if (this.isDestroyed()) return;
    BrowserWindow.open.delete(this.id);
    stage.tell('close-window', this.id);
    this.webContents.destroyed();
    this.emit('closed');
    if (BrowserWindow.open.size === 0 && !isQuitting()) app.emit('window-all-closed');
  }
}

whenQuitting(() => BrowserWindow.getAllWindows().every((window) => window.close()));
