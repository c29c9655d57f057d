import { spawn } from 'node:child_process';
import { hasDisplay } from './open-electron.ts';

const OPENERS: Readonly<Partial<Record<NodeJS.Platform, readonly [string, ...string[]]>>> = {
  darwin: ['open'],
  win32: ['rundll32', 'url.dll,FileProtocolHandler'],
  linux: ['xdg-open'],
};

/** Opens an address in the default browser, if there is one that could be seen; the person has the printed link otherwise. */
export function openBrowser(address: string, env: NodeJS.ProcessEnv, platform: NodeJS.Platform): void {
  const opener = OPENERS[platform];
  if (opener === undefined || !hasDisplay(env, platform)) return;
  const [program, ...args] = opener;
  const child = spawn(program, [...args, address], { stdio: 'ignore', detached: true, env });
  child.on('error', () => undefined);
  child.unref();
}
