import { Button } from '@mantine/core';
import { useState, type KeyboardEvent } from 'react';
import type { PaperLine } from '../../shared-core/views/papers-view.ts';
import { paperAddress } from '../bridge/paper-address.ts';
import { change } from '../ui/change.ts';
import { sayFault } from '../ui/form/say-fault.ts';
import { note } from '../ui/notices/notice-store.ts';
import { tell } from '../ui/words/tell.ts';
import styles from './papers.module.css';
import { TurnedPage } from './turned-page.tsx';

const SIZES = [50, 75, 100, 150, 200, 300];

/** A paper to be looked at: page by page, larger and smaller, turned. */
export function PaperSight({ paper, redact }: { readonly paper: PaperLine; readonly redact: () => void }) {
  const [page, setPage] = useState(1);
  const [size, setSize] = useState(2);
  const turn = async () => {
    const turned = ((paper.turned + 90) % 360) as PaperLine['turned'];
    const result = await change('paper.describe', { paper: paper.id, turned });
    if (!result.ok) note(sayFault(result.refusal));
  };
  const toPage = (next: number) => setPage(Math.min(Math.max(next, 1), paper.pages));
  const toSize = (next: number) => setSize(Math.min(Math.max(next, 0), SIZES.length - 1));
  const onKey = (event: KeyboardEvent) => {
    const act = event.ctrlKey || event.altKey || event.metaKey ? undefined : { ArrowRight: () => toPage(page + 1), ArrowLeft: () => toPage(page - 1), '+': () => toSize(size + 1), '-': () => toSize(size - 1), r: () => void turn(), R: () => void turn() }[event.key];
    if (act === undefined) return;
    event.preventDefault();
    act();
  };
  if (paper.pages === 0) {
    return (
      <div className={styles.sight}>
        <p>{tell(`paper.not-shown-${paper.state === 'read' ? 'unreadable' : paper.state}`)}</p>
        {paper.state !== 'unseen' && <a href={paperAddress(paper.id)} download>{tell('paper.open-file')}</a>}
      </div>
    );
  }
  return (
    <div className={styles.sight}>
      <div className={styles.buttons}>
        {paper.pages > 1 && (
          <>
            <Button size="compact-sm" variant="default" disabled={page === 1} onClick={() => toPage(page - 1)}>{tell('paper.previous-page')}</Button>
            <span role="status">{tell('paper.page-of', { page, pages: paper.pages })}</span>
            <Button size="compact-sm" variant="default" disabled={page === paper.pages} onClick={() => toPage(page + 1)}>{tell('paper.next-page')}</Button>
          </>
        )}
        <Button size="compact-sm" variant="default" disabled={size === 0} onClick={() => toSize(size - 1)}>{tell('paper.smaller')}</Button>
        <Button size="compact-sm" variant="default" disabled={size === SIZES.length - 1} onClick={() => toSize(size + 1)}>{tell('paper.larger')}</Button>
        <Button size="compact-sm" variant="default" onClick={() => void turn()}>{tell('paper.turn')}</Button>
        <Button size="compact-sm" variant="default" onClick={redact}>{tell('redact.open')}</Button>
        <a href={paperAddress(paper.id)} download>{tell('paper.open-file')}</a>
      </div>
      {paper.blackedOut > 0 && <p className={styles.small}>{tell('redact.stands', { n: paper.blackedOut })}</p>}
      <div className={styles.desk} role="region" aria-label={tell('paper.view')} tabIndex={0} onKeyDown={onKey}>
        <TurnedPage key={page} paper={paper} page={page} percent={SIZES[size] ?? 100} />
      </div>
      <p className={styles.small}>{tell('paper.keys')}</p>
    </div>
  );
}
