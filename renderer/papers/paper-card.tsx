import { useState } from 'react';
import { Link } from 'wouter';
import type { PaperLine } from '../../shared-core/views/papers-view.ts';
import { thumbnailAddress } from '../bridge/paper-address.ts';
import { useWords } from '../ui/household.tsx';
import { tell } from '../ui/words/tell.ts';
import styles from './papers.module.css';

/** One paper in the list: its small picture, its name, its day, and what it belongs to or may belong to. */
export function PaperCard({ paper }: { readonly paper: PaperLine }) {
  const words = useWords();
  const day = paper.day === null ? tell('papers.kept-on', { date: words.date(paper.keptOn) }) : tell(paper.dayFrom === 'camera' ? 'papers.day-camera' : 'papers.day-keeper', { date: words.date(paper.day) });
  return (
    <li className={styles.card}>
      <Thumbnail paper={paper} />
      <Link href={`/paper/${paper.id}`} className={styles.name} title={paper.name}><span>{paper.name}</span></Link>
      <span className={styles.small}>{day}</span>
      <span className={styles.small}>{standing(paper, words.date)}</span>
      {paper.blackedOut > 0 && <span className={styles.small}>{tell('redact.stands', { n: paper.blackedOut })}</span>}
    </li>
  );
}

function Thumbnail({ paper }: { readonly paper: PaperLine }) {
  const [failed, setFailed] = useState(false);
  const shown = !failed && paper.media !== 'application/octet-stream' && (paper.state === 'read' || paper.state === 'unseen');
  return (
    <span className={styles.thumbnail}>
      {shown
        ? <img src={thumbnailAddress(paper.id)} alt="" loading="lazy" data-turned={paper.turned} onError={() => setFailed(true)} />
        : <span className={styles.sign}>{tell(paper.media === 'application/pdf' ? 'papers.sign-pdf' : paper.media === 'application/octet-stream' ? 'papers.sign-other' : 'papers.sign-picture')}</span>}
    </span>
  );
}

function standing({ uses: [first, ...more], aside, best }: PaperLine, date: (day: string) => string): string {
  if (first !== undefined) return tell('papers.is-with', { n: more.length + 1, title: tell(`paper-use.${first.kind}`, { title: first.title }) });
  if (aside) return tell('papers.is-aside');
  return best === null ? '' : tell(best.clear ? 'papers.clear' : 'papers.perhaps', { title: best.title, car: best.carName, date: date(best.date) });
}
