import { Button } from '@mantine/core';
import { useState, type KeyboardEvent } from 'react';
import type { ReplyOf } from '../../shared-core/contract/contract.ts';
import { Asked } from '../ui/asked.tsx';
import { Section } from '../ui/section.tsx';
import { useAsk } from '../ui/use-ask.ts';
import { tell } from '../ui/words/tell.ts';
import styles from './handover.module.css';

type PackPreview = ReplyOf<'pack.preview'>;

/** What a pack will hold, and its document page by page as the next keeper will see it. */
export function PackLook({ preview }: { readonly preview: PackPreview }) {
  const { figures, gaps, open, withheld } = preview;
  return (
    <>
      <Section title={tell('handover.holds')} hint={tell('handover.holds-what', { files: preview.files, size: sayBytes(preview.bytes) })}>
        <dl className={styles.facts}>{figures.map(({ name, text }) => <div key={name}><dt>{name}</dt><dd>{text}</dd></div>)}</dl>
        <Lines title={tell('handover.gaps', { n: gaps.length })} lines={gaps} none={tell('handover.gaps-none')} />
        <Lines title={tell('handover.open', { n: open.length })} lines={open} none={tell('handover.open-none')} />
        <Lines title={tell('handover.withheld')} lines={withheld} none={tell('handover.withheld-none')} />
      </Section>
      <Pages preview={preview} />
    </>
  );
}

/** A size in words. @example sayBytes(1_250_000) //=> '1.3 MB' */
function sayBytes(bytes: number): string {
  return bytes < 1_000_000 ? `${Math.ceil(bytes / 1000)} kB` : `${(bytes / 1_000_000).toFixed(1)} MB`;
}

/** More lines than these are folded away under their number. */
const MOST_UNFOLDED = 6;

function Lines({ title, lines, none }: { readonly title: string; readonly lines: readonly string[]; readonly none: string }) {
  const list = <ul>{lines.map((line, at) => <li key={at}>{line}</li>)}</ul>;
  if (lines.length > MOST_UNFOLDED) return <details className={styles.lines}><summary>{title}</summary>{list}</details>;
  return (
    <div className={styles.lines}>
      <h3>{title}</h3>
      {lines.length === 0 ? <p>{none}</p> : list}
    </div>
  );
}

function Pages({ preview: { preview, pages, shown } }: { readonly preview: PackPreview }) {
  const [page, setPage] = useState(1);
  const answer = useAsk('pack.preview-page', { preview, page }, { hold: true });
  const to = (next: number) => setPage(Math.min(Math.max(next, 1), shown));
  const onKey = (event: KeyboardEvent) => {
    const next = event.ctrlKey || event.altKey || event.metaKey ? undefined : { ArrowRight: page + 1, ArrowLeft: page - 1 }[event.key];
    if (next === undefined) return;
    event.preventDefault();
    to(next);
  };
  return (
    <Section title={tell('handover.document')} {...(shown < pages && { hint: tell('handover.more-pages', { shown, pages }) })}>
      <div className={styles.buttons}>
        <Button size="compact-md" variant="default" disabled={page === 1} onClick={() => to(page - 1)}>{tell('paper.previous-page')}</Button>
        <span role="status">{tell('paper.page-of', { page, pages })}</span>
        <Button size="compact-md" variant="default" disabled={page === shown} onClick={() => to(page + 1)}>{tell('paper.next-page')}</Button>
      </div>
      <div className={styles.desk} role="region" aria-label={tell('handover.pages')} tabIndex={0} onKeyDown={onKey}>
        <Asked answer={answer}>{({ webp }) => <img src={`data:image/webp;base64,${webp}`} alt={tell('handover.page', { page })} />}</Asked>
      </div>
    </Section>
  );
}
