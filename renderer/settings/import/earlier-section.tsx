import { Button } from '@mantine/core';
import { useState } from 'react';
import { Asked } from '../../ui/asked.tsx';
import { Section } from '../../ui/section.tsx';
import { useAsk } from '../../ui/use-ask.ts';
import { tell } from '../../ui/words/tell.ts';
import { EarlierImport } from './earlier-import.tsx';
import sectionStyles from '../../ui/section.module.css';

const SHOWN = 5;

/** The tables taken in before that stand, the latest first. */
export function EarlierSection() {
  const answer = useAsk('import.standing', {});
  const [all, setAll] = useState(false);
  return (
    <Section id="import-earlier" title={tell('imports.title')}>
      <Asked answer={answer}>
        {({ imports }) => (
          <>
            {imports.length === 0 && <p className={sectionStyles.soft}>{tell('imports.none')}</p>}
            <ul className={sectionStyles.list}>{(all ? imports : imports.slice(0, SHOWN)).map((one) => <EarlierImport key={one.id} one={one} />)}</ul>
            {imports.length > SHOWN && <Button size="compact-sm" variant="subtle" aria-expanded={all} onClick={() => setAll(!all)}>{all ? tell('imports.fewer') : tell('imports.all', { n: imports.length })}</Button>}
          </>
        )}
      </Asked>
    </Section>
  );
}
