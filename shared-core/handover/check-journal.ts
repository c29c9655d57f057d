import { fieldAgrees } from '../journal/field-digest.ts';
import { hexBytes, hexText } from '../journal/hex-text.ts';
import { rootOfProof } from '../journal/inclusion-proof.ts';
import { rowHash } from '../journal/row.ts';
import { sealFault } from '../journal/seal.ts';
import { fileFault, rowFault, type Fault } from './check-fault.ts';
import type { CheckTools } from './check-files.ts';
import type { PackEntry, RowsPart, SealPart } from './journal-part.ts';
import { ROWS, SEAL } from './pack-files.ts';

/** Checks the seal itself, then every row against it: its place, its proof, its shown values. */
export function checkJournal({ entries }: RowsPart, part: SealPart, tools: CheckTools): Fault[] {
  return [...sealFaults(part, tools), ...proofFaults(entries, part, tools), ...orderFaults(entries, tools), ...entries.flatMap((entry) => fieldFaults(entry, tools))];
}

function sealFaults({ seal, publicKey }: SealPart, { sha256, verify }: CheckTools): Fault[] {
  const fault = sealFault(seal, hexBytes(publicKey), sha256, verify);
  return fault === null ? [] : [fileFault('bad-signature', SEAL, fault === 'other-key' ? 'fault-seal-key' : 'fault-seal-signature')];
}

/**
 * Where all rows lead to one and the same root that is not the sealed one, the root is at fault; else the rows that lead
 * elsewhere are. A single row cannot tell the two apart and is named itself.
 */
function proofFaults(entries: readonly PackEntry[], { seal }: SealPart, tools: CheckTools): Fault[] {
  const roots = entries.map((entry) => rootFrom(entry, seal.treeSize, tools));
  const [first] = roots;
  const isOneOther = entries.length > 1 && first !== null && first !== seal.root && roots.every((root) => root === first);
  if (isOneOther) return [fileFault('wrong-root', SEAL, 'fault-root', { sealed: seal.root })];
  return entries.flatMap(({ row }, at) => (roots[at] === seal.root ? [] : [rowFault('wrong-proof', ROWS, row.seq, 'fault-proof')]));
}

function rootFrom({ row, proof }: PackEntry, size: number, { sha256 }: CheckTools): string | null {
  const place = { leafHash: hexBytes(rowHash(row, sha256)), index: row.seq, size };
  const root = rootOfProof(place, proof.map(hexBytes), sha256);
  return root === null ? null : hexText(root);
}

/** Rows stand in the order of their numbers, each once, and where two are neighbours the second follows the first by its hash. */
function orderFaults(entries: readonly PackEntry[], { sha256 }: CheckTools): Fault[] {
  return entries.flatMap(({ row }, at) => {
    const before = entries[at - 1]?.row;
    if (before === undefined || row.seq > before.seq + 1) return [];
    if (row.seq <= before.seq) return [rowFault('reordered', ROWS, row.seq, 'fault-row-order', { before: before.seq })];
    return row.prev === rowHash(before, sha256) ? [] : [rowFault('wrong-proof', ROWS, row.seq, 'fault-row-follows', { before: before.seq })];
  });
}

/** Every field of the row is either shown with the value it had, or named as withheld. */
function fieldFaults({ row, shown, withheld }: PackEntry, { sha256 }: CheckTools): Fault[] {
  const named = [...Object.keys(shown), ...withheld];
  const fault = (code: 'changed' | 'missing' | 'added', key: string) => (field: string) => rowFault(code, ROWS, row.seq, key, { field });
  const wrong = Object.entries(shown).filter(([name, { value, salt }]) => {
    const digest = row.fields[name];
    return digest !== undefined && !fieldAgrees({ value: value, salt }, digest, sha256);
  });
  return [
    ...wrong.map(([name]) => name).map(fault('changed', 'fault-field-changed')),
    ...Object.keys(row.fields).filter((name) => !named.includes(name)).map(fault('missing', 'fault-field-missing')),
    ...named.filter((name, at) => !Object.hasOwn(row.fields, name) || named.indexOf(name) !== at).map(fault('added', 'fault-field-added')),
  ];
}
