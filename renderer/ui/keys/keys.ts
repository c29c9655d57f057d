import type { WordKey } from '../words/tell.ts';

/** Where a key does what it says: on every screen, or on one. */
export type KeyPlace = 'everywhere' | 'search' | 'yard' | 'moving' | 'work' | 'intake' | 'card' | 'services' | 'paper' | 'pack';

/** A key of the program, as the sheet of keys tells it. */
export interface KeyTold {
  /** As they are printed on a keyboard: several do the same, or each its own of one kind. */
  readonly keys: readonly string[];
  readonly place: KeyPlace;
  readonly does: WordKey;
  /** One printed character that works without the focus on what it is for: it can be turned off (WCAG 2.1.4). */
  readonly lone: boolean;
  /** The files that hear it. */
  readonly heardIn: readonly string[];
}

/** The screens in the order of the rail: the figures 1 to 8 go to them. */
export const SCREEN_ADDRESSES = ['/', '/car', '/sessions', '/parts', '/papers', '/handover', '/ledger', '/settings'] as const;

/** The keys that work on every screen. No browser takes them: with Alt or Control the figures are its own tabs on one system or another. */
export const SEARCH_KEY = '/';
export const KEYS_KEY = '?';

const GLOBAL = 'renderer/ui/keys/use-global-keys.ts';
const YARD = ['renderer/yard/use-yard-keys.ts'];

/** Every key that the program hears, beside those that fields, buttons and lists have in any browser. */
export const KEYS: readonly KeyTold[] = [
  { keys: [SEARCH_KEY], place: 'everywhere', does: 'keys.search', lone: true, heardIn: [GLOBAL] },
  { keys: [KEYS_KEY], place: 'everywhere', does: 'keys.keys', lone: true, heardIn: [GLOBAL] },
  { keys: ['1', '…', '8'], place: 'everywhere', does: 'keys.screens', lone: true, heardIn: [GLOBAL] },
  { keys: ['Esc'], place: 'everywhere', does: 'keys.escape', lone: false, heardIn: ['renderer/ui/plan/work-asked.tsx', 'renderer/sessions/doing/left-out-panel.tsx', 'renderer/sessions/doing/found-panel.tsx', 'renderer/yard/use-mark-note.ts', 'renderer/app/tour/tour.tsx'] },
  { keys: ['↓', '↑'], place: 'search', does: 'keys.search-move', lone: false, heardIn: ['renderer/app/search/search-dialog.tsx'] },
  { keys: ['Enter'], place: 'search', does: 'keys.search-open', lone: false, heardIn: ['renderer/app/search/search-dialog.tsx'] },
  { keys: ['R'], place: 'yard', does: 'keys.yard-reading', lone: true, heardIn: YARD },
  { keys: ['+', '−'], place: 'yard', does: 'keys.yard-span', lone: true, heardIn: YARD },
  { keys: ['Shift ←', 'Shift →'], place: 'yard', does: 'keys.yard-shift', lone: false, heardIn: YARD },
  { keys: ['T'], place: 'yard', does: 'keys.yard-today', lone: true, heardIn: YARD },
  { keys: ['←', '→', '↑', '↓'], place: 'yard', does: 'keys.yard-marks', lone: false, heardIn: ['renderer/yard/lane-sheet.tsx'] },
  { keys: ['Enter'], place: 'yard', does: 'keys.yard-record', lone: false, heardIn: ['renderer/yard/lane-reading.tsx'] },
  { keys: ['M'], place: 'yard', does: 'keys.post-lift', lone: false, heardIn: ['renderer/yard/post-band.tsx'] },
  { keys: ['←', '→', 'Page Up', 'Page Down'], place: 'moving', does: 'keys.move-day', lone: false, heardIn: ['renderer/yard/post-band.tsx', 'renderer/ui/plan/move-panel.tsx'] },
  { keys: ['↑', '↓'], place: 'moving', does: 'keys.move-place', lone: false, heardIn: ['renderer/yard/post-band.tsx'] },
  { keys: ['Enter', 'Esc'], place: 'moving', does: 'keys.move-end', lone: false, heardIn: ['renderer/yard/post-band.tsx', 'renderer/ui/plan/move-panel.tsx'] },
  { keys: ['Space'], place: 'work', does: 'keys.work-tick', lone: true, heardIn: ['renderer/sessions/doing/use-work-keys.ts'] },
  { keys: ['←', '→'], place: 'work', does: 'keys.work-go', lone: false, heardIn: ['renderer/sessions/doing/use-work-keys.ts'] },
  { keys: ['P', 'S', 'U', 'N', 'F'], place: 'intake', does: 'keys.intake-answer', lone: false, heardIn: ['renderer/car/intake/answer-row.tsx'] },
  { keys: ['↑', '↓', '←', '→'], place: 'intake', does: 'keys.intake-go', lone: false, heardIn: ['renderer/car/intake/answer-row.tsx', 'renderer/car/intake/when-form.tsx'] },
  { keys: ['Enter', 'Esc'], place: 'card', does: 'keys.card', lone: false, heardIn: ['renderer/car/card/figure-form.tsx'] },
  { keys: ['Enter'], place: 'services', does: 'keys.services', lone: false, heardIn: ['renderer/car/services/service-lines.tsx'] },
  { keys: ['←', '→', '+', '−', 'R'], place: 'paper', does: 'keys.paper', lone: false, heardIn: ['renderer/papers/paper-sight.tsx'] },
  { keys: ['←', '→', '↑', '↓', 'Shift', 'Delete'], place: 'paper', does: 'keys.paper-marks', lone: false, heardIn: ['renderer/papers/mark-layer.tsx'] },
  { keys: ['←', '→'], place: 'pack', does: 'keys.pack', lone: false, heardIn: ['renderer/handover/pack-look.tsx'] },
];

/** The places whose keys work on a screen, by its address: its own first. */
export function placesAt(location: string): readonly KeyPlace[] {
  const own: readonly (readonly [RegExp, readonly KeyPlace[]])[] = [
    [/^\/$/, ['yard', 'moving']],
    [/^\/sessions\/[^/]+\/work$/, ['work']],
    [/^\/sessions$/, ['moving']],
    [/^\/car\/[^/]+\/intake/, ['intake']],
    [/^\/car\/[^/]+\/card/, ['card']],
    [/^\/car\/[^/]+\/services/, ['services']],
    [/^\/paper\//, ['paper']],
    [/^\/handover/, ['pack']],
  ];
  return own.find(([address]) => address.test(location))?.[1] ?? [];
}
