import type { App } from 'electron';

/**
 * Whether a program made for others was started without its sandbox: by a switch of the person's, or by an AppImage's own start where
 * the system lets a program make none. It is not opened then; from the sources a developer may.
 *
 * Source: Electron's security checklist, item 4 (seen); that such a start adds the switch is from memory.
 */
export function startedWithoutSandbox(app: Pick<App, 'isPackaged' | 'commandLine'>): boolean {
  return app.isPackaged && app.commandLine.hasSwitch('no-sandbox');
}
