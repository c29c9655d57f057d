import type { RecordView } from '../../../shared-core/views/record-view.ts';
import { useWords } from '../../ui/household.tsx';
import type { HouseholdWords } from '../../ui/household-words.ts';
import { Section } from '../../ui/section.tsx';
import { tell } from '../../ui/words/tell.ts';
import styles from './record.module.css';

type Version = RecordView['versions'][number];
type Field = Version['changed'][number];

/** Every way in which the record was written: the first one stays to be read, and each amendment says why and what it changed. */
export function RecordVersions({ view: { versions, earlier } }: { readonly view: RecordView }) {
  const words = useWords();
  if (versions.length < 2) return null;
  return (
    <Section title={tell('record.versions')} hint={tell('record.versions-what')}>
      <ol className={styles.versions}>
        {versions.map((one, at) => (
          <li key={one.at + String(at)}>
            <p><strong>{words.date(one.on)}</strong>{` · ${one.why === null ? tell('record.first') : tell('record.amended', { why: one.why })}`}{one.withdrawn && ` · ${tell('record.withdrawn')}`}</p>
            {one.changed.length > 0 && (
              <dl className={styles.facts}>
                {one.changed.map((field) => <div key={field}><dt>{tell(`record-field.${field}`)}</dt><dd><del>{said(versions[at - 1], field, words, earlier)}</del> <ins>{said(one, field, words, earlier)}</ins></dd></div>)}
              </dl>
            )}
          </li>
        ))}
      </ol>
    </Section>
  );
}

/** What a version says in a field, in a line. */
function said(version: Version | undefined, field: Field, words: HouseholdWords, earlier: RecordView['earlier']): string {
  if (version === undefined) return '';
  const { record } = version;
  switch (field) {
    case 'date':
      return words.date(record.date);
    case 'lines':
      return record.lines.map((line) => [`${line.name}: ${tell(`outcome.${line.outcome}`)}`, line.minutes === null ? '' : tell('record.minutes', { n: line.minutes }), line.note].filter((part) => part !== '').join(', ')).join('; ');
    case 'place':
      return tell(record.place === 'home' ? 'records.home' : 'records.garage');
    case 'costs':
      return nothingElse(record.costs.map((cost) => `${cost.text}, ${words.moneyOf(cost.amountMinor, earlier)}`).join('; '));
    case 'printedTotalMinor':
      return record.printedTotalMinor === null ? tell('record.nothing') : words.moneyOf(record.printedTotalMinor, earlier);
    case 'lotsUsed':
      return nothingElse(record.lotsUsed.map((one) => String(one.quantity)).join('; '));
    case 'papers':
      return tell('record.papers-n', { n: record.papers.length });
    case 'reconstructed':
      return tell(record.reconstructed ? 'record.from-memory' : 'record.at-the-time');
    case 'vouched':
      return tell(`record-form.vouched-${record.vouched ?? 'none'}`);
    default:
      return nothingElse(record[field] ?? '');
  }
}

function nothingElse(text: string): string {
  return text === '' ? tell('record.nothing') : text;
}
