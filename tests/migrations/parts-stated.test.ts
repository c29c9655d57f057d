import Database from 'better-sqlite3';
import { expect, test } from 'vitest';
import { databaseFile } from '../../electron/host/household-folder.ts';
import { readMigrations } from '../../electron/store/migrate.ts';
import { canonicalJson, type Json } from '../../shared-core/journal/canonical-json.ts';
import { lookInto, oldHousehold, openWith } from './old-household.ts';

const NASTY = ['plain', 'a,"name":"b', 'x\\', '","id":"y', '{"id":', ',"paidMinor":1}', ',"meets":[]}'];
const EMPTY: readonly Json[] = [];

/** Facts as they stood at version 20, each with a text in every place where one may be, and what must be added to each. */
const CASES = NASTY.flatMap((text) => [
  { family: 'specification', before: { id: 'odd', name: text, note: text, step: 0.5, unit: 'litre' }, more: { asks: EMPTY, fluid: null, mix: false } },
  { family: 'part', before: { contains: [{ part: 'a', quantity: 0.1 }], id: 'odd', meets: ['x'], name: text, number: text }, more: { keepsOpenedDays: null, stated: EMPTY } },
  { family: 'offer', before: { breaks: [{ packs: 3, priceMinor: 1 }], id: 'odd', most: 4, number: text, part: 'a', priceMinor: 2, quantity: 0.75, seenOn: '2026-01-01', supplier: 's' }, more: { depositMinor: 0, taxAdded: null, withdrawnOn: null } },
  { family: 'lot', before: { expires: null, id: 'odd', openedOn: null, paidMinor: null, part: 'a', quantity: 5, receivedOn: '2026-01-01', where: text }, more: { keepsOpenedDays: null, order: null } },
]) as readonly { readonly family: string; readonly before: Readonly<Record<string, Json>>; readonly more: Readonly<Record<string, Json>> }[];

// Source: our own rule, that a fact is the canonical JSON of what the newest version of its kind says.
test('facts of parts of version 20 get their new fields in the right place, whatever their texts hold', () => {
  const folder = oldHousehold(20);
  const store = new Database(databaseFile(folder));
  const write = store.prepare('INSERT INTO fact (family, id, car, seq, first_seq, value) VALUES (?, ?, NULL, 14, 14, ?)');
  CASES.forEach(({ family, before }, at) => write.run(family, `odd-${at}`, canonicalJson(before)));
  store.close();
  expect(openWith(folder, readMigrations())).toMatchObject({ ok: true });
  const values = lookInto(databaseFile(folder), (after) => CASES.map((_case, at) => after.prepare<[string], string>('SELECT value FROM fact WHERE id = ?').pluck().get(`odd-${at}`)));
  expect(values).toEqual(CASES.map(({ before, more }) => canonicalJson({ ...before, ...more })));
});
