import { hexText } from '../../shared-core/journal/hex-text.ts';
import { merkleTree, treeRoot } from '../../shared-core/journal/merkle-tree.ts';
import { sha256 } from '../host/node-digests.ts';
import type { Fault } from './fault.ts';
import { readHashes } from './journal-table.ts';
import { sealsGiven } from './seal-table.ts';
import type { Store } from './store.ts';

/** Each seal that went out must be the root over the rows it covers, and these rows must still be there. */
export function examineSeals(store: Store): Fault[] {
  const hashes = readHashes(store);
  return sealsGiven(store)
    .filter(({ treeSize, root }) => treeSize > hashes.length || hexText(treeRoot(merkleTree(hashes.slice(0, treeSize), sha256), sha256)) !== root)
    .map(({ treeSize }) => ({ where: `the seal over ${treeSize} entries`, what: 'is not of these entries' }));
}
