import type { CarView } from '../../../../shared-core/views/car-view.ts';
import type { WheelView } from '../../../../shared-core/views/wheel-view.ts';

/** What is typed into the form of a wheel. */
export interface WheelDraft {
  readonly name: string;
  readonly place: string;
  readonly on: string;
  readonly dateCode: string;
  readonly size: string;
  readonly note: string;
}

const CORNERS = ['front-left', 'front-right', 'rear-left', 'rear-right'] as const;
const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';

/**
 * The form as it opens. Four wheels of a set are alike, so a new one begins with the next mark, the next free corner, and the
 * day, code and size of the one before.
 */
export function wheelDraft(view: Pick<CarView, 'wheels' | 'today'>, wheel: WheelView['wheel'] | null): WheelDraft {
  if (wheel !== null) return { name: wheel.name, place: '', on: '', dateCode: wheel.dateCode ?? '', size: wheel.size ?? '', note: wheel.note };
  const { wheels, today } = view;
  const before = wheels.at(-1);
  const free = CORNERS.find((corner) => !wheels.some((one) => one.place === corner));
  return {
    name: nextMark(wheels.map((one) => one.wheel.name)),
    place: free ?? 'off',
    on: free === undefined ? today : (before?.since ?? today),
    dateCode: free === undefined ? '' : (before?.wheel.dateCode ?? ''),
    size: before?.wheel.size ?? '',
    note: '',
  };
}

/** 'D' after 'C', 'winter 4' after 'winter 3'; empty where the marks follow no rule. */
function nextMark(names: readonly string[]): string {
  if (names.length === 0) return 'A';
  const last = names.at(-1) ?? '';
  const [, words = '', count] = /^(.*?)(\d+)$/.exec(last) ?? [];
  const next = count === undefined ? (last.length === 1 ? (LETTERS[LETTERS.indexOf(last.toUpperCase()) + 1] ?? '') : '') : `${words}${Number(count) + 1}`;
  return names.includes(next) ? '' : next;
}
