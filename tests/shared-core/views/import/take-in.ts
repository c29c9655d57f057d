import { hash } from 'node:crypto';
import { entryKinds } from '../../../../shared-core/contract/entry-kinds.ts';
import { importChoicesSchema } from '../../../../shared-core/views/import/import-choices.ts';
import { decideTable, type DecidedTable } from '../../../../shared-core/views/import/import-table.ts';
import type { ImportView } from '../../../../shared-core/views/import/import-view.ts';
import { showImport } from '../../../../shared-core/views/import/show-import.ts';
import { importViewSchema } from '../../../../shared-core/views/import/import-view.ts';
import type { Result } from '../../../../shared-core/result/result.ts';
import type { RequestOf } from '../../../../shared-core/contract/contract.ts';
import { day } from '../../calendar/day.ts';
import { memoryHousehold, type MemoryHousehold } from '../../contract/memory-household.ts';

/** What may be said of a table. */
export type Said = Omit<RequestOf<'import.preview'>, 'text' | 'base64' | 'name'>;

/** A household in pounds and miles with the car Pip, two of its items, and readings if given. */
export function withPip(readings: readonly (readonly [date: string, miles: number])[] = []): MemoryHousehold {
  const household = memoryHousehold({ unit: 'mi', currency: 'GBP', locale: 'en-GB' });
  household.must('car.add', { id: 'pip', name: 'Pip', registration: 'AB12 CDE', firstRegistered: day('2010-01-01'), keptSince: day('2010-01-01') });
  for (const [id, name] of [['oil', 'Engine oil and filter'], ['fluid', 'Brake fluid']] as const) {
    household.must('item.add', { id, car: 'pip', name, history: 'unknown', interval: { repeat: { months: 24, distance: null } } });
  }
  for (const [date, value] of readings) household.must('reading.record', { car: 'pip', value, date: day(date) });
  return household;
}

/** Decides on a table for a household on 2026-11-25. */
export function decide(household: MemoryHousehold, text: string, said: Said = {}): Result<DecidedTable> {
  let ids = 0;
  return decideTable(household.facts(), text, importChoicesSchema.parse(said), entryKinds, { today: day('2026-11-25'), now: '2026-11-25T12:00:00.000Z', newId: () => `import-${(ids += 1)}` });
}

/** What is shown of a table, as its schema has it; a refusal fails the test. */
export function preview(household: MemoryHousehold, text: string, said: Said = {}): ImportView {
  const decided = decide(household, text, said);
  if (!decided.ok) throw new Error(`refused: ${JSON.stringify(decided.refusal)}`);
  const file = { name: null, encoding: 'UTF-8', digest: '0'.repeat(64) };
  return importViewSchema.parse(showImport(decided.value, file, (bytes) => hash('sha256', bytes, 'buffer')));
}

/** The code of what a whole table is refused for; null where it is not. */
export function refusalOf(household: MemoryHousehold, text: string, said: Said = {}): string | null {
  const decided = decide(household, text, said);
  return decided.ok ? null : decided.refusal.code;
}
