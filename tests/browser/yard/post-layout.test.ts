import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { householdWords } from '../../../renderer/ui/household-words.ts';
import { laneWithPosts, layPosts, POST_FOOT, postSegments } from '../../../renderer/yard/post-layout.ts';
import { spanHolding } from '../../../renderer/yard/calendar-sight.ts';
import { timeScale } from '../../../renderer/yard/time-scale.ts';
import { yardPosts, type YardPost } from '../../../renderer/yard/yard-post.ts';
import type { StandingSession } from '../../../shared-core/views/sessions-view-schema.ts';
import { addDays } from '../../../shared-core/calendar/local-date.ts';
import { day } from '../../shared-core/calendar/day.ts';

const TODAY = day('2026-11-25');
const SCALE = timeScale(TODAY, { span: 3, shift: 0 }, 1000);
const measure = (text: string) => text.length * 7;

function session(change: Partial<StandingSession> = {}): StandingSession {
  return {
    id: 'a', day: day('2026-12-05'), place: 'home', placeName: 'Home', placeKind: 'home', state: 'proposed', movedFrom: null, note: '', passed: false, cars: ['pip'],
    tasks: [{ task: { kind: 'item', id: 'oil' }, car: 'pip', carName: 'Pip', name: 'oil', done: false, planned: null }],
    minutes: 30, withoutMinutes: 0, dayMinutes: 30, mostMinutes: 240, openingMinor: 1000, minutesMinor: 0, joins: null, begun: null, booking: null, ...change,
  };
}

const post = (id: string, on: string): YardPost => ({ session: session({ id }), day: day(on), kept: false, lifted: false, label: 'Sat 5 Dec, Home', rest: ' · 1 task' });
const mark = (row: number, left: number, right: number, labelLeft = right, labelWidth = 0) => ({ row, left, right, labelLeft, labelWidth });

/** Source for all: worked by hand from DESIGN section 3: hollow posts between the marks, never over them, labels in a band below. */
describe('posts', () => {
  test('stand on their day; what lies past the paper is counted', () => {
    const { placed, later } = layPosts([post('a', '2026-12-05'), post('b', '2027-06-01')], SCALE, measure);
    expect(placed.map((one) => [one.post.session.id, one.x])).toEqual([['a', SCALE.x(day('2026-12-05'))]]);
    expect(later.map((one) => one.session.id)).toEqual(['b']);
  });

  test('of neighbouring days are drawn 11 pixels apart, the first where it is', () => {
    const year = timeScale(TODAY, { span: 36, shift: 0 }, 1000);
    const { placed } = layPosts([post('a', '2026-12-05'), post('b', '2026-12-05'), post('c', '2026-12-06')], year, measure);
    const first = year.x(day('2026-12-05'));
    expect(placed.map((one) => one.x)).toEqual([first, first + 11, first + 22]);
  });

  test('a label that has no room to the right ends at the edge, and stands below those it reaches back over', () => {
    const { placed } = layPosts([post('a', '2026-12-05'), post('b', '2027-02-10')], timeScale(TODAY, { span: 3, shift: 0 }, 420), measure);
    expect(placed.map((one) => one.row)).toEqual([0, 1]);
    expect((placed[1]?.labelLeft ?? 0) + (placed[1]?.labelWidth ?? 0)).toBe(420);
  });

  test('whatever their days: no two labels touch, none leaves the paper, none is forgotten', () => {
    fc.assert(fc.property(fc.array(fc.integer({ min: 0, max: 100 }), { maxLength: 12 }), fc.integer({ min: 200, max: 1400 }), (days, width) => {
      const scale = timeScale(TODAY, { span: 3, shift: 0 }, width);
      const posts = days.sort((a, b) => a - b).map((offset, at) => post(String(at), addDays(TODAY, offset)));
      const { placed, later, rows } = layPosts(posts, scale, measure);
      expect(placed.length + later.length).toBe(posts.length);
      for (const [at, one] of placed.entries()) {
        expect(one.labelLeft).toBeGreaterThanOrEqual(0);
        expect(one.row).toBeLessThan(rows);
        expect(one.labelLeft + one.labelWidth).toBeLessThanOrEqual(width);
        const touching = placed.slice(at + 1).filter((other) => other.row === one.row && other.labelLeft < one.labelLeft + one.labelWidth && one.labelLeft < other.labelLeft + other.labelWidth);
        expect(touching).toEqual([]);
      }
    }), { seed: 20261125 });
  });
});

describe('a post in a lane', () => {
  const size = { height: 56, above: 4 };

  test('goes through where nothing stands', () => expect(postSegments([], 100, size)).toEqual([{ from: 1, to: 55 }]));

  test('leaves out the rows that a mark or its words take up there', () => {
    expect(postSegments([mark(0, 90, 110)], 100, size)).toEqual([{ from: 28, to: 55 }]);
    expect(postSegments([mark(1, 10, 20, 26, 80)], 100, size)).toEqual([{ from: 1, to: 28 }]);
    // A mark that ends 7 pixels before its middle leaves it 3 pixels of air: too near; 8 are enough.
    expect(postSegments([mark(0, 10, 94)], 100, size)).toEqual([{ from: 28, to: 55 }]);
    expect(postSegments([mark(0, 10, 93)], 100, size)).toEqual([{ from: 1, to: 55 }]);
  });

  test('that no gap shows is given a foot below the marks, and only in a lane of its own cars', () => {
    const full = { placed: [mark(0, 90, 110), mark(1, 90, 110)], rows: 2 };
    const posts = layPosts([post('a', '2026-12-05')], SCALE, measure).placed.map((one) => ({ ...one, x: 100 }));
    expect(laneWithPosts(posts, 'pip', full, 56)).toEqual({ height: 56 + POST_FOOT, above: 4 });
    expect(postSegments(full.placed, 100, laneWithPosts(posts, 'pip', full, 56))).toEqual([{ from: 52, to: 71 }]);
    expect(laneWithPosts(posts, 'alder', full, 56)).toEqual({ height: 56, above: 4 });
    expect(laneWithPosts(posts, 'pip', { placed: [mark(0, 90, 110)], rows: 1 }, 56).height).toBe(56);
  });
});

describe('what a post says', () => {
  const view = { sessions: [session(), session({ id: 'b', day: day('2026-11-28'), state: 'kept', joins: null })], places: [{ id: 'home', name: 'Home', kind: 'home' as const, assumed: false }, { id: 'hill', name: 'Hill Works', kind: 'garage' as const, assumed: false }], today: TODAY };
  const words = householdWords('en-GB', 'GBP');

  test('is its day, place, tasks and how it stands, in the order of days', () => {
    expect(yardPosts(view, null, words).map((one) => `${one.label}${one.rest}`)).toEqual(['Sat 28 Nov, Home · 1 task · kept', 'Sat 5 Dec, Home · 1 task · proposed']);
  });

  test('while it is moved, where it would be put; a single task that is moved leaves it where it is', () => {
    const subject = { session: 'a', part: false, tasks: [], from: null, title: '' };
    const move = { subject, to: { day: day('2026-11-26'), place: 'hill' }, tried: null, refusal: null, keeping: false, by: 'post' as const };
    expect(yardPosts(view, move, words)[0]).toMatchObject({ label: 'Thu 26 Nov, Hill Works', day: '2026-11-26', lifted: true });
    expect(yardPosts(view, { ...move, subject: { ...subject, part: true } }, words)[1]).toMatchObject({ label: 'Sat 5 Dec, Home', lifted: false });
  });

  test.each([
    { last: '2027-02-23', span: 3 },
    { last: '2027-02-26', span: 6 },
    { last: '2027-11-26', span: 36 },
    { last: '2040-01-01', span: 36 },
  ])('a plan to $last is shown in a span of $span months', ({ last, span }) => expect(spanHolding(TODAY, day(last))).toBe(span));
});
