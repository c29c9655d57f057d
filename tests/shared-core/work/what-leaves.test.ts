import { describe, expect, test } from 'vitest';
import { stepKey } from '../../../shared-core/work/doing.ts';
import type { MemoryHousehold } from '../contract/memory-household.ts';
import { begunHousehold } from './doing-household.ts';

// Source for all: our own rule, after DESIGN.md section 5: nothing confirmed is ever lost.
const item = (id: string) => ({ kind: 'item' as const, id });
const show = (household: MemoryHousehold, session: string) => household.must('work.show', { session });
const keep = (household: MemoryHousehold, day: string, ...ids: string[]) => household.must('session.keep', { sessions: [{ day: day as never, place: 'home', tasks: ids.map(item) }] }).sessions[0]?.id ?? '';

describe('an access that two tasks spell otherwise', () => {
  /** The filters both lie behind one cover, of which nobody has written how it comes off. */
  function behindOneCover() {
    const { household } = begunHousehold(['oil']);
    for (const [id, access] of [['air', 'Engine Cover'], ['cabin', 'engine cover ']] as const) household.must('item.add', { id, car: 'pip', name: `${id} filter`, interval: { repeat: { months: 12, distance: null } }, access: [access] });
    const session = keep(household, '2026-12-12', 'air', 'cabin');
    household.on('2026-12-12').must('work.begin', { session });
    const step = (text: string) => show(household, session).steps.find((one) => one.text.toLowerCase().trim() === text);
    return { household, session, step };
  }

  test.each(['air', 'cabin'])('stays ticked when %s leaves the session', (gone) => {
    const { household, session, step } = behindOneCover();
    household.must('work.tick', { session, of: step('open: engine cover')?.of ?? [] });
    household.must('session.release', { session, tasks: [item(gone)], sure: true });
    expect(step('open: engine cover')?.tick).toMatchObject({ as: 'done' });
    expect(step('close: engine cover')?.tick).toBeNull();
  });

  test('is ticked as it was spelled before, too, and is one step', () => {
    const { household, session, step } = behindOneCover();
    const spelled = (['air', 'cabin'] as const).map((id) => ({ task: `item/${id}`, step: 'open: ENGINE cover' }));
    household.must('work.tick', { session, of: spelled });
    expect(step('open: engine cover')?.tick).toMatchObject({ as: 'done' });
    household.must('work.untick', { session, of: step('open: engine cover')?.of ?? [] });
    expect(step('open: engine cover')?.tick).toBeNull();
    expect(household.call('work.tick', { session, of: [{ task: 'item/air', step: 'open: bonnet' }] })).toMatchObject({ ok: false, refusal: { code: 'unknown-step' } });
    expect(stepKey({ task: 'item/air', step: 'check: Open: Cover' })).toBe('item/air check: Open: Cover');
  });
});
