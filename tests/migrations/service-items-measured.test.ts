import { expect, test } from 'vitest';
import { databaseFile } from '../../electron/host/household-folder.ts';
import { readMigrations } from '../../electron/store/migrate.ts';
import { canonicalJson, type Json } from '../../shared-core/journal/canonical-json.ts';
import Database from 'better-sqlite3';
import { lookInto, oldHousehold, openWith } from './old-household.ts';

/** A service item as it stood at version 10, with the name and the opened parts of the case. */
function itemOfVersion10(name: string, access: readonly string[]): Readonly<Record<string, Json>> {
  return {
    access: [...access], anchor: { kind: 'completion' }, car: 'pip', confirmed: false, garagePrice: 4250, harm: 'safety', history: 'unknown', id: 'odd',
    interval: { first: { distance: { unit: 'mi', value: 0.5 }, months: null }, repeat: { distance: { unit: 'mi', value: 0.5 }, months: null } }, minutes: 12, name, needs: [],
    place: 'either', printedDate: null, source: null, work: 'check',
  };
}

// Source: our own rule, that a fact is the canonical JSON of what the newest version of its kind says.
test.each([
  { case: 'plain words', name: 'brake fluid', access: [] },
  { case: 'a name that looks like the field', name: 'a,"minutes":12,"measure":null', access: [] },
  { case: 'opened parts that look like it', name: 'x', access: [',', 'minutes', ',"minutes":'] },
  { case: 'a name with a backslash at its end', name: 'x\\', access: ['\\",'] },
])('a service item of version 10 gets its measure in the right place: $case', ({ name, access }) => {
  const folder = oldHousehold(10);
  const item = itemOfVersion10(name, access);
  const store = new Database(databaseFile(folder));
  store.prepare("INSERT INTO fact (family, id, car, seq, first_seq, value) VALUES ('service-item', 'odd', 'pip', 10, 10, ?)").run(canonicalJson(item));
  store.close();
  expect(openWith(folder, readMigrations())).toMatchObject({ ok: true });
  const value = lookInto(databaseFile(folder), (after) => after.prepare<[], string>("SELECT value FROM fact WHERE id = 'odd'").pluck().get());
  expect(value).toBe(canonicalJson({ ...item, measure: null }));
});

test('nothing but service items is touched', () => {
  const folder = oldHousehold(10);
  const others = () => lookInto(databaseFile(folder), (store) => store.prepare("SELECT family, id, value FROM fact WHERE family <> 'service-item' ORDER BY family, id").all());
  const before = others();
  // Later steps touch others of their own.
  openWith(folder, readMigrations().filter(({ version }) => version <= 20));
  expect(others()).toEqual(before);
  expect(before.length).toBeGreaterThan(10);
});
