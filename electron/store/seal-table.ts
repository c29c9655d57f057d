import { hexText } from '../../shared-core/journal/hex-text.ts';
import type { JournalHead } from '../../shared-core/journal/seal.ts';
import type { Store } from './store.ts';

/** Notes that a seal over this head leaves the house; the same head is noted once. Answers whether it was not noted before. */
export function noteSealGiven(store: Store, head: JournalHead, at: string): boolean {
  const known = sealsGiven(store).some((one) => one.treeSize === head.treeSize && one.root === head.root);
  if (!known) store.prepare('INSERT INTO seal_given (tree_size, root, at) VALUES (?, ?, ?)').run(head.treeSize, Buffer.from(head.root, 'hex'), at);
  return !known;
}

/** Takes the note back: the seal has not left the house after all. */
export function forgetSeal(store: Store, head: JournalHead): void {
  store.prepare('DELETE FROM seal_given WHERE tree_size = ? AND root = ?').run(head.treeSize, Buffer.from(head.root, 'hex'));
}

/** The seals that have gone out, smallest first, each with when it was given. */
export function sealsNoted(store: Store): readonly (JournalHead & { readonly at: string })[] {
  return store.prepare<[], { treeSize: number; root: Buffer; at: string }>('SELECT tree_size AS treeSize, root, min(at) AS at FROM seal_given GROUP BY tree_size, root ORDER BY tree_size').all().map(({ treeSize, root, at }) => ({ treeSize, root: hexText(root), at }));
}

/** The heads over which seals have gone out, smallest first. */
export function sealsGiven(store: Store): readonly JournalHead[] {
  return store.prepare<[], { treeSize: number; root: Buffer }>('SELECT DISTINCT tree_size AS treeSize, root FROM seal_given ORDER BY tree_size').all().map(({ treeSize, root }) => ({ treeSize, root: hexText(root) }));
}
