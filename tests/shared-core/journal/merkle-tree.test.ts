import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { sha256 } from '../../../electron/host/node-digests.ts';
import { consistencyProof, provesConsistency } from '../../../shared-core/journal/consistency-proof.ts';
import { hexBytes, hexText, joinBytes } from '../../../shared-core/journal/hex-text.ts';
import { inclusionProof, provesInclusion } from '../../../shared-core/journal/inclusion-proof.ts';
import { merkleTree, nodeHash, treeRoot, type MerkleTree } from '../../../shared-core/journal/merkle-tree.ts';
import vectors from '../../reference/merkle-rfc9162.json' with { type: 'json' };

const leafHashes = vectors.leaves.map((data) => sha256(joinBytes(new Uint8Array([0]), hexBytes(data))));
const treeOf = (size: number): MerkleTree => merkleTree(leafHashes.slice(0, size), sha256);
const rootOf = (tree: MerkleTree): string => hexText(treeRoot(tree, sha256));
const numbered = (size: number): Uint8Array[] => Array.from({ length: size }, (_, at) => sha256(new Uint8Array([at & 255, at >> 8])));

describe('RFC 9162 vectors', () => {
  test('leaf hashes', () => {
    expect(leafHashes.map(hexText)).toEqual(vectors.leafHashes);
  });

  test.each(vectors.roots.map((root, size) => ({ size, root })))('root of $size leaves', ({ size, root }) => {
    expect(rootOf(treeOf(size))).toBe(root);
  });

  test.each(vectors.inclusion)('leaf $index of $size', ({ index, size, leafHash, proof, root }) => {
    expect(inclusionProof(treeOf(size), index).map(hexText)).toEqual(proof);
    const claim = { leafHash: hexBytes(leafHash), index, size, root: hexBytes(root) };
    expect(provesInclusion(claim, proof.map(hexBytes), sha256)).toBe(true);
  });

  test.each(vectors.consistency)('$from leaves grown to $to', ({ from, to, proof }) => {
    expect(consistencyProof(treeOf(to), from).map(hexText)).toEqual(proof);
    const claim = { first: from, firstRoot: treeRoot(treeOf(from), sha256), second: to, secondRoot: treeRoot(treeOf(to), sha256) };
    expect(provesConsistency(claim, proof.map(hexBytes), sha256)).toBe(true);
  });
});

describe('what is no proof', () => {
  const tree = treeOf(7);
  const root = treeRoot(tree, sha256);
  const good = { leafHash: leafHashes[5] ?? root, index: 5, size: 7, root };
  const proof = inclusionProof(tree, 5);
  const [first = root, second = root, third = root] = proof;

  // Source: the negative cases listed beside the RFC 9162 vectors.
  test.each([
    { case: 'index at the size', claim: { ...good, index: 7 }, proof },
    { case: 'index below zero', claim: { ...good, index: -1 }, proof },
    { case: 'broken index', claim: { ...good, index: 5.5 }, proof },
    { case: 'size 0', claim: { ...good, index: 0, size: 0 }, proof: [] },
    { case: 'index at the size of a lone leaf', claim: { leafHash: root, index: 1, size: 1, root }, proof: [] },
    { case: 'the size of a larger tree', claim: { leafHash: leafHashes[0] ?? root, index: 0, size: 8, root: treeRoot(treeOf(4), sha256) }, proof: inclusionProof(treeOf(4), 0) },
    { case: 'another index', claim: { ...good, index: 4 }, proof },
    { case: 'one step short', claim: good, proof: proof.slice(0, -1) },
    { case: 'one step long', claim: good, proof: [...proof, first] },
    { case: 'steps swapped', claim: good, proof: [second, first, third] },
    { case: 'a step of 31 bytes', claim: good, proof: [first.slice(1), second, third] },
    { case: 'a root of 31 bytes', claim: { ...good, root: root.slice(1) }, proof },
    { case: 'an inner node as leaf', claim: { leafHash: nodeHash(leafHashes[0] ?? root, leafHashes[1] ?? root, sha256), index: 0, size: 7, root }, proof: inclusionProof(tree, 0) },
  ])('inclusion: $case', ({ claim, proof: offered }) => {
    expect(provesInclusion(claim, offered, sha256)).toBe(false);
  });

  test('the untouched one is a proof', () => {
    expect(proof).toHaveLength(3);
    expect(provesInclusion(good, proof, sha256)).toBe(true);
  });

  test('a leaf hashed without its prefix gives another root', () => {
    expect(rootOf(merkleTree([sha256(new Uint8Array(0))], sha256))).not.toBe(vectors.roots[1]);
  });

  test('a last leaf is never doubled', () => {
    const doubled = merkleTree([...leafHashes.slice(0, 3), leafHashes[2] ?? root], sha256);
    expect(rootOf(treeOf(3))).not.toBe(rootOf(doubled));
  });

  const grown = { first: 3, firstRoot: treeRoot(treeOf(3), sha256), second: 7, secondRoot: root };
  const steps = consistencyProof(tree, 3);
  test.each([
    { case: 'other first root', claim: { ...grown, firstRoot: root }, proof: steps },
    { case: 'other second root', claim: { ...grown, secondRoot: grown.firstRoot }, proof: steps },
    { case: 'other first size', claim: { ...grown, first: 2 }, proof: steps },
    { case: 'the size of a larger second tree', claim: { first: 4, firstRoot: treeRoot(treeOf(4), sha256), second: 16, secondRoot: treeRoot(treeOf(8), sha256) }, proof: consistencyProof(treeOf(8), 4) },
    { case: 'sizes the wrong way', claim: { ...grown, first: 8 }, proof: steps },
    { case: 'an empty first tree', claim: { ...grown, first: 0 }, proof: [] },
    { case: 'no steps', claim: grown, proof: [] },
    { case: 'one step short', claim: grown, proof: steps.slice(0, -1) },
    { case: 'one step long', claim: grown, proof: [...steps, root] },
    { case: 'same size, other root', claim: { ...grown, first: 7 }, proof: [] },
    { case: 'same size, a needless step', claim: { first: 7, firstRoot: root, second: 7, secondRoot: root }, proof: [root] },
  ])('consistency: $case', ({ claim, proof: offered }) => {
    expect(provesConsistency(claim, offered, sha256)).toBe(false);
  });
});

/** The RFC's own recursion, split at the largest power of two: slow and plain, to compare with. */
function rootByRecursion(leaves: readonly Uint8Array[]): Uint8Array {
  if (leaves.length === 1 && leaves[0] !== undefined) return leaves[0];
  let half = 1;
  while (half * 2 < leaves.length) half *= 2;
  return nodeHash(rootByRecursion(leaves.slice(0, half)), rootByRecursion(leaves.slice(half)), sha256);
}

describe('trees of any size', () => {
  test('root is that of the recursion', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 300 }), (size) => {
        const leaves = numbered(size);
        expect(rootOf(merkleTree(leaves, sha256))).toBe(hexText(rootByRecursion(leaves)));
      }),
      { numRuns: 60 },
    );
  });

  test('every leaf is proven, and no other leaf in its place', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 300 }), fc.nat(), (size, pick) => {
        const [leaves, index] = [numbered(size), pick % size];
        const tree = merkleTree(leaves, sha256);
        const claim = { leafHash: leaves[index] ?? new Uint8Array(), index, size, root: treeRoot(tree, sha256) };
        const proof = inclusionProof(tree, index);
        expect(provesInclusion(claim, proof, sha256)).toBe(true);
        expect(provesInclusion({ ...claim, leafHash: leaves[(index + 1) % size] ?? new Uint8Array() }, proof, sha256)).toBe(false);
      }),
      { numRuns: 60 },
    );
  });

  test('every earlier size is proven, and no changed leaf', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 300 }), fc.nat(), fc.nat(), (size, pick, touched) => {
        const [leaves, from] = [numbered(size), 1 + (pick % (size - 1))];
        const tree = merkleTree(leaves, sha256);
        const firstRoot = treeRoot(merkleTree(leaves.slice(0, from), sha256), sha256);
        const proof = consistencyProof(tree, from);
        const claim = { first: from, firstRoot, second: size, secondRoot: treeRoot(tree, sha256) };
        expect(provesConsistency(claim, proof, sha256)).toBe(true);
        const rewritten = leaves.map((leaf, at) => (at === touched % from ? sha256(leaf) : leaf));
        const other = merkleTree(rewritten, sha256);
        expect(provesConsistency({ ...claim, secondRoot: treeRoot(other, sha256) }, consistencyProof(other, from), sha256)).toBe(false);
      }),
      { numRuns: 60 },
    );
  });

  test('200 000 leaves: a thousand proofs hash nothing again', () => {
    let hashes = 0;
    const counted = (bytes: Uint8Array) => {
      hashes += 1;
      return sha256(bytes);
    };
    const leaves = numbered(200_000);
    const tree = merkleTree(leaves, counted);
    const built = hashes;
    expect(built).toBe(199_999);
    const root = treeRoot(tree, counted);
    for (let index = 0; index < 200_000; index += 200) {
      const claim = { leafHash: leaves[index] ?? root, index, size: 200_000, root };
      expect(provesInclusion(claim, inclusionProof(tree, index), sha256)).toBe(true);
    }
    consistencyProof(tree, 123_457);
    expect(hashes).toBe(built);
  });
});
