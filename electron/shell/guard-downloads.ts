import path from 'node:path';
import type { FileFilter, Session } from 'electron';
import { safeFileName } from '../../shared-core/handover/pack-path.ts';
import { paperInPath } from '../loopback/paper-path.ts';
import { isOwnBlob, isOwnPage } from './page-address.ts';
import { windowWords, type WindowWord } from './window-words.ts';

const LONGEST_NAME = 120;
const KINDS: Readonly<Record<string, WindowWord>> = {
  '.csv': 'kind-csv', '.txt': 'kind-txt', '.ics': 'kind-ics', '.json': 'kind-json', '.pdf': 'kind-pdf', '.zip': 'kind-zip',
  '.png': 'kind-picture', '.jpg': 'kind-picture', '.jpeg': 'kind-picture', '.webp': 'kind-picture',
};

/**
 * Lets the page save only what is its own, a file that it made or a paper of the household, and only where the person says; every
 * other download is cancelled. Where it is saved is told to the page by nobody.
 *
 * Source: Electron's security checklist, item 13 (where a page may lead), and its pages on downloads; items 1 and 5 by what is kept out.
 */
export function guardDownloads(session: Session, downloads: () => string): void {
  session.on('will-download', (event, item) => {
    if (![item.getURL(), ...item.getURLChain()].every(maySave)) return event.preventDefault();
    const name = safeFileName(item.getFilename(), LONGEST_NAME, 'trunnion');
    item.setSaveDialogOptions({ title: windowWords('save-title', { name }), defaultPath: path.join(downloads(), name), filters: filtersFor(name) });
  });
}

/** Whether an address may be saved: a file made by our page, or a paper. */
export function maySave(address: string): boolean {
  return isOwnBlob(address) || (isOwnPage(address) && paperInPath(new URL(address).pathname) !== null);
}

function filtersFor(name: string): FileFilter[] {
  const all = { name: windowWords('kind-all'), extensions: ['*'] };
  const ending = path.extname(name).toLowerCase();
  const kind = KINDS[ending];
  return kind === undefined ? [all] : [{ name: windowWords(kind), extensions: [ending.slice(1)] }, all];
}
