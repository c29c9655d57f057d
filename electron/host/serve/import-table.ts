import { entryKinds } from '../../../shared-core/contract/entry-kinds.ts';
import { hexText } from '../../../shared-core/journal/hex-text.ts';
import { newEntry } from '../../../shared-core/journal/entry-kind.ts';
import { importKept } from '../../../shared-core/records/import.ts';
import { ok, refuse, type Result } from '../../../shared-core/result/result.ts';
import { LARGEST_TABLE_BYTES, type KeepImportRequest, type KeptImport } from '../../../shared-core/views/import/import-request.ts';
import { decideTable, type DecidedTable } from '../../../shared-core/views/import/import-table.ts';
import type { ImportView } from '../../../shared-core/views/import/import-view.ts';
import { notTakenInBefore, nothingToStore } from '../../../shared-core/views/import/nothing-to-store.ts';
import { keptFileName, showImport } from '../../../shared-core/views/import/show-import.ts';
import { decodeTable, type DecodedTable } from '../decode-table.ts';
import { momentOf, type HostContext } from '../host-context.ts';
import { sha256 } from '../node-digests.ts';
import { writeDecision } from '../run-change.ts';

type PreviewRequest = Omit<KeepImportRequest, 'digest' | 'outcome' | 'again'>;

const BASE64 = /^[A-Za-z0-9+/]*={0,2}$/;

/** Shows what a table would come to, row by row, and what it leaves open; nothing is stored. */
export function previewImport(context: HostContext, request: PreviewRequest): Result<ImportView> {
  const decided = decide(context, request);
  return decided.ok ? ok(decided.value.view) : decided;
}

/** Stores the rows that are not refused as one import, in one transaction; nothing where something is open or has changed since the preview. */
export function keepImport(context: HostContext, request: KeepImportRequest): Result<KeptImport> {
  return writeDecision(context, () => {
    const decided = decide(context, request);
    if (!decided.ok) return decided;
    const { table, view } = decided.value;
    const fit = checkSeen(context, request, view);
    if (!fit.ok) return fit;
    const id = context.world.newId();
    const entry = newEntry(importKept, { id, on: context.world.today(), file: view.file, digest: view.digest, readings: view.counts.readings, records: view.counts.records, entries: table.entries.length });
    return ok({ entries: [entry, ...table.entries], reply: { ...view, import: id } });
  }) as Result<KeptImport>;
}

function checkSeen(context: HostContext, { digest, outcome, again }: KeepImportRequest, view: ImportView): Result<null> {
  if (digest !== null && digest !== view.digest) return refuse('import-file-changed');
  const [question] = view.questions;
  if (question !== undefined) return refuse('import-questions-open', { count: view.questions.length, why: question.text });
  if (outcome !== null && outcome !== view.outcome) return refuse('import-outcome-changed');
  const { facts } = context.household();
  if (!view.ready) return nothingToStore(facts, view);
  return again ? ok(null) : notTakenInBefore(facts, view.digest);
}

function decide(context: HostContext, request: PreviewRequest): Result<{ readonly table: DecidedTable; readonly view: ImportView }> {
  const { base64, text, name, ...choices } = request;
  const file = readFile(base64, text);
  if (!file.ok) return file;
  const table = decideTable(context.household().facts, file.value.text, choices, entryKinds, momentOf(context.world));
  if (!table.ok) return table;
  const { encoding, digest } = file.value;
  return ok({ table: table.value, view: showImport(table.value, { name: keptFileName(name), encoding, digest }, sha256) });
}

function readFile(base64: string | null, text: string | null): Result<DecodedTable & { readonly digest: string }> {
  if ((base64 === null) === (text === null)) return refuse('import-text-or-bytes');
  if (base64 !== null && !BASE64.test(base64)) return refuse('paper-not-base64', {}, ['base64']);
  const bytes = base64 === null ? Buffer.from(text ?? '', 'utf8') : Buffer.from(base64, 'base64');
  if (bytes.length > LARGEST_TABLE_BYTES) return refuse('import-file-large', {});
  const decoded = decodeTable(bytes);
  return decoded.ok ? ok({ ...decoded.value, digest: hexText(sha256(bytes)) }) : decoded;
}
