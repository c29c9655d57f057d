import { describe, expect, test } from 'vitest';
import { moveKey } from '../../../../renderer/ui/plan/move-keys.ts';
import { day } from '../../../shared-core/calendar/day.ts';

const AT = { day: day('2026-11-28'), place: 'hill' };
const PLACES = ['home', 'hill', 'river'];
const key = (name: string, at = AT) => moveKey(name, at, PLACES, day('2026-11-25'));

/** Source for all: worked by hand. */
describe('a key on something that is being moved', () => {
  test.each([
    { name: 'ArrowLeft', to: { day: '2026-11-27', place: 'hill' } },
    { name: 'ArrowRight', to: { day: '2026-11-29', place: 'hill' } },
    { name: 'PageDown', to: { day: '2026-12-05', place: 'hill' } },
    { name: 'PageUp', to: { day: '2026-11-25', place: 'hill' } },
    { name: 'ArrowUp', to: { day: '2026-11-28', place: 'home' } },
    { name: 'ArrowDown', to: { day: '2026-11-28', place: 'river' } },
  ])('$name puts it on $to.day at $to.place', ({ name, to }) => expect(key(name)).toEqual({ does: 'place', to }));

  test('never goes before today, nor past the first or the last place', () => {
    expect(key('ArrowLeft', { ...AT, day: day('2026-11-25') })).toEqual({ does: 'place', to: { day: '2026-11-25', place: 'hill' } });
    expect(key('ArrowUp', { ...AT, place: 'home' })).toEqual({ does: 'place', to: { day: '2026-11-28', place: 'home' } });
    expect(key('ArrowDown', { ...AT, place: 'river' })).toEqual({ does: 'place', to: { day: '2026-11-28', place: 'river' } });
  });

  test('keeps it by Enter, puts it back by Escape, and leaves every other key alone', () => {
    expect([key('Enter'), key('Escape'), key('a'), key('Tab')]).toEqual([{ does: 'keep' }, { does: 'put-back' }, null, null]);
  });
});
