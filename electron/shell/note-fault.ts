import path from 'node:path';

/**
 * Notes a fault of our own on standard error: what sort it is and where it was met. Its own words are left out, as they may hold
 * what a person entered, and so are the folders of the places.
 */
export function noteFault(error: unknown): void {
  process.stderr.write(`${describeFault(error)}\n`);
}

/** Notes what happened beside the work in hand. */
export function noteLine(line: string): void {
  process.stderr.write(`${line}\n`);
}

/** The lines of such a note. @example describeFault(new TypeError('Pip cannot be read')) //=> 'TypeError\n  at show (main.js:10:3)' */
export function describeFault(error: unknown): string {
  if (!(error instanceof Error)) return `a thrown ${typeof error}`;
  const code = 'code' in error && /^[A-Z_]{1,40}$/.test(String(error.code)) ? ` ${String(error.code)}` : '';
  const stack = error.stack ?? '';
  const wordsAt = stack.indexOf(error.message);
  const places = stack.slice(wordsAt < 0 ? 0 : wordsAt + error.message.length).split('\n').filter((line) => /^\s+at /.test(line)).map(withoutFolders);
  return [`${error.name}${code}`, ...places].join('\n');
}

function withoutFolders(line: string): string {
  return `  ${line.trim().replace(/(?:file:\/\/)?[^\s()]*[\\/][^()]*/, (place) => path.posix.basename(place.replaceAll('\\', '/')))}`;
}
