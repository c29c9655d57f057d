import type { CoverageView } from '../../../shared-core/views/coverage-view.ts';
import styles from './services.module.css';

export type LineState = CoverageView['lines'][number]['state'];

const TONES: Readonly<Record<LineState, string | undefined>> = { 'done': styles.done, 'looked-at': styles.half, 'not-done': styles.half, 'nobody': styles.open };

/** How a line stands as a sign: ticked, half, struck, hollow. The word beside it says the same. */
export function LineSign({ state }: { readonly state: LineState }) {
  return (
    <svg width="18" height="18" viewBox="0 0 18 18" fill="none" stroke="currentColor" strokeWidth="1.75" aria-hidden="true" className={TONES[state]}>
      <circle cx="9" cy="9" r="7" {...(state === 'done' ? { fill: 'currentColor' } : state === 'nobody' ? { strokeDasharray: '2.6 2.2' } : {})} />
      {state === 'done' && <path d="M5.6 9.2 L8 11.6 L12.6 6.6" className={styles.tick} strokeLinecap="round" strokeLinejoin="round" />}
      {state === 'looked-at' && <path d="M9 2 A7 7 0 0 0 9 16 Z" fill="currentColor" />}
      {state === 'not-done' && <path d="M5.5 9 H12.5" strokeLinecap="round" />}
    </svg>
  );
}
