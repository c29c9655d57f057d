import path from 'node:path';
import { dialog, type BrowserWindow } from 'electron';
import type { Result } from '../../shared-core/result/result.ts';
import { sayRefusal } from '../../shared-core/result/words/say.ts';
import { composeHost } from '../host/compose-host.ts';
import type { World } from '../host/host-context.ts';
import { samePlace } from './same-place.ts';
import { windowWords } from './window-words.ts';

/** The household that is open, and how the program goes over to another. */
export interface OtherHousehold {
  readonly window: BrowserWindow;
  readonly home: string;
  readonly world: World;
  readonly goTo: (folder: string) => void;
}

/**
 * Asks for a folder and goes over to the household in it. The folder is opened once beforehand, just as it will be: one that is
 * refused is told of in its sentence, and the household that is open stays as it is.
 */
export async function openOtherHousehold({ window, home, world, goTo }: OtherHousehold): Promise<void> {
  const chosen = await dialog.showOpenDialog(window, {
    title: windowWords('open-other-title'),
    buttonLabel: windowWords('open-other-button'),
    defaultPath: path.dirname(home),
    properties: ['openDirectory', 'createDirectory'],
  });
  const folder = chosen.filePaths[0];
  if (chosen.canceled || folder === undefined) return;
  if (samePlace(folder, home)) return tell(window, 'info', windowWords('open-other-same'), '');
  const judged = await opensAsHousehold(folder, world);
  if (judged.ok) return goTo(folder);
  await tell(window, 'warning', windowWords('open-other-refused'), windowWords('open-other-stays', { why: sayRefusal(judged.refusal) }));
}

async function opensAsHousehold(folder: string, world: World): Promise<Result<unknown>> {
  const opened = composeHost(folder, world);
  if (opened.ok) await opened.value.close();
  return opened;
}

async function tell(window: BrowserWindow, type: 'info' | 'warning', message: string, detail: string): Promise<void> {
  await dialog.showMessageBox(window, { type, message, detail, buttons: [windowWords('box-fine')], noLink: true });
}
