import type { Store } from './store.ts';

/** Which of these occurrences were never told, in their order. */
export function untold(store: Store, occurrences: readonly string[]): readonly string[] {
  const known = store.prepare<[string], number>('SELECT 1 FROM told WHERE occurrence = ?').pluck();
  return occurrences.filter((one) => known.get(one) === undefined);
}

/** Whether something was told on a day. */
export function wasToldOn(store: Store, day: string): boolean {
  return store.prepare<[string], number>('SELECT 1 FROM told_day WHERE day = ?').pluck().get(day) !== undefined;
}

/** Notes that these occurrences are told on a day; the keys of both tables let no day and no occurrence stand twice. */
export function noteTold(store: Store, day: string, at: string, occurrences: readonly string[]): void {
  store.prepare('INSERT INTO told_day (day, at) VALUES (?, ?)').run(day, at);
  const note = store.prepare('INSERT INTO told (occurrence, day) VALUES (?, ?)');
  for (const one of occurrences) note.run(one, day);
}
