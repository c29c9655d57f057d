import { Button } from '@mantine/core';
import { useEffect, useRef, useState } from 'react';
import type { PaperView } from '../../shared-core/views/papers-view.ts';
import { change } from '../ui/change.ts';
import { sayFault } from '../ui/form/say-fault.ts';
import { note } from '../ui/notices/notice-store.ts';
import { Section } from '../ui/section.tsx';
import { tell } from '../ui/words/tell.ts';
import { HandedPage } from './handed-page.tsx';
import { MarkLayer, numberOn } from './mark-layer.tsx';
import { firstMark, type Mark } from './mark-shape.ts';
import styles from './papers.module.css';
import { TurnedPage } from './turned-page.tsx';

interface RedactSightProps {
  readonly view: PaperView;
  readonly close: () => void;
}

/** Marks parts of a paper, page by page, and shows each page as it will be handed over. */
export function RedactSight({ view: { paper, marks: kept }, close }: RedactSightProps) {
  const [page, setPage] = useState(1);
  const [marks, setMarks] = useState<readonly Mark[]>(kept);
  const [before, setBefore] = useState(kept);
  const [handed, setHanded] = useState(false);
  const [said, setSaid] = useState('');
  const [fault, setFault] = useState('');
  const toFocus = useRef<number | 'add' | null>(null);
  const sight = useRef<HTMLDivElement>(null);
  const isChanged = !sameMarks(marks, kept);
  // What was undone or kept elsewhere takes the place of marks that nobody has touched since.
  if (!sameMarks(before, kept)) {
    setBefore(kept);
    if (sameMarks(marks, before)) setMarks(kept);
  }
  useEffect(() => {
    const wanted = toFocus.current;
    toFocus.current = null;
    if (wanted !== null) sight.current?.querySelector<HTMLElement>(wanted === 'add' ? '[data-add]' : `[data-mark="${wanted}"]`)?.focus();
  }, [marks]);
  const set = (next: readonly Mark[], words: string) => {
    setMarks(next);
    setSaid(words);
    setFault('');
  };
  const add = (mark: Mark) => {
    toFocus.current = marks.length;
    set([...marks, mark], tell('redact.added', { number: numberOn([...marks, mark], marks.length) }));
  };
  const remove = (at: number) => {
    const next = marks.filter((_, other) => other !== at);
    const neighbour = next.findIndex((one) => one.page === page);
    toFocus.current = neighbour < 0 ? 'add' : neighbour;
    set(next, tell('redact.removed'));
  };
  const save = async (wanted: readonly Mark[]) => {
    const result = await change('paper.redact', { paper: paper.id, marks: [...wanted], turned: paper.turned });
    if (!result.ok) return setFault(sayFault(result.refusal));
    setMarks(result.value.marks);
    setFault('');
    note(tell(wanted.length === 0 ? 'redact.cleared' : 'redact.saved', { name: paper.name, n: wanted.length }), result.value.undo);
  };
  return (
    <div className={styles.sight} ref={sight}>
      <Section title={tell('redact.title')} hint={tell('redact.what')}>
        <div className={styles.buttons}>
          <Pages page={page} pages={paper.pages} toPage={setPage} />
          <Button size="compact-md" variant={handed ? 'default' : 'filled'} aria-pressed={!handed} onClick={() => setHanded(false)}>{tell('redact.marked')}</Button>
          <Button size="compact-md" variant={handed ? 'filled' : 'default'} aria-pressed={handed} onClick={() => setHanded(true)}>{tell('redact.handed')}</Button>
          {!handed && <Button size="compact-md" variant="default" data-add onClick={() => add(firstMark(page))}>{tell('redact.add')}</Button>}
        </div>
        {handed ? <HandedPage paper={paper} page={page} marks={kept} isKept={!isChanged} /> : (
          <>
            <p className={styles.small}>{tell('redact.how')}</p>
            <div className={styles.desk} role="region" aria-label={tell('redact.view')} tabIndex={0}>
              <TurnedPage key={page} paper={paper} page={page} percent={100}>
                <MarkLayer page={page} marks={marks} add={add} put={(at, mark) => set(marks.map((one, other) => (other === at ? mark : one)), '')} remove={remove} />
              </TurnedPage>
            </div>
          </>
        )}
        <p>{marks.length === 0 ? tell('redact.none') : tell('redact.on-pages', { pages: sayPages(marks) })}{isChanged ? ` ${tell('redact.unsaved')}` : ''}</p>
        <p role="status" className="only-said">{said}</p>
        <p role="alert" className={fault === '' ? 'only-said' : styles.fault}>{fault}</p>
        <div className={styles.buttons}>
          <Button disabled={!isChanged} onClick={() => void save(marks)}>{tell('redact.save')}</Button>
          <Button variant="default" onClick={close}>{tell(isChanged ? 'redact.leave' : 'redact.close')}</Button>
          {kept.length > 0 && <Button variant="default" onClick={() => void save([])}>{tell('redact.clear')}</Button>}
        </div>
      </Section>
    </div>
  );
}

function sameMarks(a: readonly Mark[], b: readonly Mark[]): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}

function sayPages(marks: readonly Mark[]): string {
  const pages = [...new Set(marks.map((mark) => mark.page))].sort((a, b) => a - b);
  return pages.map((page) => tell('redact.on-page', { page, n: marks.filter((mark) => mark.page === page).length })).join(', ');
}

function Pages({ page, pages, toPage }: { readonly page: number; readonly pages: number; readonly toPage: (page: number) => void }) {
  if (pages < 2) return null;
  return (
    <>
      <Button size="compact-md" variant="default" disabled={page === 1} onClick={() => toPage(page - 1)}>{tell('paper.previous-page')}</Button>
      <span role="status">{tell('paper.page-of', { page, pages })}</span>
      <Button size="compact-md" variant="default" disabled={page === pages} onClick={() => toPage(page + 1)}>{tell('paper.next-page')}</Button>
    </>
  );
}
