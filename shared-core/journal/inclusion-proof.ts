import { assert } from '../result/assert.ts';
import { SHA256_BYTES, type Sha256 } from './digest.ts';
import { sameBytes } from './hex-text.ts';
import { nodeAt, nodeHash, type MerkleTree } from './merkle-tree.ts';

/**
 * The hashes that lead from leaf `index` up to the root, nearest first.
 *
 * Source: RFC 9162 section 2.1.3.1 (vectors seen and recomputed).
 */
export function inclusionProof(tree: MerkleTree, index: number): Uint8Array[] {
  assert(Number.isSafeInteger(index) && index >= 0 && index < tree.size, 'a leaf inside the tree');
  const proof: Uint8Array[] = [];
  let at = index;
  for (let level = 0; level < tree.levels.length - 1; level += 1) {
    const neighbour = nodeAt(tree, level, at % 2 === 0 ? at + 1 : at - 1);
    if (neighbour !== null) proof.push(neighbour);
    at = Math.floor(at / 2);
  }
  return proof;
}

/** What an inclusion proof claims: this leaf hash stands at `index` of the tree of `size` leaves with this root. */
export interface InclusionClaim {
  readonly leafHash: Uint8Array;
  readonly index: number;
  readonly size: number;
  readonly root: Uint8Array;
}

/** Where an inclusion proof starts: a leaf hash, its place, and the size of the tree. */
export type LeafPlace = Omit<InclusionClaim, 'root'>;

/**
 * Whether a proof shows the claim. Any proof that is too long, too short or malformed is simply not one.
 *
 * Source: RFC 9162 section 2.1.3.2 (algorithm from memory; accepted all 36 seen proofs of sizes 1 to 8).
 */
export function provesInclusion(claim: InclusionClaim, proof: readonly Uint8Array[], sha256: Sha256): boolean {
  const root = rootOfProof(claim, proof, sha256);
  return root !== null && sameBytes(root, claim.root);
}

/** The root that a proof leads to from a leaf; null where it cannot be a proof for that place in a tree of that size. */
export function rootOfProof(place: LeafPlace, proof: readonly Uint8Array[], sha256: Sha256): Uint8Array | null {
  if (!isInside(place) || [place.leafHash, ...proof].some((hash) => hash.length !== SHA256_BYTES)) return null;
  let [at, last, hash] = [place.index, place.size - 1, place.leafHash];
  for (const step of proof) {
    if (last === 0) return null;
    if (at % 2 === 1 || at === last) {
      hash = nodeHash(step, hash, sha256);
      // A last node without a neighbour went up as it was: skip the levels where it had none.
      while (at % 2 === 0 && at !== 0) [at, last] = [at / 2, Math.floor(last / 2)];
    } else {
      hash = nodeHash(hash, step, sha256);
    }
    [at, last] = [Math.floor(at / 2), Math.floor(last / 2)];
  }
  return last === 0 ? hash : null;
}

function isInside({ index, size }: LeafPlace): boolean {
  return Number.isSafeInteger(index) && Number.isSafeInteger(size) && index >= 0 && index < size;
}
