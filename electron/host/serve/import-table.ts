import Papa from 'papaparse';
import { entryKinds } from '../../../shared-core/contract/entry-kinds.ts';
import { must } from '../../../shared-core/result/assert.ts';
import { ok, refuse, type Result } from '../../../shared-core/result/result.ts';
import { decideImport, type ImportDecision, type ImportView } from '../../../shared-core/views/import-table.ts';
import { momentOf, type HostContext } from '../host-context.ts';
import { writeDecision } from '../run-change.ts';

interface ImportRequest {
  readonly text: string;
  readonly car: string | null;
}

const MOST_LINES = 20_000;

/** Shows what an import would come to, row by row; nothing is stored. */
export function previewImport(context: HostContext, request: ImportRequest): Result<ImportView> {
  const decided = decide(context, request);
  return decided.ok ? ok(decided.value.view) : decided;
}

/** Stores the rows that are not refused, in one transaction; the whole import is undone in one step. */
export function keepImport(context: HostContext, request: ImportRequest): Result<ImportView> {
  return writeDecision(context, () => {
    const decided = decide(context, request);
    if (decided.ok && decided.value.entries.length === 0) return refuse('import-nothing', { rows: decided.value.view.rows.length });
    return decided.ok ? ok({ entries: decided.value.entries, reply: decided.value.view }) : decided;
  }) as Result<ImportView>;
}

function decide(context: HostContext, { text, car }: ImportRequest): Result<ImportDecision> {
  const parsed = Papa.parse<string[]>(text.replace(/^\ufeff/, ''), { skipEmptyLines: false });
  const broken = parsed.errors.find((one) => one.type === 'Quotes');
  if (broken !== undefined) return refuse('import-quotes', { line: (broken.row ?? 0) + 1 });
  const lines = parsed.data.map((cells, at) => ({ line: at + 1, cells })).filter(({ cells }) => cells.some((cell) => cell.trim() !== ''));
  if (lines.length < 2) return refuse('import-empty');
  if (lines.length > MOST_LINES) return refuse('import-too-long', { most: MOST_LINES });
  return decideImport(context.household().facts, must(lines[0], 'head').cells, lines.slice(1), { car, kinds: entryKinds }, momentOf(context.world));
}
