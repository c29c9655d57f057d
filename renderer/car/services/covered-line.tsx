import { Button } from '@mantine/core';
import type { CoverageView } from '../../../shared-core/views/coverage-view.ts';
import { MarkGlyph } from '../../ui/marks/mark-glyph.tsx';
import { tell } from '../../ui/words/tell.ts';
import { LineSign } from './line-sign.tsx';
import { Visit } from './visit.tsx';
import sectionStyles from '../../ui/section.module.css';
import styles from './services.module.css';

interface CoveredLineProps {
  readonly line: CoverageView['lines'][number];
  readonly onRecord: () => void;
}

/** The latest visits are shown; those before fold away. */
const SHOWN = 2;

/** One line of a service: how it stands, who worked on it and when; one press records work where it is open. */
export function CoveredLine({ line, onRecord }: CoveredLineProps) {
  const { name, work, state, text, outcome } = line;
  const visits = [...line.visits].reverse();
  return (
    <li className={state === 'done' ? styles.lineDone : styles.line}>
      <div className={styles.what}>
        <strong>{name}</strong>
        <p className={sectionStyles.small}>{tell(`services.work-${work}`)}</p>
      </div>
      <div className={styles.state}>
        <span className={styles.said}><LineSign state={state} /> <span>{text}</span></span>
        {outcome === 'watch' && <span className={styles.said}><MarkGlyph shape="eye" filled={false} tone="plain" /> <span>{tell('outcome.watch')}</span></span>}
      </div>
      <div className={styles.visits}>
        {visits.slice(0, SHOWN).map((visit) => <Visit key={visit.record} visit={visit} />)}
        {visits.length > SHOWN && (
          <details>
            <summary>{tell('services.earlier', { n: visits.length - SHOWN })}</summary>
            {visits.slice(SHOWN).map((visit) => <Visit key={visit.record} visit={visit} />)}
          </details>
        )}
      </div>
      {state !== 'done' && <Button className={styles.record ?? ''} size="compact-sm" variant="default" aria-label={tell('services.record-for', { line: name })} onClick={onRecord}>{tell('services.record')}</Button>}
    </li>
  );
}
