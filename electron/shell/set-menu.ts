import { existsSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { dialog, Menu, type App, type BrowserWindow } from 'electron';
import { menuTemplate, type MenuActions } from './menu.ts';
import { openPath } from './open-path.ts';
import { printPage } from './print-page.ts';
import { windowWords } from './window-words.ts';

/** Where the licences of the libraries lie once this is bundled: beside what is built, or beside the packed program. */
const BUILT_LICENCES = fileURLToPath(new URL('../licences.txt', import.meta.url));

export interface ProgramMenu {
  readonly app: App;
  readonly window: BrowserWindow;
  /** The folder of the household that is open now. */
  readonly folder: () => string;
  readonly openOther: MenuActions['openOther'];
  readonly quit: MenuActions['quit'];
  readonly licencesFile: string;
}

/** Gives the program its menu. */
export function setMenu({ app, window, folder, openOther, quit, licencesFile }: ProgramMenu): void {
  const withWindow = (act: () => void) => () => {
    if (!window.isDestroyed()) act();
  };
  const actions: MenuActions = {
    openOther: withWindow(openOther),
    showFolder: withWindow(() => void openPath(window, folder(), 'folder-not-shown')),
    print: withWindow(() => printPage(window)),
    quit,
    about: withWindow(() => void tellAbout(app, window)),
    licences: existsSync(licencesFile) ? withWindow(() => void openPath(window, licencesFile, 'file-not-shown')) : null,
  };
  Menu.setApplicationMenu(Menu.buildFromTemplate(menuTemplate(actions, { platform: process.platform, packaged: app.isPackaged })));
}

/** The file of licences: other programs cannot read inside the packed one, so there it lies beside it. */
export function licencesPlace(app: App): string {
  return app.isPackaged ? path.join(process.resourcesPath, 'licences.txt') : BUILT_LICENCES;
}

async function tellAbout(app: App, window: BrowserWindow): Promise<void> {
  const { electron = '', chrome = '', node } = process.versions;
  await dialog.showMessageBox(window, {
    type: 'info',
    title: windowWords('menu-about'),
    message: windowWords('about-version', { version: app.getVersion() }),
    detail: windowWords('about-what', { electron, chrome, node }),
    buttons: [windowWords('box-fine')],
    noLink: true,
  });
}
