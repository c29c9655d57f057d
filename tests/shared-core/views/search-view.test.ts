import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { HOUSEHOLD_ID, households } from '../../../shared-core/fleet/household.ts';
import { foldText } from '../../../shared-core/views/search-fold.ts';
import { indexThings, searchIndex, type SearchIndex } from '../../../shared-core/views/search-index.ts';
import { isSlip } from '../../../shared-core/views/search-match.ts';
import { amountField, dayField, FOUND_KINDS, textField, type SearchThing } from '../../../shared-core/views/search-thing.ts';
import { searchRequestSchema, searchView, searchViewSchema, type SearchView } from '../../../shared-core/views/search-view.ts';
import { must } from '../../../shared-core/result/assert.ts';
import { day } from '../calendar/day.ts';
import type { MemoryHousehold } from '../contract/memory-household.ts';
import { wishFor, wishHousehold } from '../ledger/wish-household.ts';

const RECEIPT = 'a'.repeat(64);

/** Pip of the parts household, and what stands under it; Dusk, which was sold. */
function household(): MemoryHousehold {
  const made = wishHousehold();
  made.must('car.add', { id: 'dusk', name: 'Dusk', description: 'diesel estate', registration: 'AB12 CDE', power: 'diesel', unit: 'km', use: 'everyday' });
  made.must('item.add', { id: 'fluid', car: 'pip', name: 'brake fluid', history: 'never-done', interval: { repeat: { months: 24, distance: null } } });
  made.must('record.add', { id: 'r1', car: 'pip', date: day('2026-11-12'), title: 'Brake service', placeName: 'Müller’s', lines: [{ name: 'pads, front', note: 'squeaked before' }], costs: [{ kind: 'parts', text: 'pads', amountMinor: 128_450 }], note: 'Fluid looked dark.' });
  made.must('record.add', { id: 'r2', car: 'dusk', date: day('2024-03-02'), title: 'Oil', lines: [{ name: 'oil 5W-30' }], costs: [{ kind: 'parts', text: 'oil', amountMinor: 1250 }], reference: 'RX 100/7' });
  made.must('obligation.add', { id: 'test', car: 'pip', kind: 'roadworthiness-test', lastValidDay: day('2027-02-03'), months: 12 });
  made.must('recall.set', { id: 'call', car: 'pip', number: 'RC-77', what: 'Airbag inflator' });
  made.must('follow-up.add', { id: 'look', car: 'pip', text: 'Torque the wheel bolts', dueOn: day('2026-12-01') });
  made.must('tool.set', { id: 'tool', name: 'Bearing puller', state: 'borrowed', lender: 'the club', until: day('2027-03-09'), paidMinor: 900, boughtOn: day('2024-06-01') });
  made.must('supplier.set', { id: 'counter', name: 'Zähler & Søn', deliveryMinor: 0, leadDays: 2 });
  wishFor(made, 'springs-wish', ['springs'], { name: 'firmer springs' });
  made.must('car.leave', { car: 'dusk', how: 'sold', on: day('2026-10-01'), buyer: 'a neighbour' });
  return made;
}

const index = (made = household()) => searchIndex(made.facts(), must(made.facts().get(households, HOUSEHOLD_ID), 'household'), () => null, day('2026-11-25'));
const ask = (of: SearchIndex, query: string, more: Partial<{ most: number; kind: SearchThing['kind'] | null }> = {}): SearchView => searchViewSchema.parse(searchView(of, searchRequestSchema.parse({ query, most: 100, ...more })));
const ids = (view: SearchView) => view.groups.flatMap((group) => group.hits.map((hit) => `${hit.kind} ${hit.id}`));

describe('what is found in a household', () => {
  const made = index();
  test.each([
    ['brake fluid', ['item fluid', 'record r1']],
    ['BRAKE', ['item fluid', 'record r1']],
    ['fluid brake', ['item fluid', 'record r1']],
    ['brake fluid dusk', []],
    ['ab12cde', ['car dusk']],
    ['AB1 2CDE', ['car dusk']],
    ['ab12 cde', ['car dusk']],
    ['neighbour', ['car dusk']],
    ['estate', ['car dusk']],
    ['5w30', ['record r2']],
    ['5W 30', ['record r2']],
    ['5w-30', ['record r2']],
    ['rx100', ['record r2']],
    ['muller', ['record r1']],
    ['uller', ['record r1', 'tool tool']],
    ['Müllers', ['record r1']],
    ['squeaked', ['record r1']],
    ['12.50', ['record r2']],
    ['1284.50', ['record r1']],
    ['1,284.50', ['record r1']],
    ['£1.284,50', ['record r1']],
    ['12 Nov 2026', ['record r1']],
    ['Nov 12, 2026', ['record r1']],
    ['12 November 2026', ['record r1']],
    ['2026-11-12', ['record r1']],
    ['12/11/2026', ['record r1']],
    ['Mar 2024', ['record r2']],
    ['march', ['record r2', 'tool tool']],
    ['2024', ['record r2', 'tool tool']],
    ['2024-03', ['record r2']],
    ['3/2024', ['record r2']],
    ['3 Feb 2027', ['obligation test']],
    ['roadworthiness', ['obligation test']],
    ['rc77', ['recall call']],
    ['inflator', ['recall call']],
    ['wheel bolts', ['follow-up look']],
    ['bearing puller club', ['tool tool']],
    ['zahler', ['supplier counter']],
    ['ZÄHLER', ['supplier counter']],
    ['firmer', ['wish springs-wish']],
    ['neo', []],
    ['!!!', []],
    ['', []],
  ])('%s', (query, found) => expect(ids(ask(made, query)).sort()).toEqual([...found].sort()));

  test('leads to each thing in the page, and names its car and whether that left', () => {
    expect(ask(made, 'oil 5w30').groups[0]?.hits[0]).toMatchObject({ href: '/car/dusk/record/r2', car: { id: 'dusk', name: 'Dusk', left: true }, date: '2024-03-02' });
    expect(ask(made, 'inflator').groups[0]?.hits[0]?.href).toBe('/car/pip#recall-call');
  });

  test('says in which field it was found, with what is to be marked; a day and an amount as values', () => {
    const hit = (query: string) => ask(made, query).groups[0]?.hits[0];
    expect(hit('brake fluid')).toMatchObject({ name: 'brake fluid', nameMarks: [[0, 5], [6, 11]], where: null });
    expect(hit('neighbour')?.where).toMatchObject({ field: 'to whom it went', text: 'a neighbour', marks: [[2, 11]] });
    expect(hit('ab12cde')?.where).toMatchObject({ field: 'registration', text: 'AB12 CDE', marks: [[0, 8]] });
    expect(hit('12.50')?.where).toMatchObject({ field: 'amount', minor: 1250, date: null, text: '' });
    expect(hit('12 Nov 2026')?.where).toMatchObject({ field: 'day', date: '2026-11-12', minor: null });
  });

  test('what was read from a paper counts, cut to a line around what was found', () => {
    const withPaper: SearchThing = { kind: 'paper', id: RECEIPT, name: 'scan.pdf', car: null, date: null, href: `/paper/${RECEIPT}`, fields: [...textField('name', 'name', 'scan.pdf'), ...textField('read-from-it', 'note', `${'word '.repeat(60)}gearbox oil ${'word '.repeat(60)}`)] };
    const where = ask(indexThings([withPaper], made.reading, []), 'gearbox').groups[0]?.hits[0]?.where;
    expect(where).toMatchObject({ before: true, after: true });
    expect(where?.text.slice(...(where.marks[0] ?? [0, 0]))).toBe('gearbox');
    expect(where?.text.length).toBeLessThanOrEqual(115);
  });

  test('more than two hundred characters are refused', () => expect(searchRequestSchema.safeParse({ query: 'x'.repeat(201) }).success).toBe(false));
});

describe('the order', () => {
  const things = (...names: readonly (readonly [id: string, name: string, note?: string])[]): SearchThing[] =>
    names.map(([id, name, note]) => ({ kind: 'record', id, name, car: null, date: null, href: '/', fields: [...textField('title', 'name', name), ...textField('note', 'note', note)] }));
  const of = (list: readonly SearchThing[], query: string) => ids(ask(indexThings(list, { currency: 'GBP', order: 'day-first' }, [{ id: 'gone', name: 'Gone', left: true }]), query)).map((id) => id.split(' ')[1]);

  test('the whole name, then a whole word, the beginning of one, its inside, and a note last', () => {
    expect(of(things(['note', 'x', 'oil'], ['inside', 'boiler'], ['begins', 'oiled hinge'], ['word', 'gearbox oil'], ['whole', 'Oil'], ['x', 'nothing']), 'oil')).toEqual(['whole', 'word', 'begins', 'inside', 'note']);
  });

  test('ties: cars that are here, the later day, the name with numbers by size, the id', () => {
    const one = (id: string, name: string, more: Partial<SearchThing> = {}): SearchThing => ({ kind: 'record', id, name, car: null, date: null, href: '/', fields: textField('title', 'name', name), ...more });
    expect(of([one('i', 'oil 10'), one('h', 'oil 9'), one('g2', 'oil 9', { date: day('2026-01-02'), car: 'gone' }), one('later', 'oil 9', { date: day('2026-01-02') }), one('earlier', 'oil 9', { date: day('2026-01-01') }), one('b', 'oil 9')], 'oil')).toEqual(['later', 'earlier', 'b', 'h', 'i', 'g2']);
  });

  test('the kind of the best thing stands first, each kind with how many there are of it', () => {
    const note: SearchThing = { kind: 'car', id: 'c', name: 'Pip', car: 'c', date: null, href: '/', fields: [...textField('name', 'name', 'Pip'), ...textField('note', 'note', 'oil')] };
    const view = ask(indexThings([note, ...things(['a', 'oil'], ['b', 'oil pump'], ['c', 'oil cap'])], { currency: 'GBP', order: 'day-first' }, []), 'oil', { most: 2 });
    expect(view.groups.map((group) => [group.kind, group.total, group.hits.length])).toEqual([['record', 3, 2], ['car', 1, 1]]);
    expect(view.total).toBe(4);
    expect(ask(indexThings([note, ...things(['a', 'oil'])], { currency: 'GBP', order: 'day-first' }, []), 'oil', { kind: 'car' }).groups.map((group) => group.kind)).toEqual(['car']);
  });
});

describe('a slip of a letter', () => {
  test.each([['brkae', 'brake', true], ['brak', 'brake', true], ['braake', 'brake', true], ['brace', 'brake', true], ['brkaes', 'brake', false], ['baker', 'brake', false], ['gearbx', 'gearbox', true], ['geabrox', 'gearboxes', true]])('%s for %s: %s', (typed, word, slip) => expect(isSlip(typed, word)).toBe(slip));

  test('finds what is near where nothing is called so, and says so; four letters are too few', () => {
    const made = index();
    expect(ask(made, 'inflatro')).toMatchObject({ total: 1, near: [{ typed: 'inflatro', words: ['inflator'] }], nowhere: [] });
    expect(ask(made, 'inflator').near).toEqual([]);
    expect(ask(made, 'padz')).toMatchObject({ total: 0, near: [], nowhere: ['padz'] });
    expect(ask(made, 'inflatro fluid')).toMatchObject({ total: 0, nowhere: [] });
  });
});

const WORD = fc.constantFrom('oil', 'brake', 'brakes', 'fluid', '5W-30', '12', 'Nov', '2026', '12.50', 'Müller', 'gear box', 'gearbox', 'RX', 'x7', '№ 4', 'é', 'May', '3/2024');
const PHRASE = fc.array(WORD, { minLength: 1, maxLength: 5 }).map((words) => words.join(' '));
const DAY = fc.constantFrom('2026-11-12', '2026-05-12', '2024-03-02').map(day);
const THING: fc.Arbitrary<SearchThing> = fc.record({ kind: fc.constantFrom(...FOUND_KINDS), id: fc.uuid(), name: PHRASE, note: fc.option(PHRASE), number: fc.option(WORD), date: fc.option(DAY), minor: fc.option(fc.constantFrom(1250, 1200)) }).map(({ kind, id, name, note, number, date, minor }) => ({
  kind, id, name, car: null, date, href: '/', fields: [...textField('name', 'name', name), ...textField('note', 'note', note), ...textField('number', 'number', number), ...dayField('day', date), ...amountField('amount', minor)],
}));
const THINGS = fc.uniqueArray(THING, { maxLength: 12, selector: (one) => `${one.kind} ${one.id}` });
const made = (things: readonly SearchThing[]) => indexThings(things, { currency: 'GBP', order: 'day-first' }, []);

describe('of any household', () => {
  test('every thing is found by its own whole name, before all whose name is another', () => {
    fc.assert(fc.property(THINGS, (things) => {
      for (const thing of things) {
        const found = ask(made(things), thing.name).groups.flatMap((group) => group.hits);
        expect(found.map((hit) => hit.id)).toContain(thing.id);
        expect(foldText(found[0]?.name ?? '')).toBe(foldText(thing.name));
      }
    }));
  });

  test('another word never finds more', () => {
    fc.assert(fc.property(THINGS, PHRASE, fc.oneof(WORD, fc.constantFrom('braek', 'flui', 'gaerbox', 'nothing')), (things, query, word) => {
      const fewer = new Set(ids(ask(made(things), query)));
      expect(ids(ask(made(things), `${query} ${word}`)).filter((id) => !fewer.has(id))).toEqual([]);
    }), { numRuns: 400 });
  });

  test('the order in which things were written down changes nothing', () => {
    fc.assert(fc.property(THINGS, PHRASE, (things, query) => {
      expect(ask(made([...things].reverse()), query)).toEqual(ask(made(things), query));
    }));
  });

  test('accents, case and the way a letter is coded change nothing', () => {
    fc.assert(fc.property(THINGS, PHRASE, (things, query) => {
      const told = (typed: string) => ({ ...ask(made(things), typed), query: '', near: [], nowhere: [] });
      for (const other of [query.toUpperCase(), query.normalize('NFD'), query.normalize('NFD').replace(/\p{M}/gu, '')]) expect(told(other)).toEqual(told(query));
    }));
  });

  test('what is marked is what was looked for', () => {
    fc.assert(fc.property(THINGS, WORD.filter((word) => !word.includes(' ')), (things, query) => {
      const plain = foldText(query).replaceAll(' ', '');
      const view = ask(made(things), query);
      if (view.near.length > 0) return;
      for (const hit of view.groups.flatMap((group) => group.hits)) for (const [from, to] of hit.nameMarks) expect(foldText(hit.name.slice(from, to)).replaceAll(' ', '')).toBe(plain);
    }));
  });
});
