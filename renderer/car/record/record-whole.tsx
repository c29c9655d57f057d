import type { RecordView } from '../../../shared-core/views/record-view.ts';
import { amountWords } from '../../ui/amount-words.ts';
import { useWords } from '../../ui/household.tsx';
import { Section } from '../../ui/section.tsx';
import { PaperLink } from '../../ui/paper-link.tsx';
import { withheldFields } from '../../ui/withheld-fields.ts';
import { tell } from '../../ui/words/tell.ts';
import { valueText } from '../wear/value-words.ts';
import { whichOf } from '../wear/subject-words.ts';
import styles from './record.module.css';

/** The record as it reads now, whole. */
export function RecordWhole({ view }: { readonly view: RecordView }) {
  return (
    <Section title={tell('record.what')}>
      <Facts view={view} />
      <ul className={styles.lines} aria-label={tell('record.lines')}>
        {view.record.lines.map((line, at) => (
          <li key={`${at} ${line.name}`}>
            <strong>{line.name}</strong>{`: ${tell(`outcome.${line.outcome}`)}`}{line.minutes !== null && ` · ${tell('record.minutes', { n: line.minutes })}`}{line.note !== '' && ` · ${line.note}`}
          </li>
        ))}
      </ul>
      {view.record.note !== '' && <p className={styles.note}>{view.record.note}</p>}
      <Money view={view} />
      <Papers view={view} />
    </Section>
  );
}

function Facts({ view }: { readonly view: RecordView }) {
  const words = useWords();
  const { record, reading, written, enteredAt, lots, measured, earlier } = view;
  const rows: readonly (readonly [string, string | null])[] = [
    [tell('earlier.whose'), earlier === null ? null : tell('earlier.keeper')],
    [tell('earlier.withheld-label'), earlier === null || earlier.withheld.length === 0 ? null : withheldFields(earlier.withheld)],
    [tell('record.written'), tell(`written.${written}`, { date: enteredAt === '' ? '' : words.date(enteredAt.slice(0, 10)) })],
    [tell('record.where'), record.place === 'home' ? tell('records.home') : record.placeName === null ? tell('records.garage') : tell('records.garage-named', { name: record.placeName })],
    [tell('record.odometer'), reading === null ? null : words.distance(reading.typed.value, reading.typed.unit)],
    [tell('record-form.done-by'), record.doneBy],
    [tell('record-form.vouched'), record.vouched === undefined ? null : tell(`record-form.vouched-${record.vouched}`)],
    [tell('record-form.approved-by'), record.approvedBy],
    [tell('record-form.reference'), record.reference],
    [tell('record-form.method'), record.method],
    [tell('record-form.lots'), lots.length === 0 ? null : lots.map((one) => `${one.partName}, ${amountWords(one.quantity, one.unit)}`).join('; ')],
    [tell('record-form.measured'), measured.length === 0 ? null : measured.map((one) => [one.name ?? tell(`measured.${one.what}`), whichOf({ place: one.place, wheel: null }), valueText(one.typed)].filter((part) => part !== '').join(', ')).join('; ')],
  ];
  return (
    <dl className={styles.facts}>
      {rows.map(([label, value]) => value !== null && <div key={label}><dt>{label}</dt><dd>{value}</dd></div>)}
    </dl>
  );
}

function Money({ view: { record, totalMinor, earlier } }: { readonly view: RecordView }) {
  const words = useWords();
  if (record.costs.length === 0 && record.printedTotalMinor === null) return null;
  return (
    <table className={styles.money}>
      <caption>{tell('record-form.costs')}</caption>
      <tbody>
        {record.costs.map((cost, at) => <tr key={at}><td>{cost.text}</td><td>{tell(`cost.${cost.kind}`)}</td><td className={styles.amount}>{words.moneyOf(cost.amountMinor, earlier)}</td></tr>)}
        <tr><th scope="row" colSpan={2}>{tell(record.printedTotalMinor === null ? 'record.sum' : 'record.printed-total')}</th><td className={styles.amount}><strong>{words.moneyOf(record.printedTotalMinor ?? totalMinor, earlier)}</strong></td></tr>
      </tbody>
    </table>
  );
}

function Papers({ view: { papers } }: { readonly view: RecordView }) {
  if (papers.length === 0) return <p className={styles.soft}>{tell('record.no-papers')}</p>;
  return (
    <ul className={styles.papers} aria-label={tell('records.papers')}>
      {papers.map((paper) => <li key={paper.id}><PaperLink paper={paper.id} text={paper.name} /></li>)}
    </ul>
  );
}
