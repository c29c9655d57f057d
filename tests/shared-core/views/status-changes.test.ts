import { expect, test } from 'vitest';
import { ONCE, type Interval } from '../../../shared-core/care/limit.ts';
import { serviceItemSet } from '../../../shared-core/care/service-item.ts';
import { cars } from '../../../shared-core/fleet/car.ts';
import { newEntry } from '../../../shared-core/journal/entry-kind.ts';
import { entryKinds } from '../../../shared-core/contract/entry-kinds.ts';
import { memoryFacts } from '../../../shared-core/journal/memory-facts.ts';
import { wishSet, wishSchema } from '../../../shared-core/ledger/wish.ts';
import { must } from '../../../shared-core/result/assert.ts';
import { historyOfCar } from '../../../shared-core/views/history-of-car.ts';
import { day } from '../calendar/day.ts';
import { memoryHousehold } from '../contract/memory-household.ts';

/** Pip with a tow bar and an oil change, each an item with a record; the tow bar was wished for, and another thing still is. */
function status(recordedOn: string | null, interval: Interval | null = null) {
  const household = memoryHousehold();
  household.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: day('2020-11-25'), keptSince: day('2020-11-25') });
  for (const id of ['oil', 'tow-bar', 'radio']) household.must('item.add', { id, car: 'pip', name: id, interval: { repeat: { months: 12, distance: null } }, history: 'never-done' });
  for (const id of ['oil', 'tow-bar']) if (recordedOn !== null) household.must('record.add', { id: `of-${id}`, car: 'pip', date: day(recordedOn), title: id, lines: [{ name: id, item: id, work: 'replace' }] });
  const wish = (item: string) => newEntry(wishSet, wishSchema.parse({ id: `wish-${item}`, car: 'pip', name: 'SECRETWISH', rank: 1, addedOn: '2025-01-01', needs: [], others: [], place: 'home', minutes: null, access: [], garagePrice: null, item, lots: [], letGoOn: null, note: '' }));
  const entries = [...household.entries.map((one) => (one.kind === serviceItemSet.kind && interval !== null ? { ...one, values: { ...one.values, interval: interval as never } } : one)), ...['tow-bar', 'radio'].map((item, at) => ({ ...wish(item), seq: household.entries.length + at, at: '2026-11-25T12:00:00.000Z' }))];
  const facts = memoryFacts(entryKinds, entries);
  return historyOfCar(facts, must(facts.get(cars, 'pip'), 'car'), {
    today: day('2026-11-25'), sample: false, currency: 'GBP', withheld: new Set(), period: { from: null, to: null }, cover: null, previous: [], papersLeftOut: false,
    amendments: new Map(), paperPaths: new Map(), marked: new Map(), treeSize: entries.length, root: '', keyFingerprint: '',
  }).status;
}

test('a wish that was done is a change to the car, by the name of its item; one that was not is none, and neither is an item of care', () => {
  const told = status('2025-06-01');
  expect(told.elements.find((one) => one.element === 'changes')).toMatchObject({ state: 'not-known', lines: [{ name: 'tow-bar', text: 'done on 1 Jun 2025; no paper of it is kept' }] });
  expect(told.elements.find((one) => one.element === 'since-last-done')?.lines.map((one) => one.name)).toEqual(['oil']);
  expect(JSON.stringify(told)).not.toContain('SECRETWISH');
});

test('what was planned to be done once, without a wish, is a change as well: so with what came from an earlier keeper', () => {
  const told = status('2025-06-01', ONCE);
  expect(told.elements.find((one) => one.element === 'changes')?.lines.map((one) => one.name)).toEqual(['oil', 'tow-bar']);
  expect(told.elements.find((one) => one.element === 'since-last-done')?.lines).toEqual([]);
});

test('a wish that is planned and not done is not told of', () => {
  const told = JSON.stringify(status(null));
  expect(told).not.toMatch(/tow-bar|radio/);
  expect(told).toContain('"element":"changes","state":"none-written"');
});
