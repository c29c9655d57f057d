import { execFileSync } from 'node:child_process';
import { mkdirSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import path from 'node:path';

/** What a second launch tells the first. */
export interface Launch {
  readonly argv: readonly string[];
  readonly cwd: string;
  readonly data: unknown;
}

/** Tells a launch to the program that has the lock; its status says whether there was one. */
const KNOCK = `require('node:net').connect(process.argv[1]).on('error', () => process.exit(1)).on('close', () => process.exit(0)).end(process.argv[2])`;

/** True for the first program of a user's folder; a later one tells the first and gets false. The answer is wanted at once, so a process of its own knocks. */
export function takeLock(folder: string, data: unknown, onSecond: (launch: Launch) => void): boolean {
  mkdirSync(folder, { recursive: true });
  const socket = path.join(folder, 'lock');
  const launch: Launch = { argv: process.argv, cwd: process.cwd(), data };
  try {
    execFileSync(process.execPath, ['-e', KNOCK, socket, JSON.stringify(launch)], { stdio: 'ignore' });
    return false;
  } catch {
    rmSync(socket, { force: true });
  }
  const server = createServer((knock) => {
    let told = '';
    knock.on('data', (piece: Buffer) => (told += piece.toString('utf8')));
    knock.on('end', () => {
      knock.end();
      onSecond(JSON.parse(told) as Launch);
    });
  });
  server.listen(socket).unref();
  return true;
}
