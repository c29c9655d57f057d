import { electronShell } from './electron-shell.ts';
import { loopbackShell } from './loopback-shell.ts';
import { rehearsalShell } from './rehearsal-shell.ts';
import type { Shell, ShellOptions } from './shell.ts';

const SHELLS = { loopback: loopbackShell, rehearsal: rehearsalShell, electron: electronShell } as const;
export type ShellName = keyof typeof SHELLS;

/** Through which shell the specs run: a browser served on loopback; the window's program rehearsed; or the true window, where its program is to be had. */
export const SHELL: ShellName = nameOf(process.env['TRUNNION_SHELL'] ?? 'loopback');

function nameOf(name: string): ShellName {
  if (!Object.hasOwn(SHELLS, name)) throw new Error(`TRUNNION_SHELL is one of ${Object.keys(SHELLS).join(', ')}`);
  return name as ShellName;
}

/** Opens a household's dashboard in the shell that the specs run through. */
export function openShell(options: ShellOptions): Promise<Shell> {
  return SHELLS[SHELL](options);
}
