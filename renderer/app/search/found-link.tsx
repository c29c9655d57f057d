import type { MouseEvent } from 'react';
import type { SearchHit } from '../../../shared-core/views/search-view.ts';
import { useWords } from '../../ui/household.tsx';
import { tell } from '../../ui/words/tell.ts';
import { MarkedText } from './marked-text.tsx';
import styles from './search.module.css';

interface FoundLinkProps {
  readonly hit: SearchHit;
  readonly onGo: (href: string) => void;
}

/** One thing that was found: its name, whose it is, its day, and where the words stand beside its name. */
export function FoundLink({ hit, onGo }: FoundLinkProps) {
  const words = useWords();
  const { name, nameMarks, car, kind, date, href, where } = hit;
  const about = [
    ...(car === null || (kind === 'car' && !car.left) ? [] : [car.left ? tell('search.left', { car: car.name }) : car.name]),
    ...(date === null ? [] : [words.date(date)]),
  ];
  // A press with another button or key is the browser's own.
  const go = (event: MouseEvent) => {
    if (event.button !== 0 || event.ctrlKey || event.metaKey || event.shiftKey || event.altKey) return;
    event.preventDefault();
    onGo(href);
  };
  return (
    <a href={href} className={styles.hit} data-found onClick={go}>
      <span className={styles.name}><MarkedText text={name} marks={nameMarks} /></span>
      {about.length > 0 && <span className={styles.about}>{about.join(' · ')}</span>}
      {where !== null && <span className={styles.where}><Where where={where} /></span>}
    </a>
  );
}

function Where({ where: { field, text, marks, before, after, date, minor } }: { readonly where: NonNullable<SearchHit['where']> }) {
  const words = useWords();
  const goesOn = tell('search.goes-on');
  return (
    <>
      {tell('search.in-field', { field })}{' '}
      {date !== null ? words.date(date) : minor !== null ? words.money(minor) : <>{before && `${goesOn} `}<MarkedText text={text} marks={marks} />{after && ` ${goesOn}`}</>}
    </>
  );
}
