import { Button } from '@mantine/core';
import { useEffect, useRef, useState } from 'react';
import { holdsFiles } from '../ui/use-file-drop.ts';
import { tell } from '../ui/words/tell.ts';
import { droppedFiles } from './gather-files.ts';
import styles from './papers.module.css';
import type { Keeping } from './use-keeping.ts';

/** The ways to keep papers: chosen files, a chosen folder, dropped anywhere on the screen, or pasted. */
export function DropPlace({ keeping }: { readonly keeping: Keeping }) {
  const files = useRef<HTMLInputElement>(null);
  const folder = useRef<HTMLInputElement>(null);
  const over = useDropAndPaste(keeping.keep);
  const chosen = (input: HTMLInputElement) => {
    keeping.keep([...(input.files ?? [])].filter((file) => !file.name.startsWith('.')));
    input.value = '';
  };
  return (
    <div className={styles.keep} data-over={over}>
      <div className={styles.buttons}>
        <Button onClick={() => files.current?.click()}>{tell('papers.choose')}</Button>
        <Button variant="default" onClick={() => folder.current?.click()}>{tell('papers.choose-folder')}</Button>
      </div>
      <input ref={files} type="file" multiple hidden aria-hidden="true" tabIndex={-1} onChange={(event) => chosen(event.currentTarget)} />
      <input ref={folder} type="file" multiple hidden aria-hidden="true" tabIndex={-1} {...{ webkitdirectory: '' }} onChange={(event) => chosen(event.currentTarget)} />
      <p className={styles.soft}>{over ? tell('papers.drop-here') : tell('papers.how')}</p>
      <p role="status" className={keeping.progress === null ? 'only-said' : styles.progress}>{keeping.progress === null ? '' : tell('papers.keeping', keeping.progress)}</p>
      {keeping.outcome.length > 0 && (
        <section className={styles.outcome} aria-labelledby="papers-outcome">
          <h2 id="papers-outcome">{tell('papers.not-kept-title')}</h2>
          <ul>{keeping.outcome.map((line, at) => <li key={at}>{line}</li>)}</ul>
          <Button size="compact-sm" variant="default" onClick={keeping.closeOutcome}>{tell('papers.outcome-close')}</Button>
        </section>
      )}
    </div>
  );
}

/** Takes what is dropped on the whole screen, or pasted while no field has the focus; whether something is held over it. */
function useDropAndPaste(keep: (files: readonly File[]) => void): boolean {
  const [over, setOver] = useState(false);
  const latest = useRef(keep);
  useEffect(() => {
    latest.current = keep;
  });
  useEffect(() => {
    const ended = new AbortController();
    const { signal } = ended;
    window.addEventListener('dragover', (event) => {
      if (event.dataTransfer === null || !holdsFiles(event.dataTransfer)) return;
      event.preventDefault();
      event.dataTransfer.dropEffect = 'copy';
      setOver(true);
    }, { signal });
    window.addEventListener('dragleave', (event) => {
      if (event.relatedTarget === null) setOver(false);
    }, { signal });
    window.addEventListener('drop', (event) => {
      if (event.dataTransfer === null || !holdsFiles(event.dataTransfer)) return;
      event.preventDefault();
      setOver(false);
      void droppedFiles(event.dataTransfer).then((files) => latest.current(files));
    }, { signal });
    window.addEventListener('paste', (event) => {
      const files = [...(event.clipboardData?.files ?? [])];
      if (files.length === 0) return;
      event.preventDefault();
      latest.current(files);
    }, { signal });
    return () => ended.abort();
  }, []);
  return over;
}
