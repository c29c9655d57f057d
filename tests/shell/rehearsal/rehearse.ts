import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import type { WindowOptions } from './program/browser-window.ts';
import type { SeenItem } from './program/menu.ts';
import { serveSchemes } from './stage/scheme-server.ts';
import { emptyNotes, type StageNotes } from './stage/stage-notes.ts';
import { openWindowPage, type WindowPage } from './stage/window-page.ts';
import type { Alterations } from './stage/window-setting.ts';
import { twoWay, type TwoWay } from './two-way.ts';

const MAIN = new URL('../../../dist/main/main.js', import.meta.url).pathname;
const REGISTER = new URL('./program/register.ts', import.meta.url).href;

export interface RehearsalOptions {
  readonly browser: Browser;
  /** What a person adds to the program's command line. */
  readonly args: readonly string[];
  readonly context?: BrowserContextOptions;
  /** Sees each page before anything is loaded in it. */
  readonly onPage?: (page: Page) => void;
  /** The person's home, where the program keeps its own files; a fresh one unless given. */
  readonly home?: string;
}

/** The program, running as it would in its true shell, with its windows as pages of a real Chromium. */
export interface Rehearsal {
  readonly notes: StageNotes;
  /** What it said on its standard error. */
  readonly said: () => string;
  /** What the next dialogs of a kind are answered; else each is closed without an answer. */
  answerDialogs(kind: 'message' | 'open' | 'save', answer: unknown): void;
  menu(): Promise<readonly SeenItem[]>;
  pressMenu(...labels: readonly string[]): Promise<void>;
  /** Stands between the program and its pages on one channel; the answer ends it. */
  alter(channel: string, change: (reply: unknown) => unknown): () => Promise<void>;
  /** Does to the first window what a person would. */
  ask: TwoWay['ask'];
  /** The page of the first window, once it has loaded. */
  page(): Promise<Page>;
  /** Quits in order; resolves with the exit status. */
  stop(): Promise<number>;
  kill(): Promise<void>;
  /** Resolves with the exit status when it has ended by itself. */
  readonly ended: Promise<number>;
}

/**
 * Runs the program's real main.ts and preload.ts, as they were bundled for the window, with the stand-in for `electron`.
 *
 * @example const rehearsal = await rehearse({ browser, args: ['--household', folder, '--on', '2026-11-25'] });
 */
export function rehearse({ browser, args, context = {}, onPage = () => undefined, home }: RehearsalOptions): Rehearsal {
  const ownHome = home ?? mkdtempSync(join(tmpdir(), 'rehearsal-home-'));
  const program = spawn(process.execPath, ['--import', REGISTER, MAIN, ...args], { env: { ...process.env, REHEARSAL_HOME: ownHome }, stdio: ['ignore', 'ignore', 'pipe', 'ipc'], serialization: 'advanced' });
  const notes = emptyNotes();
  const windows = new Map<number, Promise<WindowPage>>();
  let said = '';
  program.stderr?.on('data', (piece: Buffer) => (said += piece.toString('utf8')));
  const line = lineTo(program);
  const loaded = firstLoad();
  const schemes = serveSchemes(line);
  const alterations: Alterations = new Map();
  const answers = new Map<string, unknown[]>();
  const pageOf = (window: number) => windows.get(window) ?? Promise.reject(new Error(`no window ${window}`));
  const ended = once(program, 'exit').then(async ([code]) => {
    line.end(`the program ended: ${said}`);
    loaded.fail(new Error(`the program ended (${String(code)}): ${said}`));
    await Promise.all([...windows.values()].map((window) => window.then(({ close }) => close()).catch(() => undefined)));
    (await schemes).close();
    if (home === undefined) rmSync(ownHome, { recursive: true, force: true });
    return (code as number | null) ?? -1;
  });

  line.answer({
    'open-window': async (window: number, options: WindowOptions) => {
      const page = schemes.then(({ addresses }) => openWindowPage({ browser, program: line, window, options, context, notes, addresses, onPage, alterations }));
      windows.set(window, page);
      await page;
    },
    load: async (window: number, address: string) => {
      const opened = await pageOf(window);
      await opened.load(address);
      loaded.done(opened.page);
    },
    send: async (window: number, channel: string, given: readonly unknown[]) => (await pageOf(window)).send(channel, given),
    'close-window': async (window: number) => (await pageOf(window)).close(),
    download: async (window: number, address: string) => (await pageOf(window)).download(address),
    crash: async (window: number) => (await pageOf(window)).crash(),
    reload: async (window: number) => void (await (await pageOf(window)).page.reload()),
    bounds: async (window: number, { width, height }: { width: number; height: number }) => (await pageOf(window)).page.setViewportSize({ width, height }),
    focus: () => void (notes.focused += 1),
    print: (_window: number, options: unknown) => (notes.printed.push(options), ''),
    dialog: (kind: 'message' | 'open' | 'save', options: Readonly<Record<string, unknown>>) => {
      notes.dialogs.push({ kind, options });
      return answers.get(kind)?.shift() ?? (kind === 'message' ? { response: 0 } : { canceled: true, filePaths: [] });
    },
    'error-box': (title: string, content: string) => void notes.errorBoxes.push({ title, content }),
    notification: (_at: number, options: { readonly title?: string; readonly body?: string }) => void notes.notifications.push(options),
    'open-path': (place: string) => void notes.opened.push(place),
    'show-item': (place: string) => void notes.opened.push(place),
    'open-external': (address: string) => void notes.opened.push(address),
    relaunch: (again: readonly string[]) => void notes.relaunches.push(again),
  });

  return {
    notes,
    said: () => said,
    answerDialogs: (kind, answer) => void (answers.get(kind) ?? answers.set(kind, []).get(kind))?.push(answer),
    menu: () => line.ask('menu') as Promise<readonly SeenItem[]>,
    pressMenu: async (...labels) => void (await line.ask('press-menu', labels)),
    alter: (channel, change) => {
      alterations.set(channel, change);
      return () => Promise.resolve(void alterations.delete(channel));
    },
    ask: line.ask,
    page: () => loaded.page,
    stop: () => {
      line.tell('quit');
      return ended;
    },
    kill: async () => {
      program.kill('SIGKILL');
      await ended;
    },
    ended,
  };
}

function lineTo(program: ChildProcess): TwoWay {
  return twoWay({
    send: (message) => {
      if (program.connected) program.send(message as object, () => undefined);
    },
    onMessage: (hear) => void program.on('message', hear),
  });
}

function firstLoad(): { readonly page: Promise<Page>; done(page: Page): void; fail(why: Error): void } {
  const { promise, resolve, reject } = Promise.withResolvers<Page>();
  promise.catch(() => undefined);
  return { page: promise, done: resolve, fail: reject };
}
