import { EventEmitter } from 'node:events';
import { preventable } from './app.ts';
import { stage } from './stage-line.ts';

export interface WindowAsked {
  readonly url: string;
  readonly frameName: string;
  readonly features: string;
  readonly disposition: string;
}
type OpenHandler = (details: WindowAsked) => { readonly action: 'allow' | 'deny' };

/** A page's contents as the program sees them; the page itself is on the stage. */
export class RehearsedContents extends EventEmitter {
  readonly id: number;
  #destroyed = false;
  #mayOpen: OpenHandler = () => ({ action: 'allow' });
  #url = '';

  constructor(id: number) {
    super();
    this.id = id;
  }
  setWindowOpenHandler(handler: OpenHandler): void {
    this.#mayOpen = handler;
  }
  mayOpen(details: WindowAsked): 'allow' | 'deny' {
    return this.#mayOpen(details).action;
  }
  send(channel: string, ...given: unknown[]): void {
    this.#mustBeThere();
    stage.tell('send', this.id, channel, given);
  }
  getURL(): string {
    return this.#url;
  }
  isAt(url: string): void {
    this.#url = url;
  }
  isDestroyed(): boolean {
    return this.#destroyed;
  }
  print(options: unknown, done: (printed: boolean, why: string) => void = () => undefined): void {
    this.#mustBeThere();
    void stage.ask('print', this.id, options).then((why) => done(why === '', String(why)), (error: unknown) => done(false, String(error)));
  }
  reload(): void {
    this.#mustBeThere();
    stage.tell('reload', this.id);
  }
  toggleDevTools(): void {}
  downloadURL(url: string): void {
    this.#mustBeThere();
    stage.tell('download', this.id, url);
  }
  forcefullyCrashRenderer(): void {
    this.#mustBeThere();
    stage.tell('crash', this.id);
  }
  setZoomLevel(level: number): void {
    stage.tell('zoom', this.id, level);
  }
  setVisualZoomLevelLimits(): Promise<void> {
    return Promise.resolve();
  }
  /** Whether the page may go there: false where a listener prevented it. */
  mayNavigate(names: readonly string[], details: { readonly url: string; readonly isMainFrame: boolean }): boolean {
    const event = Object.assign(preventable(), {});
    const whole = new Proxy(event, { get: (target, name) => (name in details ? details[name as keyof typeof details] : Reflect.get(target, name) as unknown) });
    for (const name of names) this.emit(name, whole, details.url);
    return !event.defaultPrevented;
  }
  /** What is gone can be asked for nothing but whether it is. */
  #mustBeThere(): void {
    if (this.#destroyed) throw new TypeError('Object has been destroyed');
  }
  destroyed(): void {
    this.#destroyed = true;
    this.emit('destroyed');
  }
}
