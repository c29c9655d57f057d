import { useState } from 'react';
import type { PaperLine } from '../../shared-core/views/papers-view.ts';
import { copyAddress } from '../bridge/paper-address.ts';
import { tell } from '../ui/words/tell.ts';
import type { Mark } from './mark-shape.ts';
import styles from './papers.module.css';

interface HandedPageProps {
  readonly paper: PaperLine;
  readonly page: number;
  /** The marks that the copy is made with. */
  readonly marks: readonly Mark[];
  readonly isKept: boolean;
}

/** A page of the very copy that a pack gets; it is made of marks that are kept. */
export function HandedPage({ paper, page, marks, isKept }: HandedPageProps) {
  if (!isKept || marks.length === 0) return <p>{tell(marks.length === 0 && isKept ? 'redact.none' : 'redact.handed-first')}</p>;
  const address = copyAddress(paper.id, page, `${paper.turned} ${JSON.stringify(marks)}`);
  return <Picture key={address} address={address} page={page} />;
}

function Picture({ address, page }: { readonly address: string; readonly page: number }) {
  const [state, setState] = useState<'making' | 'shown' | 'failed'>('making');
  return (
    <>
      <p role="status" className={state === 'making' ? styles.small : 'only-said'}>{state === 'making' ? tell('redact.making') : ''}</p>
      {state === 'failed' ? <p role="alert">{tell('redact.failed')}</p> : (
        <div className={styles.desk} role="region" aria-label={tell('redact.handed-picture', { page })} tabIndex={0}>
          <img className={styles.handed} src={address} alt={tell('redact.handed-picture', { page })} onLoad={() => setState('shown')} onError={() => setState('failed')} />
        </div>
      )}
    </>
  );
}
