import { readFileSync, renameSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import type { BrowserWindow } from 'electron';
import { makeFolder } from '../host/make-folder.ts';
import { windowPlaceSchema, type WindowPlace } from './window-place.ts';

/** Moving and sizing tell of themselves many times a second; the place is kept when they have rested for this long. */
const RESTED_MS = 500;
const MOVES = ['resize', 'move', 'maximize', 'unmaximize', 'enter-full-screen', 'leave-full-screen'] as const;

/** The file in the program's own folder that holds the window's place. */
export function placeFile(userData: string): string {
  return path.join(userData, 'window-place.json');
}

/** The place that was kept; null where there is none, or none that can be understood. */
export function readPlace(file: string): WindowPlace | null {
  try {
    const parsed = windowPlaceSchema.safeParse(JSON.parse(readFileSync(file, 'utf8')));
    return parsed.success ? parsed.data : null;
  } catch {
    return null;
  }
}

/** Keeps a place: written whole beside the file, then put in its place, so that it is never half a file. */
export function writePlace(file: string, place: WindowPlace): void {
  makeFolder(path.dirname(file), 0o700);
  const draft = `${file}.draft`;
  writeFileSync(draft, `${JSON.stringify(place)}\n`);
  renameSync(draft, file);
}

/** Keeps the window's place whenever it has come to rest, and at its closing. That it could not be kept is noted and stops nothing. */
export function keepPlace(window: BrowserWindow, file: string, onFault: (error: unknown) => void): void {
  let timer: NodeJS.Timeout | null = null;
  const keep = () => {
    if (timer !== null) clearTimeout(timer);
    timer = null;
    try {
      if (!window.isDestroyed()) writePlace(file, placeOf(window));
    } catch (error) {
      onFault(error);
    }
  };
  const later = () => {
    if (timer !== null) clearTimeout(timer);
    timer = setTimeout(keep, RESTED_MS);
  };
  // One name at a time: each is a signature of its own.
  for (const name of MOVES) window.on(name as 'resize', later);
  window.on('close', keep);
  window.on('closed', () => timer !== null && clearTimeout(timer));
}

function placeOf(window: BrowserWindow): WindowPlace {
  const { x, y, width, height } = window.getNormalBounds();
  return { x, y, width, height, maximised: window.isMaximized(), fullScreen: window.isFullScreen() };
}
