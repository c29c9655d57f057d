import { describe, expect, test } from 'vitest';
import { papers, paperKept } from '../../../shared-core/records/paper.ts';
import { paperUses } from '../../../shared-core/views/paper-uses.ts';
import { papersOfCar } from '../../../shared-core/views/papers-of-car.ts';
import { newEntry } from '../../../shared-core/journal/entry-kind.ts';
import { day } from '../calendar/day.ts';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';

const [A, B] = ['a'.repeat(64), 'b'.repeat(64)];

/** Two cars, a record each, something seen, an obligation; two papers that were kept. */
function household(): MemoryHousehold {
  const made = memoryHousehold();
  for (const car of ['pip', 'wren']) {
    made.must('car.add', { id: car, name: car });
    made.must('record.add', { id: `${car}-work`, car, date: day('2026-10-02'), lines: [{ name: 'Looked over', work: 'check' }] });
  }
  made.must('observation.note', { id: 'drip', car: 'pip', text: 'A drip' });
  made.must('obligation.add', { id: 'test', car: 'pip', kind: 'roadworthiness-test', lastValidDay: day('2027-05-01') });
  for (const id of [A, B]) (made.entries as unknown[]).push({ ...newEntry(paperKept, { id, name: `${id.slice(0, 2)}.pdf`, media: 'application/pdf', bytes: 9 }), seq: made.entries.length, at: '2026-11-25T12:00:00.000Z' });
  return made;
}

describe('tying a paper', () => {
  test('one paper to many: it is with each of them, and in the pack of each car', () => {
    const one = household();
    const { ties } = one.must('paper.tie', { paper: A, to: [{ kind: 'record', id: 'pip-work' }, { kind: 'record', id: 'wren-work' }, { kind: 'observation', id: 'drip' }, { kind: 'obligation', id: 'test' }, { kind: 'car', id: 'wren' }] });
    expect(ties.map((tie) => tie.car)).toEqual(['pip', 'wren', 'pip', 'pip', 'wren']);
    expect(one.must('car.show', { car: 'pip' })).toMatchObject({ records: [{ record: { papers: [A] } }], observations: [{ papers: [A] }], papers: [{ id: A }] });
    expect(one.must('car.show', { car: 'wren' })).toMatchObject({ records: [{ record: { papers: [A] } }] });
    expect(papersOfCar(one.facts(), 'pip')).toEqual([A]);
    expect(paperUses(one.facts()).get(A)?.map((use) => `${use.kind} ${use.id}`)).toEqual(['record pip-work', 'observation drip', 'obligation test', 'record wren-work', 'car wren']);
    // Entries of the cars, so that a pack holds them and they prove the paper.
    expect(one.entries.slice(-5).map((entry) => entry.subject)).toEqual(['car/pip', 'car/wren', 'car/pip', 'car/pip', 'car/wren']);
  });

  test('untied again, it is where it was', () => {
    const one = household();
    const before = one.must('car.show', { car: 'pip' });
    const { ties } = one.must('paper.tie', { paper: A, to: [{ kind: 'record', id: 'pip-work' }] });
    one.must('paper.untie', { tie: ties[0]?.id ?? '' });
    expect(one.must('car.show', { car: 'pip' })).toEqual(before);
    expect(one.call('paper.untie', { tie: ties[0]?.id ?? '' })).toMatchObject({ ok: false, refusal: { code: 'unknown-tie' } });
  });

  test('a record keeps the papers it was entered with first, and none twice', () => {
    const one = household();
    one.must('record.add', { id: 'with', car: 'pip', lines: [{ name: 'Bulb' }], papers: [B] });
    expect(one.call('paper.tie', { paper: B, to: [{ kind: 'record', id: 'with' }] })).toMatchObject({ ok: false, refusal: { code: 'paper-tied-there' } });
    one.must('paper.tie', { paper: A, to: [{ kind: 'record', id: 'with' }] });
    expect(one.must('car.show', { car: 'pip' }).records.find(({ record }) => record.id === 'with')?.record.papers).toEqual([B, A]);
  });

  test.each([
    { case: 'an unknown paper', paper: 'c'.repeat(64), to: [{ kind: 'record', id: 'pip-work' }], code: 'unknown-paper' },
    { case: 'an unknown record', paper: A, to: [{ kind: 'record', id: 'none' }], code: 'unknown-record' },
    { case: 'something never seen', paper: A, to: [{ kind: 'observation', id: 'none' }], code: 'unknown-observation' },
    { case: 'an unknown obligation', paper: A, to: [{ kind: 'obligation', id: 'none' }], code: 'unknown-obligation' },
    { case: 'an unknown car', paper: A, to: [{ kind: 'car', id: 'none' }], code: 'unknown-car' },
    { case: 'the same twice', paper: A, to: [{ kind: 'record', id: 'pip-work' }, { kind: 'record', id: 'pip-work' }], code: 'paper-tied-there' },
    { case: 'nothing', paper: A, to: [], code: 'too-few' },
  ] as const)('to $case is refused, and nothing is written', ({ paper, to, code }) => {
    const one = household();
    const before = one.entries.length;
    const reply = one.call('paper.tie', { paper, to: [...to] });
    expect(reply.ok).toBe(false);
    if (to.length > 0) expect(reply).toMatchObject({ refusal: { code } });
    expect(one.entries).toHaveLength(before);
  });
});

describe('what the keeper says of a paper', () => {
  test('only what is given changes', () => {
    const one = household();
    expect(one.must('paper.describe', { paper: A, turned: 90 }).note).toEqual({ id: A, name: null, day: null, turned: 90, note: '', setAside: false });
    one.must('paper.describe', { paper: A, name: ' Oil receipt ', day: day('2026-10-01') });
    expect(one.must('paper.describe', { paper: A, note: 'torn' }).note).toEqual({ id: A, name: 'Oil receipt', day: '2026-10-01', turned: 90, note: 'torn', setAside: false });
    expect(one.facts().get(papers, A)?.name).toBe('aa.pdf');
  });

  test.each([
    { case: 'a day still to come', request: { paper: A, day: '2026-11-26' }, code: 'date-in-future' },
    { case: 'half a turn of something else', request: { paper: A, turned: 45 }, code: null },
    { case: 'an unknown paper', request: { paper: 'c'.repeat(64), turned: 90 }, code: 'unknown-paper' },
  ])('$case is refused', ({ request, code }) => {
    const reply = household().call('paper.describe', request as never);
    expect(reply.ok).toBe(false);
    if (code !== null) expect(reply).toMatchObject({ refusal: { code } });
  });

  test('set aside and back; one that is tied is not set aside, and one set aside is no longer once it is tied', () => {
    const one = household();
    expect(one.must('papers.set-aside', { papers: [A, B, A] }).notes).toHaveLength(2);
    expect(one.must('papers.set-aside', { papers: [A] }).notes).toEqual([]);
    expect(one.must('papers.set-aside', { papers: [B], aside: false }).notes).toMatchObject([{ id: B, setAside: false }]);
    one.must('paper.tie', { paper: A, to: [{ kind: 'record', id: 'pip-work' }] });
    expect(one.must('paper.describe', { paper: A, note: '' }).note.setAside).toBe(false);
    expect(one.call('papers.set-aside', { papers: [A] })).toMatchObject({ ok: false, refusal: { code: 'paper-is-tied' } });
    expect(one.call('papers.set-aside', { papers: ['c'.repeat(64)] })).toMatchObject({ ok: false, refusal: { code: 'unknown-paper' } });
  });
});
