import { Button, NativeSelect, TextInput } from '@mantine/core';
import { useState } from 'react';
import type { PapersView } from '../../shared-core/views/papers-view.ts';
import { Asked } from '../ui/asked.tsx';
import { ScreenTitle } from '../ui/screen-title.tsx';
import { useAsk } from '../ui/use-ask.ts';
import { tell } from '../ui/words/tell.ts';
import { DropPlace } from './drop-place.tsx';
import { PaperCard } from './paper-card.tsx';
import styles from './papers.module.css';
import { useKeeping } from './use-keeping.ts';

type Show = 'inbox' | 'tied' | 'aside' | 'all';
type Kind = 'pdf' | 'picture' | 'other';

interface Wanted {
  readonly show: Show;
  readonly car: string;
  readonly kind: string;
  readonly search: string;
  readonly page: number;
}

/** What was looked at last, so that one comes back to it from a paper. */
let lastWanted: Wanted = { show: 'inbox', car: '', kind: '', search: '', page: 1 };

/** The papers: kept by dropping, pasting or choosing; the inbox first, each with what it may belong to. */
export function PapersScreen() {
  const [wanted, setWanted] = useState(lastWanted);
  const keeping = useKeeping();
  const set = (change: Partial<Wanted>) => {
    lastWanted = { ...wanted, page: 1, ...change };
    setWanted(lastWanted);
  };
  const { show, car, kind, search, page } = wanted;
  const answer = useAsk('papers.show', { show, car: car === '' ? null : car, kind: kind === '' ? null : (kind as Kind), search, page }, { hold: true });
  return (
    <div className={styles.screen}>
      <ScreenTitle>{tell('papers.title')}</ScreenTitle>
      <DropPlace keeping={keeping} />
      <Asked answer={answer}>
        {(view) => (
          <>
            {view.counts.all > 0 && <Filters view={view} wanted={wanted} set={set} />}
            {view.papers.length === 0 ? <p className={styles.empty}>{emptyWords(view, wanted)}</p> : <ul className={styles.grid} aria-label={tell('papers.list')}>{view.papers.map((paper) => <PaperCard key={paper.id} paper={paper} />)}</ul>}
            {view.pages > 1 && <Pages view={view} onPage={(next) => set({ page: next })} />}
          </>
        )}
      </Asked>
    </div>
  );
}

function emptyWords({ counts }: PapersView, { show, car, kind, search }: Wanted): string {
  if (counts.all === 0) return tell('papers.none-at-all');
  return show === 'inbox' && car === '' && kind === '' && search === '' ? tell('papers.none-inbox') : tell('papers.none-found');
}

interface FiltersProps {
  readonly view: PapersView;
  readonly wanted: Wanted;
  readonly set: (change: Partial<Wanted>) => void;
}

function Filters({ view: { counts, cars }, wanted, set }: FiltersProps) {
  return (
    <div className={styles.filters}>
      <div role="group" aria-label={tell('papers.show')} className={styles.buttons}>
        {(['inbox', 'tied', 'aside', 'all'] as const).map((show) => (
          <Button key={show} size="compact-md" variant={show === wanted.show ? 'filled' : 'default'} aria-pressed={show === wanted.show} onClick={() => set({ show })}>{tell(`papers.show-${show}`, { n: counts[show] })}</Button>
        ))}
      </div>
      <TextInput className={styles.search} label={tell('papers.search')} value={wanted.search} autoComplete="off" onChange={(event) => set({ search: event.currentTarget.value.slice(0, 200) })} />
      <NativeSelect label={tell('papers.car')} value={wanted.car} onChange={(event) => set({ car: event.currentTarget.value })} data={[{ value: '', label: tell('papers.any-car') }, ...cars.map(({ id, name }) => ({ value: id, label: name }))]} />
      <NativeSelect label={tell('papers.kind')} value={wanted.kind} onChange={(event) => set({ kind: event.currentTarget.value })} data={[{ value: '', label: tell('papers.any-kind') }, ...(['pdf', 'picture', 'other'] as const).map((kind) => ({ value: kind, label: tell(`papers.kind-${kind}`) }))]} />
    </div>
  );
}

function Pages({ view: { page, pages, found }, onPage }: { readonly view: PapersView; readonly onPage: (page: number) => void }) {
  return (
    <nav className={styles.buttons} aria-label={tell('papers.pages')}>
      <Button variant="default" disabled={page === 1} onClick={() => onPage(page - 1)}>{tell('papers.previous')}</Button>
      <span>{tell('papers.page-of', { page, pages, n: found })}</span>
      <Button variant="default" disabled={page === pages} onClick={() => onPage(page + 1)}>{tell('papers.next')}</Button>
    </nav>
  );
}
