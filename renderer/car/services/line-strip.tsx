import type { CoverageView } from '../../../shared-core/views/coverage-view.ts';
import type { LineState } from './line-sign.tsx';
import styles from './services.module.css';

const LOOKS: Readonly<Record<LineState, string | undefined>> = { 'done': styles.cellDone, 'looked-at': styles.cellHalf, 'not-done': styles.cellHalf, 'nobody': styles.cellOpen };

/** One cell for each line, in their order: at a glance, how far a service is. The sentence below says it in words. */
export function LineStrip({ lines }: { readonly lines: CoverageView['lines'] }) {
  return (
    <div className={styles.strip} aria-hidden="true">
      {lines.map((line, at) => <span key={at} className={LOOKS[line.state]} />)}
    </div>
  );
}
