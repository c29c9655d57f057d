import { EventEmitter } from 'node:events';
import path from 'node:path';
import type { Session } from 'electron';
import { describe, expect, test, vi } from 'vitest';
import { guardDownloads } from '../../electron/shell/guard-downloads.ts';

const PAPER = `trunnion://app/papers/${'a'.repeat(64)}`;

/** What becomes of one download: whether it was cancelled, and what the person is asked. */
function download(url: string, name: string, chain: readonly string[] = [url]) {
  const session = new EventEmitter();
  guardDownloads(session as unknown as Session, () => '/home/me/Downloads');
  const event = { preventDefault: vi.fn() };
  const setSaveDialogOptions = vi.fn<(options: { title: string; defaultPath: string; filters: { name: string; extensions: string[] }[] }) => void>();
  session.emit('will-download', event, { getURL: () => url, getURLChain: () => chain, getFilename: () => name, setSaveDialogOptions });
  return { cancelled: event.preventDefault.mock.calls.length === 1, asked: setSaveDialogOptions.mock.calls[0]?.[0] };
}

describe('what the page may save', () => {
  test.each([['blob:trunnion://app/0b9e-1', 'Pip costs.csv'], [PAPER, 'receipt.pdf'], [`${PAPER}/copy/1`, 'page.webp']])('%s: where the person says', (url, name) => {
    const { cancelled, asked } = download(url, name);
    expect([cancelled, asked?.defaultPath]).toEqual([false, path.join('/home/me/Downloads', name.replace(' ', '-'))]);
  });

  // Source: Electron's security checklist, item 13: what a parser sees, not how the text begins (seen; rows by hand).
  test.each([
    'https://evil.example/a.csv', 'http://127.0.0.1/a.csv', 'file:///etc/passwd', 'data:text/csv,a', 'blob:https://evil.example/1', 'blob:https://evil.example/?trunnion://app/', 'blob:null/1',
    'blob:trunnion://app.evil.example/1', 'blob:blob:trunnion://app/1', 'trunnion://evil/papers/', 'trunnion://app/', 'trunnion://app/assets/main.js', 'trunnion://app/papers/..%2f..%2fkey', 'not an address', '',
  ])('nothing from %o', (url) => {
    expect(download(url, 'a.csv')).toEqual({ cancelled: true, asked: undefined });
  });

  test('nothing that came by way of another address', () => {
    expect(download(PAPER, 'a.pdf', ['https://evil.example/', PAPER]).cancelled).toBe(true);
    expect(download('https://evil.example/', 'a.pdf', [PAPER]).cancelled).toBe(true);
  });
});

describe('the name that is offered', () => {
  test.each([
    { given: '../../.bashrc', offered: 'bashrc' }, { given: '/etc/passwd', offered: 'etc-passwd' }, { given: 'C:\\Windows\\a.csv', offered: 'C-Windows-a.csv' }, { given: 'con.txt', offered: 'trunnion-con.txt' },
    { given: 'a\u0000b\u202etxt.exe', offered: 'a-b-txt.exe' }, { given: '', offered: 'trunnion' }, { given: '...', offered: 'trunnion' }, { given: 'Öl für Pip.csv', offered: 'Öl-für-Pip.csv' },
  ])('$given: $offered', ({ given, offered }) => {
    expect(download('blob:trunnion://app/1', given).asked?.defaultPath).toBe(path.join('/home/me/Downloads', offered));
  });

  test.each([
    { name: 'a.csv', filters: [{ name: 'Table (CSV)', extensions: ['csv'] }, { name: 'All files', extensions: ['*'] }] },
    { name: 'a.JPEG', filters: [{ name: 'Picture', extensions: ['jpeg'] }, { name: 'All files', extensions: ['*'] }] },
    { name: 'a.exe', filters: [{ name: 'All files', extensions: ['*'] }] },
  ])('$name is offered as what it is', ({ name, filters }) => {
    expect(download('blob:trunnion://app/1', name).asked).toMatchObject({ title: `Save ${name}`, filters });
  });
});
