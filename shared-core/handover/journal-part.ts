import { z } from 'zod';
import { consistencyProof } from '../journal/consistency-proof.ts';
import type { Json } from '../journal/canonical-json.ts';
import { sha256TextSchema } from '../journal/digest.ts';
import { saltTextSchema, type ShownField } from '../journal/field-digest.ts';
import { hexText } from '../journal/hex-text.ts';
import { inclusionProof } from '../journal/inclusion-proof.ts';
import type { MerkleTree } from '../journal/merkle-tree.ts';
import { rowSchema, type Row } from '../journal/row.ts';
import { sealSchema, type Seal } from '../journal/seal.ts';
import { must } from '../result/assert.ts';

/** A row as it is handed over: its proof to the sealed root, the fields that are shown, the names of those that are not. */
export const packEntrySchema = z.strictObject({
  row: rowSchema,
  proof: z.array(sha256TextSchema).max(64),
  shown: z.record(z.string(), z.strictObject({ salt: saltTextSchema, value: z.json() })),
  withheld: z.array(z.string()),
});
export type PackEntry = z.infer<typeof packEntrySchema>;

/** `data/journal/rows.json`: the rows of one car, in the order of their numbers. */
export const rowsPartSchema = z.strictObject({ format: z.literal('trunnion-rows-1'), entries: z.array(packEntrySchema).min(1) });
export type RowsPart = z.infer<typeof rowsPartSchema>;

/** A seal given earlier, and the proof that the sealed journal still begins with it. */
const earlierSealSchema = z.strictObject({ seal: sealSchema, proof: z.array(sha256TextSchema).max(64) });

/** `data/journal/seal.json`: the seal of the whole journal, the public half of its key, and the seals given before. */
export const sealPartSchema = z.strictObject({
  format: z.literal('trunnion-seal-1'),
  seal: sealSchema,
  publicKey: sha256TextSchema,
  earlier: z.array(earlierSealSchema),
});
export type SealPart = z.infer<typeof sealPartSchema>;

/** A row with its values and salts, as the journal keeps them; an erased value is null here and withheld for good. */
export interface KeptEntry {
  readonly row: Row;
  readonly kept: Readonly<Record<string, ShownField | null>>;
}

/** Whether a field of an entry is shown to the receiver. */
export type ShowField = (row: Row, field: string) => boolean;

/** A row made ready to hand over: what `show` refuses, and what was erased, goes by its digest alone. */
export function packEntry({ row, kept }: KeptEntry, tree: MerkleTree, show: ShowField): PackEntry {
  const [shown, withheld]: [Record<string, { salt: string; value: z.core.util.JSONType }>, string[]] = [{}, []];
  for (const name of Object.keys(row.fields).sort()) {
    const field = kept[name] ?? null;
    if (field === null || !show(row, name)) withheld.push(name);
    else shown[name] = { salt: field.salt, value: field.value as z.core.util.JSONType };
  }
  return { row, proof: inclusionProof(tree, row.seq).map(hexText), shown, withheld };
}

/** The seal's file. `earlier` are the seals given before, of this same journal. */
export function sealPart(seal: Seal, publicKey: Uint8Array, earlier: readonly Seal[], tree: MerkleTree): SealPart {
  const older = earlier.filter((one) => one.treeSize <= tree.size).sort((a, b) => a.treeSize - b.treeSize);
  return {
    format: 'trunnion-seal-1',
    seal,
    publicKey: hexText(publicKey),
    earlier: older.map((one) => ({ seal: one, proof: consistencyProof(tree, one.treeSize).map(hexText) })),
  };
}

/** The values that an entry shows, by field. */
export function shownValues(entry: PackEntry): Readonly<Record<string, Json>> {
  return Object.fromEntries(Object.entries(entry.shown).map(([name, field]) => [name, must(field, name).value as Json]));
}
