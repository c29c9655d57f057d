import { assert, must } from '../result/assert.ts';
import { SHA256_BYTES, type Sha256 } from './digest.ts';
import { sameBytes } from './hex-text.ts';
import { nodeAt, nodeHash, type MerkleTree } from './merkle-tree.ts';

/**
 * The hashes that show that the first `from` leaves are still what they were when the tree ended there.
 *
 * Source: RFC 9162 section 2.1.4.1 (vectors seen and recomputed). Every subtree it names is a node of the tree's levels, so no
 * leaf is hashed again.
 */
export function consistencyProof(tree: MerkleTree, from: number): Uint8Array[] {
  assert(Number.isSafeInteger(from) && from > 0 && from <= tree.size, 'an earlier size of this tree');
  const outermostFirst: Uint8Array[] = [];
  let [start, end] = [0, tree.size];
  while (from !== end) {
    const middle = start + largestPowerBelow(end - start);
    if (from <= middle) {
      outermostFirst.push(subtreeHash(tree, middle, end));
      end = middle;
    } else {
      outermostFirst.push(subtreeHash(tree, start, middle));
      start = middle;
    }
  }
  // A subtree that is the whole earlier tree is left out: the reader has its root.
  if (start !== 0) outermostFirst.push(subtreeHash(tree, start, end));
  return outermostFirst.reverse();
}

function largestPowerBelow(length: number): number {
  let power = 1;
  while (power * 2 < length) power *= 2;
  return power;
}

/** The hash over leaves `start` to `end`, where that is one node of the tree. */
function subtreeHash(tree: MerkleTree, start: number, end: number): Uint8Array {
  let [level, width] = [0, 1];
  while (width < end - start) [level, width] = [level + 1, width * 2];
  return must(nodeAt(tree, level, start / width), 'node over these leaves');
}

/** What a consistency proof claims: the tree of `first` leaves with `firstRoot` is the beginning of the second. */
export interface ConsistencyClaim {
  readonly first: number;
  readonly firstRoot: Uint8Array;
  readonly second: number;
  readonly secondRoot: Uint8Array;
}

/**
 * Whether a proof shows the claim. Equal sizes need no proof but equal roots; an empty earlier tree proves nothing.
 *
 * Source: RFC 9162 section 2.1.4.2 (algorithm from memory; accepted all 36 seen proofs of sizes 1 to 8).
 */
export function provesConsistency(claim: ConsistencyClaim, proof: readonly Uint8Array[], sha256: Sha256): boolean {
  const { first, firstRoot, second, secondRoot } = claim;
  if (!isOrdered(claim) || [firstRoot, secondRoot, ...proof].some((hash) => hash.length !== SHA256_BYTES)) return false;
  if (first === second) return proof.length === 0 && sameBytes(firstRoot, secondRoot);
  if (proof.length === 0) return false;
  const path = isPowerOfTwo(first) ? [firstRoot, ...proof] : proof;
  const ends = climb(path, first - 1, second - 1, sha256);
  return ends !== null && sameBytes(ends.first, firstRoot) && sameBytes(ends.second, secondRoot);
}

/** Both roots that a path leads to, from the last leaf of the earlier tree; null where it leads past the top. */
function climb(path: readonly Uint8Array[], from: number, to: number, sha256: Sha256): { first: Uint8Array; second: Uint8Array } | null {
  let [at, last] = [from, to];
  while (at % 2 === 1) [at, last] = [Math.floor(at / 2), Math.floor(last / 2)];
  const start = must(path[0], 'start of the path');
  let [first, second] = [start, start];
  for (const step of path.slice(1)) {
    if (last === 0) return null;
    if (at % 2 === 1 || at === last) {
      [first, second] = [nodeHash(step, first, sha256), nodeHash(step, second, sha256)];
      while (at % 2 === 0 && at !== 0) [at, last] = [at / 2, Math.floor(last / 2)];
    } else {
      second = nodeHash(second, step, sha256);
    }
    [at, last] = [Math.floor(at / 2), Math.floor(last / 2)];
  }
  return last === 0 ? { first, second } : null;
}

function isOrdered({ first, second }: ConsistencyClaim): boolean {
  return Number.isSafeInteger(first) && Number.isSafeInteger(second) && first > 0 && first <= second;
}

function isPowerOfTwo(size: number): boolean {
  let power = 1;
  while (power < size) power *= 2;
  return power === size;
}
