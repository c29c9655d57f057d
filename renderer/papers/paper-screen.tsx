import { Button } from '@mantine/core';
import { useState } from 'react';
import { Link } from 'wouter';
import type { PaperView } from '../../shared-core/views/papers-view.ts';
import { Asked } from '../ui/asked.tsx';
import { useWords } from '../ui/household.tsx';
import { ScreenTitle } from '../ui/screen-title.tsx';
import { Section } from '../ui/section.tsx';
import { useAsk } from '../ui/use-ask.ts';
import { tell } from '../ui/words/tell.ts';
import { PaperAbout } from './paper-about.tsx';
import { PaperSight } from './paper-sight.tsx';
import styles from './papers.module.css';
import { RedactSight } from './redact-sight.tsx';
import { RecordFromPaper } from './record-from-paper.tsx';
import { TieChoice } from './tie-choice.tsx';
import { setAside, tiePaper, untiePaper } from './tie-paper.ts';

/** One paper: to be looked at on one side, and what it belongs to or may belong to on the other. */
export function PaperScreen({ paper }: { readonly paper: string }) {
  const answer = useAsk('paper.show', { paper });
  const [redacting, setRedacting] = useState(false);
  return (
    <div className={styles.screen}>
      <p><Link href="/papers">{tell('paper.back')}</Link></p>
      <Asked answer={answer} onward={<Link href="/papers">{tell('paper.back')}</Link>}>
        {(view) => (
          <>
            <ScreenTitle>{view.paper.name}</ScreenTitle>
            <div className={styles.sides}>
              {redacting && view.paper.pages > 0 ? <RedactSight view={view} close={() => setRedacting(false)} /> : <PaperSight paper={view.paper} redact={() => setRedacting(true)} />}
              <div className={styles.side}>
                <Belongs view={view} />
                <Suggested view={view} />
                <Section title={tell('paper.record')}><RecordFromPaper view={view} /></Section>
                <PaperAbout view={view} />
              </div>
            </div>
          </>
        )}
      </Asked>
    </div>
  );
}

function Belongs({ view: { paper } }: { readonly view: PaperView }) {
  const words = useWords();
  const { id, name, uses, aside } = paper;
  return (
    <Section title={tell('paper.belongs')}>
      {uses.length === 0 && <p>{tell(aside ? 'paper.belongs-aside' : 'paper.belongs-nothing')}</p>}
      <ul className={styles.uses}>
        {uses.map((use) => {
          const title = tell(`paper-use.${use.kind}`, { title: use.title });
          const { tie } = use;
          return (
            <li key={`${use.kind} ${use.id}`}>
              {use.car === null ? title : <Link href={`/car/${use.car}`}>{title}</Link>}{use.date === null ? '' : `, ${words.date(use.date)}`}{' '}
              {tie !== null && <Button size="compact-sm" variant="default" aria-label={tell('paper.untie-from', { title: use.title })} onClick={() => void untiePaper(tie)}>{tell('paper.untie')}</Button>}
            </li>
          );
        })}
      </ul>
      {uses.length === 0 && <Button size="compact-md" variant="default" onClick={() => void setAside(id, name, !aside)}>{tell(aside ? 'paper.aside-back' : 'paper.aside')}</Button>}
    </Section>
  );
}

function Suggested({ view }: { readonly view: PaperView }) {
  const words = useWords();
  const { suggestions, paper } = view;
  return (
    <Section title={tell(suggestions[0]?.clear === true ? 'paper.suggested-clear' : 'paper.suggested')}>
      {suggestions.length === 0 && <p>{tell('paper.suggested-none')}</p>}
      <ol className={styles.suggestions}>
        {suggestions.map((one) => (
          <li key={`${one.kind} ${one.id}`} data-clear={one.clear}>
            <span><strong>{one.title}</strong>, {one.carName}, {words.date(one.date)}</span>
            <span className={styles.small}>{one.reasons.join(' ')}</span>
            <Button size="compact-sm" variant={one.clear ? 'filled' : 'default'} aria-label={tell('paper.tie-to', { title: one.title, date: words.date(one.date) })} onClick={() => void tiePaper(paper.id, [one])}>{tell('paper.put-with')}</Button>
          </li>
        ))}
      </ol>
      <h3>{tell('paper.choose')}</h3>
      <TieChoice view={view} />
    </Section>
  );
}
