import { Button } from '@mantine/core';
import { useState } from 'react';
import type { GivenSeal, SealView } from '../../shared-core/views/seal-view.ts';
import { Asked } from '../ui/asked.tsx';
import { change } from '../ui/change.ts';
import { sayFault } from '../ui/form/say-fault.ts';
import { useHousehold, useWords } from '../ui/household.tsx';
import { WorkAsked } from '../ui/plan/work-asked.tsx';
import { Section } from '../ui/section.tsx';
import { useAsk } from '../ui/use-ask.ts';
import { tell } from '../ui/words/tell.ts';
import styles from './handover.module.css';

/** Gives a seal over the journal: its text and code to print or send, with what it proves and what it does not. */
export function SealLeaf() {
  const [given, setGiven] = useState<GivenSeal | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const [asked, setAsked] = useState(false);
  const answer = useAsk('seal.show', {});
  const give = async () => {
    setAsked(false);
    const result = await change('seal.give', {});
    setFault(result.ok ? null : sayFault(result.refusal));
    if (result.ok) setGiven(result.value);
  };
  return (
    <Asked answer={answer}>
      {(view) => (
        <>
          <div className={styles.unprinted}>
            <Section title={tell('seal.title')} hint={tell('seal.what')}>
              <p>{tell('seal.caution')}</p>
              {asked
                ? <WorkAsked said={tell('seal.sure')} sure={tell('seal.give-it')} onSure={() => void give()} onLeave={() => setAsked(false)} />
                : <Button onClick={() => setAsked(true)}>{tell('seal.give', { n: view.entries })}</Button>}
              <p role="alert" className={fault === null ? 'only-said' : styles.fault}>{fault ?? ''}</p>
            </Section>
          </div>
          {given !== null && <Sheet given={given} view={view} />}
          <div className={styles.unprinted}><Earlier view={view} shown={given} /></div>
        </>
      )}
    </Asked>
  );
}

/** What is printed or sent. */
function Sheet({ given, view: { sample, proves, provesNot } }: { readonly given: GivenSeal; readonly view: SealView }) {
  const words = useWords();
  const { name } = useHousehold();
  const { squares, path } = given.code;
  return (
    <Section title={tell('seal.of', { household: name })}>
      <p role="status">{tell('seal.given-on', { date: words.date(given.at.slice(0, 10)), n: given.entries })}{sample ? ` ${tell('sample.line')}` : ''}</p>
      <div className={styles.seal} data-seal-sheet>
        <svg viewBox={`-4 -4 ${squares + 8} ${squares + 8}`} role="img" aria-label={tell('seal.code')} shapeRendering="crispEdges">
          <rect x="-4" y="-4" width={squares + 8} height={squares + 8} fill="#fff" />
          <path d={path} fill="#000" />
        </svg>
        <pre tabIndex={0} aria-label={tell('handover.seal-text')}>{given.text}</pre>
      </div>
      <div className={styles.lines}>
        <h3>{tell('seal.proves')}</h3>
        <ul>{proves.map((line) => <li key={line}>{line}</li>)}</ul>
        <h3>{tell('seal.proves-not')}</h3>
        <ul>{provesNot.map((line) => <li key={line}>{line}</li>)}</ul>
      </div>
      <div className={styles.unprinted}><Button variant="default" onClick={() => window.print()}>{tell('seal.print')}</Button></div>
    </Section>
  );
}

function Earlier({ view: { given }, shown }: { readonly view: SealView; readonly shown: GivenSeal | null }) {
  const words = useWords();
  const others = given.filter((one) => one.text !== shown?.text).toReversed();
  return (
    <Section title={tell('seal.earlier')} hint={tell('seal.earlier-what')}>
      {others.length === 0 && <p>{tell('seal.earlier-none')}</p>}
      {others.map((one) => (
        <details key={one.text}>
          <summary>{tell('seal.given-on', { date: words.date(one.at.slice(0, 10)), n: one.entries })}</summary>
          <pre tabIndex={0} aria-label={tell('handover.seal-text')}>{one.text}</pre>
        </details>
      ))}
    </Section>
  );
}
