import { assert, must } from '../result/assert.ts';
import { SHA256_BYTES, type Sha256 } from './digest.ts';

/**
 * A Merkle tree over leaf hashes with all its inner nodes. `levels[0]` is the leaves, one after another, 32 bytes each; each
 * further level holds the parents, a last node without a neighbour going up as it is. Built once in n steps, it gives each
 * proof in log n steps.
 */
export interface MerkleTree {
  readonly size: number;
  readonly levels: readonly Uint8Array[];
}

/** Says that an inner node is hashed, so that it is never taken for a leaf. */
const INNER = 1;

/**
 * The tree over leaf hashes (32 bytes each), in order.
 *
 * Source: RFC 9162 section 2.1.1 (vectors seen and recomputed). Pairing level by level and promoting the odd last node gives
 * the same tree as the RFC's split at the largest power of two: both make every complete left subtree first.
 */
export function merkleTree(leafHashes: readonly Uint8Array[], sha256: Sha256): MerkleTree {
  const leaves = new Uint8Array(leafHashes.length * SHA256_BYTES);
  leafHashes.forEach((hash, at) => {
    assert(hash.length === SHA256_BYTES, 'a leaf hash of 32 bytes');
    leaves.set(hash, at * SHA256_BYTES);
  });
  const levels: Uint8Array[] = [leaves];
  let level: Uint8Array = leaves;
  while (level.length > SHA256_BYTES) {
    level = parentsOf(level, sha256);
    levels.push(level);
  }
  return { size: leafHashes.length, levels };
}

function parentsOf(level: Uint8Array, sha256: Sha256): Uint8Array {
  const count = level.length / SHA256_BYTES;
  const parents = new Uint8Array(Math.ceil(count / 2) * SHA256_BYTES);
  for (let at = 0; at + 1 < count; at += 2) {
    const pair = level.subarray(at * SHA256_BYTES, (at + 2) * SHA256_BYTES);
    parents.set(hashPair(pair, sha256), (at / 2) * SHA256_BYTES);
  }
  if (count % 2 === 1) parents.set(level.subarray((count - 1) * SHA256_BYTES), parents.length - SHA256_BYTES);
  return parents;
}

function hashPair(pair: Uint8Array, sha256: Sha256): Uint8Array {
  const bytes = new Uint8Array(1 + pair.length);
  bytes[0] = INNER;
  bytes.set(pair, 1);
  return sha256(bytes);
}

/** The hash of an inner node from its two children: `sha256(0x01 || left || right)`. */
export function nodeHash(left: Uint8Array, right: Uint8Array, sha256: Sha256): Uint8Array {
  const pair = new Uint8Array(left.length + right.length);
  pair.set(left);
  pair.set(right, left.length);
  return hashPair(pair, sha256);
}

/** The root of a tree; of an empty one, the digest of nothing. */
export function treeRoot(tree: MerkleTree, sha256: Sha256): Uint8Array {
  return tree.size === 0 ? sha256(new Uint8Array(0)) : must(tree.levels.at(-1), 'top level').slice();
}

/** Node `at` of a level, or null past the level's end. */
export function nodeAt(tree: MerkleTree, level: number, at: number): Uint8Array | null {
  const nodes = must(tree.levels[level], 'level');
  const start = at * SHA256_BYTES;
  return start < nodes.length ? nodes.slice(start, start + SHA256_BYTES) : null;
}
