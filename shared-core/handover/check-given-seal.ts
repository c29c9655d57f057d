import { provesConsistency } from '../journal/consistency-proof.ts';
import { hexBytes } from '../journal/hex-text.ts';
import { sealFault, type Seal } from '../journal/seal.ts';
import type { Message } from '../result/result.ts';
import { fileFault, type Fault } from './check-fault.ts';
import type { CheckTools } from './check-files.ts';
import type { SealPart } from './journal-part.ts';
import { SEAL } from './pack-files.ts';

/** What comparing with a seal given before came to. */
export interface GivenSealReport {
  readonly faults: readonly Fault[];
  readonly notes: readonly Message[];
}

/**
 * Checks a pack's journal against a seal that was given before: the same key, and a journal that still begins with the sealed one.
 * This is what finds a pack that was rebuilt whole with a new key.
 */
export function checkGivenSeal(given: Seal, part: SealPart, tools: CheckTools): GivenSealReport {
  const fault = (code: Fault['code'], key: string) => ({ faults: [fileFault(code, SEAL, key, { given: given.treeSize, sealed: part.seal.treeSize })], notes: [] });
  if (given.keyFingerprint !== part.seal.keyFingerprint) return fault('bad-signature', 'fault-given-other-key');
  if (sealFault(given, hexBytes(part.publicKey), tools.sha256, tools.verify) !== null) return fault('bad-signature', 'fault-given-signature');
  if (given.treeSize > part.seal.treeSize) return { faults: [], notes: [{ key: 'note-given-newer', values: { given: given.treeSize, sealed: part.seal.treeSize } }] };
  if (given.treeSize === part.seal.treeSize) return given.root === part.seal.root ? agrees(given) : fault('wrong-root', 'fault-given-root');
  const earlier = part.earlier.find((one) => one.seal.treeSize === given.treeSize);
  if (earlier === undefined) return fault('wrong-proof', 'fault-given-unproven');
  if (earlier.seal.root !== given.root) return fault('wrong-root', 'fault-given-root');
  return continues(given, part.seal, earlier.proof, tools) ? agrees(given) : fault('wrong-proof', 'fault-given-unproven');
}

function agrees(given: Seal): GivenSealReport {
  return { faults: [], notes: [{ key: 'note-given-agrees', values: { given: given.treeSize } }] };
}

function continues(first: Seal, second: Seal, proof: readonly string[], { sha256 }: CheckTools): boolean {
  const claim = { first: first.treeSize, firstRoot: hexBytes(first.root), second: second.treeSize, secondRoot: hexBytes(second.root) };
  return provesConsistency(claim, proof.map(hexBytes), sha256);
}

/** Checks the seals that the pack itself says were given earlier. */
export function checkEarlierSeals(part: SealPart, tools: CheckTools): Fault[] {
  return part.earlier.flatMap(({ seal, proof }) => {
    const values = { given: seal.treeSize };
    if (sealFault(seal, hexBytes(part.publicKey), tools.sha256, tools.verify) !== null) return [fileFault('bad-signature', SEAL, 'fault-earlier-signature', values)];
    return continues(seal, part.seal, proof, tools) ? [] : [fileFault('wrong-proof', SEAL, 'fault-earlier-unproven', values)];
  });
}
