import { Link } from 'wouter';
import type { CarView } from '../../shared-core/views/car-view.ts';
import { useWords } from '../ui/household.tsx';
import { PaperLink } from '../ui/paper-link.tsx';
import { withheldFields } from '../ui/withheld-fields.ts';
import { tell } from '../ui/words/tell.ts';
import styles from './record-entry.module.css';

type RecordView = CarView['records'][number];
type Paper = CarView['papers'][number];

interface RecordEntryProps {
  readonly one: RecordView;
  readonly papers: ReadonlyMap<string, Paper>;
  readonly reading: CarView['readings'][number] | undefined;
}

/** One record of work: what was done, where, what it cost, its papers, and when it was written down. */
export function RecordEntry({ one, papers, reading }: RecordEntryProps) {
  const words = useWords();
  const { record, totalMinor } = one;
  return (
    <article className={styles.entry}>
      <p className={styles.when}>
        {words.date(record.date)}
        {reading !== undefined && <><br /><span className={styles.soft}>{words.distance(reading.typed.value, reading.typed.unit)}</span></>}
      </p>
      <div className={styles.what}>
        <h3><Link href={`/car/${record.car}/record/${record.id}`}>{record.title}</Link></h3>
        {tellsMoreThanTitle(record) && <Lines record={record} />}
        <p className={styles.soft}>{remarks(one, words.date).join(' · ')}</p>
        {record.note !== '' && <p className={styles.note}>{record.note}</p>}
        <PaperLinks ids={record.papers} papers={papers} />
      </div>
      <p className={styles.cost}>{totalMinor === 0 && record.costs.length === 0 ? '' : words.moneyOf(totalMinor, one.earlier)}</p>
    </article>
  );
}

/** One line that was simply done says no more than the title made of it. */
function tellsMoreThanTitle({ lines, title }: RecordView['record']): boolean {
  return lines.some((line) => line.outcome !== 'done' || line.note !== '') || lines.map((line) => line.name).join(', ') !== title;
}

function Lines({ record }: { readonly record: RecordView['record'] }) {
  return (
    <ul className={styles.lines}>
      {record.lines.map((line, at) => (
        <li key={`${at} ${line.name}`}>{line.name}{line.outcome !== 'done' && `: ${tell(`outcome.${line.outcome}`)}`}{line.note !== '' && `, ${line.note}`}</li>
      ))}
    </ul>
  );
}

function remarks({ record, enteredAt, written, amended, earlier }: RecordView, date: (date: string) => string): string[] {
  const entered = enteredAt === '' ? '' : date(enteredAt.slice(0, 10));
  const place = record.place === 'home' ? tell('records.home') : record.placeName === null ? tell('records.garage') : tell('records.garage-named', { name: record.placeName });
  return [
    ...(earlier === null ? [] : [tell('earlier.keeper')]),
    place,
    ...(record.doneBy === null || record.doneBy === record.placeName ? [] : [tell('records.done-by', { name: record.doneBy })]),
    ...(record.reference === null ? [] : [tell('records.reference', { text: record.reference })]),
    tell(`written.${written}`, { date: entered }),
    ...(amended ? [tell('records.amended')] : []),
    ...(earlier === null || earlier.withheld.length === 0 ? [] : [tell('earlier.withheld', { fields: withheldFields(earlier.withheld) })]),
  ];
}

function PaperLinks({ ids, papers }: { readonly ids: readonly string[]; readonly papers: ReadonlyMap<string, Paper> }) {
  const known = ids.flatMap((id) => papers.get(id) ?? []);
  if (known.length === 0) return null;
  return (
    <ul className={styles.papers} aria-label={tell('records.papers')}>
      {known.map((paper) => (
        <li key={paper.id}><PaperLink paper={paper.id} text={paper.name} /></li>
      ))}
    </ul>
  );
}
