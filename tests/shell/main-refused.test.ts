import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { afterAll, expect, test, vi } from 'vitest';
import { REFUSED_STATUS } from '../../electron/start/window-status.ts';
import { standIn, StandInWindow } from './electron-stand-in.ts';

vi.mock('electron', async () => (await import('./electron-stand-in.ts')).standIn);

const folder = mkdtempSync(path.join(os.tmpdir(), 'main-refused-'));
afterAll(() => rmSync(folder, { recursive: true }));

test('a household that cannot be opened is said in a sentence, and the program ends without a window', async () => {
  writeFileSync(path.join(folder, 'file'), '');
  vi.stubEnv('TRUNNION_HOUSEHOLD', path.join(folder, 'file', 'household'));
  await import('../../electron/main.ts');
  await vi.waitFor(() => expect(standIn.app.exit.calls).toEqual([[REFUSED_STATUS]]));
  expect(standIn.dialog.showErrorBox.calls).toEqual([['Trunnion', expect.stringMatching(/^[A-Z].{10,}\.$/) as string]]);
  expect(StandInWindow.opened).toEqual([]);
});
