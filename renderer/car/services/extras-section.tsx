import { Button } from '@mantine/core';
import { useState } from 'react';
import type { CoverageView } from '../../../shared-core/views/coverage-view.ts';
import { Section } from '../../ui/section.tsx';
import { tell } from '../../ui/words/tell.ts';
import { Visit } from './visit.tsx';
import sectionStyles from '../../ui/section.module.css';
import styles from './services.module.css';

const SHOWN = 6;

/** What was done beside the lines of a service, latest first. */
export function ExtrasSection({ extras }: { readonly extras: CoverageView['extras'] }) {
  const [all, setAll] = useState(false);
  const latest = [...extras].reverse();
  return (
    <Section title={tell('services.extras')}>
      {extras.length === 0 && <p className={sectionStyles.soft}>{tell('services.extras-none')}</p>}
      <ul className={sectionStyles.list}>
        {(all ? latest : latest.slice(0, SHOWN)).map((visit, at) => (
          <li key={`${visit.record} ${at}`} className={styles.extra}>
            <strong>{visit.name}</strong>
            <Visit visit={visit} />
          </li>
        ))}
      </ul>
      {extras.length > SHOWN && <Button size="compact-sm" variant="subtle" aria-expanded={all} onClick={() => setAll(!all)}>{all ? tell('services.extras-fewer') : tell('services.extras-all', { n: extras.length })}</Button>}
    </Section>
  );
}
