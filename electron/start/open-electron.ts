import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { REFUSED_STATUS } from './window-status.ts';

const DOWNLOAD_MS = 60_000;
/** A window program that could not be fetched is not asked for again at every start. */
const ASK_AGAIN_AFTER_MS = 24 * 3_600_000;
/** A window that ends this soon with a fault never opened. */
const NEVER_OPENED_MS = 15_000;

/** How a window ended; or, in one sentence, why there is none. */
export type WindowOutcome = { readonly opened: true; readonly status: number } | { readonly opened: false; readonly why: string };

export interface ElectronPlace {
  /** The project's folder, which Electron is given to run. */
  readonly project: string;
  /** The package `electron`. */
  readonly package: string;
  readonly env: NodeJS.ProcessEnv;
  readonly platform: NodeJS.Platform;
  readonly args: readonly string[];
  /** Ask for the download even if it failed a short time ago. */
  readonly insist: boolean;
}

/** Whether a window could be seen here: on Linux only with a display server. */
export function hasDisplay(env: NodeJS.ProcessEnv, platform: NodeJS.Platform): boolean {
  return platform !== 'linux' || (env['DISPLAY'] ?? '') !== '' || (env['WAYLAND_DISPLAY'] ?? '') !== '';
}

/** Opens the window and waits for its end, fetching Electron's program first where it is missing. */
export async function openElectron(place: ElectronPlace, say: (line: string) => void): Promise<WindowOutcome> {
  const program = await electronProgram(place, say);
  if (program === null) return { opened: false, why: 'No window: Electron’s program could not be fetched. "npm start -- --window" tries again.' };
  const started = performance.now();
  const status = await run(program, [place.project, ...place.args], place.env);
  const neverOpened = status !== 0 && status !== REFUSED_STATUS && performance.now() - started < NEVER_OPENED_MS;
  return neverOpened ? { opened: false, why: `No window: Electron ended at once (status ${status}).` } : { opened: true, status };
}

async function electronProgram(place: ElectronPlace, say: (line: string) => void): Promise<string | null> {
  const there = programOf(place.package);
  if (there !== null) return there;
  const note = path.join(place.project, 'dist', 'electron-not-fetched');
  if (!place.insist && existsSync(note) && Date.now() - statSync(note).mtimeMs < ASK_AGAIN_AFTER_MS) return null;
  say('Fetching Electron for the window; this is tried for a minute at most.');
  await run(process.execPath, [path.join(place.package, 'install.js')], place.env, DOWNLOAD_MS);
  const fetched = programOf(place.package);
  rmSync(note, { force: true });
  if (fetched === null) {
    mkdirSync(path.dirname(note), { recursive: true });
    writeFileSync(note, '');
  }
  return fetched;
}

/** The package notes the name of its program once it is there whole. */
function programOf(folder: string): string | null {
  const named = path.join(folder, 'path.txt');
  if (!existsSync(named)) return null;
  const program = path.join(folder, 'dist', readFileSync(named, 'utf8'));
  return existsSync(program) ? program : null;
}

/** Runs quietly on this side: standard output stays ours. Resolves with the exit status, 1 for a signal or a program that cannot start. */
function run(program: string, args: readonly string[], env: NodeJS.ProcessEnv, timeout = 0): Promise<number> {
  return new Promise((resolve) => {
    const child = spawn(program, args, { stdio: ['ignore', 'ignore', timeout === 0 ? 'inherit' : 'ignore'], env, timeout });
    // Ctrl-C in a terminal reaches the window by itself; sent on, it would arrive twice, and a second one ends Chromium at once (from memory).
    const pass = (signal: NodeJS.Signals) => (signal === 'SIGINT' && process.stdin.isTTY) || child.kill(signal);
    process.on('SIGTERM', pass);
    process.on('SIGINT', pass);
    const end = (status: number) => {
      process.off('SIGTERM', pass);
      process.off('SIGINT', pass);
      resolve(status);
    };
    child.on('error', () => end(1));
    child.on('exit', (code) => end(code ?? 1));
  });
}
