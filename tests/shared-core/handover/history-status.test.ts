import { describe, expect, test } from 'vitest';
import { historyStatus, historyStatusSchema } from '../../../shared-core/handover/history-status.ts';
import type { StatusElement, StatusInput, StatusInspection, StatusItem, StatusPart, StatusRecall } from '../../../shared-core/handover/status-input.ts';
import { onDate } from './pack-fixture.ts';

const ON = onDate('2026-11-25');
const NOTHING: StatusInput = { on: ON, unit: 'km', hidden: [], lastRead: null, likely: null, instrumentGuessed: false, parts: [], items: [], inspections: [], recalls: [], changes: [] };

/** What is told of one element. */
function told(element: StatusElement, over: Partial<StatusInput>) {
  const status = historyStatusSchema.parse(historyStatus({ ...NOTHING, ...over }));
  const one = status.elements.find((candidate) => candidate.element === element);
  return { state: one?.state, said: one?.lines.map(({ name, text }) => `${name}: ${text}`.replaceAll('\u202f', ' ')), known: one?.lines.map((line) => line.known), lines: one?.lines ?? [] };
}

/** Source: 14 CFR 91.417(a)(2)(i) to (vi) as in the reference, section 10 (seen; (vi) in translation): by analogy, each element told whole or not. */
describe('the status of a car, by the elements of status that go with an aircraft', () => {
  test('has all six elements where nothing is known, and says so of each', () => {
    const { held, elements } = historyStatus(NOTHING);
    expect(elements.map(({ element, state }) => `${element}: ${state}`)).toEqual([
      'whole-distance: not-known', 'limited-parts: none-written', 'since-last-done: none-written', 'inspection: none-written', 'recalls: none-written', 'changes: none-written',
    ]);
    expect(held).toBe(0);
  });

  test('counts what is told whole', () => {
    const recall: StatusRecall = { number: 'R-1', what: 'Horn', how: 'renewed', doneOn: onDate('2024-05-04'), doneBy: null, nextOn: null, late: false };
    const status = historyStatus({ ...NOTHING, lastRead: { on: ON, whole: 52_000 }, recalls: [recall, { ...recall, how: null }], changes: [{ name: 'Tow bar', on: ON, papers: 1 }] });
    expect(status.elements.map((one) => one.state)).toEqual(['told', 'none-written', 'none-written', 'none-written', 'in-part', 'told']);
    expect(status.held).toBe(2);
  });

  test.each<{ case: string; over: Partial<StatusInput>; said: string[]; state: string }>([
    { case: 'read on the day itself', over: { lastRead: { on: ON, whole: 52_000 }, likely: 52_000 }, said: ['Last read: 52 000 km, read on 25 Nov 2026'], state: 'told' },
    { case: 'read before, and reckoned for the day', over: { lastRead: { on: onDate('2026-11-01'), whole: 52_000 }, likely: 52_700 }, said: ['Last read: 52 000 km, read on 1 Nov 2026', 'On 25 Nov 2026: about 52 700 km, estimated from readings'], state: 'told' },
    { case: 'an instrument replaced on a guess', over: { lastRead: { on: ON, whole: 900 }, instrumentGuessed: true }, said: ['Last read: 900 km, read on 25 Nov 2026; with what an instrument before had shown, which is estimated'], state: 'told' },
    { case: 'no reading shown', over: { likely: 52_700 }, said: ['Last read: not known: no reading is shown that counts', 'On 25 Nov 2026: about 52 700 km, estimated from readings'], state: 'in-part' },
    { case: 'a later reading is not shown', over: { lastRead: { on: onDate('2026-11-01'), whole: 52_000 }, likely: 52_700, hidden: ['whole-distance'] }, said: ['Last read: 52 000 km, read on 1 Nov 2026', 'On 25 Nov 2026: about 52 700 km, estimated from readings'], state: 'in-part' },
  ])('(i) whole distance, $case', ({ over, said, state }) => {
    expect(told('whole-distance', over)).toMatchObject({ said, state });
  });

  test('(i) whole distance tells programs whether it was read', () => {
    expect(told('whole-distance', { lastRead: { on: onDate('2026-11-01'), whole: 52_000 }, likely: 52_700 }).lines.map((one) => one.distance)).toEqual([{ value: 52_000, unit: 'km', estimated: false }, { value: 52_700, unit: 'km', estimated: true }]);
  });

  const pads = { kind: 'measured', name: 'pad, front', on: onDate('2026-03-02'), newest: '6 mm, 2 Mar 2026', limit: '3 mm', verdict: 'Lasts.' } as const;
  test.each<{ case: string; part: StatusPart; said: string; known: boolean }>([
    { case: 'its last day is today', part: { kind: 'dated', name: 'Hose', until: ON }, said: 'Hose: good until 25 Nov 2026', known: true },
    { case: 'its last day was yesterday', part: { kind: 'dated', name: 'Hose', until: onDate('2026-11-24') }, said: 'Hose: expired on 24 Nov 2026', known: true },
    { case: 'measured against a limit', part: pads, said: 'pad, front: measured: 6 mm, 2 Mar 2026; limit 3 mm. Lasts.', known: true },
    { case: 'measured, no limit', part: { ...pads, limit: null, verdict: '' }, said: 'pad, front: measured: 6 mm, 2 Mar 2026; no limit is written down', known: false },
    { case: 'not measured', part: { kind: 'not-measured', name: 'Discs' }, said: 'Discs: not known: to be measured, and no measurement is shown', known: false },
    { case: 'a tyre with its code', part: { kind: 'tyre', name: 'tyre A', made: 'in the week from 24 Jun 2012, 173 months ago' }, said: 'tyre A: made in the week from 24 Jun 2012, 173 months ago; no limit of age is written down', known: true },
    { case: 'a tyre without', part: { kind: 'tyre', name: 'tyre A', made: null }, said: 'tyre A: not known: no date code is written down', known: false },
  ])('(ii) parts with a limit, $case', ({ part, said, known }) => {
    expect(told('limited-parts', { parts: [part] })).toMatchObject({ said: [said], known: [known], state: known ? 'told' : 'not-known' });
  });

  const oil: StatusItem = { name: 'Oil', last: null, neverSince: null, whyNot: null };
  test.each<{ case: string; item: StatusItem; said: string; known: boolean }>([
    // By hand: 31 Jan 2025 and 21 months is 31 Oct 2026; from there 25 days.
    { case: 'done and read', item: { ...oil, last: { on: onDate('2025-01-31'), distance: { value: 12_300, estimated: false } } }, said: 'Oil: 21 months and 25 days and 12 300 km since it was done on 31 Jan 2025', known: true },
    { case: 'done, the distance worked out', item: { ...oil, last: { on: onDate('2026-11-01'), distance: { value: 700, estimated: true } } }, said: 'Oil: 24 days and about 700 km since it was done on 1 Nov 2026', known: true },
    { case: 'done, no distance', item: { ...oil, last: { on: onDate('2026-10-24'), distance: null } }, said: 'Oil: 1 month and 1 day, distance not known since it was done on 24 Oct 2026', known: true },
    { case: 'never done', item: { ...oil, neverSince: { on: onDate('2020-11-25'), distance: { value: 52_700, estimated: true } } }, said: 'Oil: never done, as its keeper says: 72 months and about 52 700 km since first registration', known: true },
    { case: 'no record', item: oil, said: 'Oil: not known: no record of it', known: false },
    { case: 'not shown', item: { ...oil, last: { on: onDate('2024-03-01'), distance: null }, whyNot: 'done on 1 Mar 2024, and what came after 31 Dec 2024 is not shown' }, said: 'Oil: not known: done on 1 Mar 2024, and what came after 31 Dec 2024 is not shown', known: false },
  ])('(iii) since it was last done, $case', ({ item, said, known }) => {
    expect(told('since-last-done', { items: [item] })).toMatchObject({ said: [said], known: [known] });
  });

  const last = { on: onDate('2026-05-14'), by: 'by the station', result: 'passed', reference: 'reference T-4' };
  test.each<{ case: string; one: Partial<StatusInspection>; said: string; known: boolean }>([
    { case: 'passed and in force', one: {}, said: 'test: 6 months and 11 days since the last one on 14 May 2026, passed, by the station, reference T-4; holds until 13 May 2027', known: true },
    { case: 'run out', one: { until: onDate('2026-11-24') }, said: 'test: 6 months and 11 days since the last one on 14 May 2026, passed, by the station, reference T-4; ran out on 24 Nov 2026', known: true },
    { case: 'no result', one: { last: { ...last, result: null, reference: null } }, said: 'test: 6 months and 11 days since the last one on 14 May 2026, result not written down, by the station; holds until 13 May 2027', known: false },
    { case: 'no end', one: { until: null }, said: 'test: 6 months and 11 days since the last one on 14 May 2026, passed, by the station, reference T-4; until when it holds is not written down', known: false },
    { case: 'only its end', one: { last: null }, said: 'test: holds until 13 May 2027; when it was last done is not known: no record of it', known: false },
    { case: 'not shown', one: { last: null, whyNot: 'what came after 31 Dec 2024 is not shown' }, said: 'test: holds until 13 May 2027; when it was last done is not known: what came after 31 Dec 2024 is not shown', known: false },
  ])('(iv) the inspection, $case', ({ one, said, known }) => {
    expect(told('inspection', { inspections: [{ name: 'test', last, until: onDate('2027-05-13'), whyNot: null, ...one }] })).toMatchObject({ said: [said], known: [known] });
  });

  const recall: StatusRecall = { number: 'R-1', what: 'Horn', how: 'horn renewed', doneOn: onDate('2024-05-04'), doneBy: 'a garage', nextOn: null, late: false };
  test.each<{ case: string; over: Partial<StatusRecall>; said: string; known: boolean }>([
    { case: 'settled', over: {}, said: 'settled on 4 May 2024: horn renewed, by a garage; nothing comes again', known: true },
    { case: 'settled, and it comes again', over: { nextOn: onDate('2027-05-04') }, said: 'settled on 4 May 2024: horn renewed, by a garage; comes again on 4 May 2027', known: true },
    { case: 'come again and let pass', over: { nextOn: onDate('2026-05-04'), late: true, doneBy: null }, said: 'settled on 4 May 2024: horn renewed; comes again on 4 May 2026, which has passed', known: true },
    { case: 'settled, nobody said how', over: { how: null }, said: 'settled on 4 May 2024: how is not written down, by a garage; nothing comes again', known: false },
    { case: 'open', over: { doneOn: null, how: null, doneBy: null }, said: 'open: not done', known: true },
    { case: 'open and booked', over: { doneOn: null, how: null, doneBy: null, nextOn: onDate('2026-12-04') }, said: 'open: not done, booked for 4 Dec 2026', known: true },
  ])('(v) a recall, $case', ({ over, said, known }) => {
    expect(told('recalls', { recalls: [{ ...recall, ...over }] })).toMatchObject({ said: [`R-1: Horn: ${said}`], known: [known] });
  });

  test('(v) of recalls of which some, or all, are not shown says that it is not all', () => {
    expect(told('recalls', { recalls: [recall], hidden: ['recalls'] }).state).toBe('in-part');
    expect(told('recalls', { hidden: ['recalls'] }).state).toBe('not-known');
  });

  test.each([{ papers: 0, said: 'no paper of it is kept', state: 'not-known' }, { papers: 1, said: '1 paper with its record', state: 'told' }, { papers: 2, said: '2 papers with its record', state: 'told' }])('(vi) a change to the car with $papers papers', ({ papers, said, state }) => {
    expect(told('changes', { changes: [{ name: 'Tow bar', on: onDate('2025-06-01'), papers }] })).toMatchObject({ said: [`Tow bar: done on 1 Jun 2025; ${said}`], state });
  });
});
