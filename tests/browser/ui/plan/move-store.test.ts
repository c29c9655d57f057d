import { describe, expect, test } from 'vitest';
import { moveStore, type KeptMove, type MoveHost, type MoveSubject, type Tried } from '../../../../renderer/ui/plan/move-store.ts';
import { ok, refuse, type Result } from '../../../../shared-core/result/result.ts';
import { day } from '../../../shared-core/calendar/day.ts';

const HOME = { day: day('2026-11-28'), place: 'home' };
const on = (date: string) => ({ day: day(date), place: 'home' });
const SUBJECT: MoveSubject = { session: 'a', part: false, tasks: [{ kind: 'item', id: 'oil' }], from: HOME, title: 'Sat 28 Nov' };
const tried = (deltaMinor: number): Tried => ({ currency: 'GBP', allowed: true, faults: [], refusal: null, before: { totalMinor: 0, lateDays: 0 }, after: { totalMinor: deltaMinor, lateDays: 0 }, deltaMinor, deltaLateDays: 0, tasks: [], text: '' });

/** A host that answers a try by the day of the month, when it is let. */
function host(keep: () => Result<KeptMove> = () => ok({ undo: [7], notes: ['Longer than liked.'] })) {
  const asked: string[] = [];
  const waiting: (() => void)[] = [];
  const made: MoveHost = {
    tryOut: (_subject, to) => {
      asked.push(to.day);
      return new Promise((resolve) => waiting.push(() => resolve(ok(tried(Number(to.day.slice(8)))))));
    },
    keep: () => Promise.resolve(keep()),
  };
  const answer = async () => {
    waiting.shift()?.();
    for (let turn = 0; turn < 5; turn += 1) await Promise.resolve();
  };
  return { store: moveStore(made), asked, answer };
}

describe('something that is being moved', () => {
  test('is asked about where it goes, not where it stood, and shows the answer of its last place alone', async () => {
    const { store, asked, answer } = host();
    store.lift(SUBJECT, HOME, 'post');
    expect([asked, store.now()?.tried]).toEqual([[], null]);
    ['2026-11-29', '2026-11-30', '2026-12-01'].forEach((date) => store.place(on(date)));
    await answer();
    expect(store.now()).toMatchObject({ to: { day: '2026-12-01' }, tried: null });
    await answer();
    expect(asked).toEqual(['2026-11-29', '2026-12-01']);
    expect(store.now()?.tried?.deltaMinor).toBe(1);
  });

  test('drops an answer that comes after it has gone back where it stood', async () => {
    const { store, answer } = host();
    store.lift(SUBJECT, on('2026-11-29'), 'post');
    store.place(HOME);
    await answer();
    expect(store.now()).toMatchObject({ to: HOME, tried: null });
  });

  test('drops an answer that comes after it was put back, and one about what was moved before', async () => {
    const { store, answer } = host();
    store.lift(SUBJECT, on('2026-11-29'), 'post');
    store.putBack();
    await answer();
    expect(store.now()).toBeNull();
    store.lift(SUBJECT, on('2026-11-29'), 'post');
    store.lift({ ...SUBJECT, session: 'b' }, HOME, 'post');
    await answer();
    expect(store.now()).toMatchObject({ subject: { session: 'b' }, tried: null });
  });

  test('is kept once, and answers how to undo it and what may not have been meant', async () => {
    const { store } = host();
    store.lift(SUBJECT, on('2026-11-29'), 'fields');
    const [first, second] = [store.keep(), store.keep()];
    expect([await first, await second, store.now()]).toEqual([{ undo: [7], notes: ['Longer than liked.'] }, null, null]);
  });

  test('refused, stays in hand with the reason, and goes on', async () => {
    const { store, answer } = host(() => refuse('place-closed-then', { day: '2026-11-29' }));
    store.lift(SUBJECT, on('2026-11-29'), 'post');
    expect(await store.keep()).toBeNull();
    expect(store.now()).toMatchObject({ to: { day: '2026-11-29' }, keeping: false, refusal: { code: 'place-closed-then' } });
    store.place(on('2026-11-30'));
    expect(store.now()?.refusal).toBeNull();
    await answer();
    await answer();
    expect(store.now()?.tried?.deltaMinor).toBe(30);
  });
});
