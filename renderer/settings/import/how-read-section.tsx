import type { ImportView } from '../../../shared-core/views/import/import-view.ts';
import { Section } from '../../ui/section.tsx';
import { tell } from '../../ui/words/tell.ts';
import { HowRead } from './how-read.tsx';
import { cutBy, type TableChoices, type TableDraft } from './table-draft.ts';
import sectionStyles from '../../ui/section.module.css';
import styles from './import.module.css';

interface HowReadSectionProps {
  readonly draft: TableDraft;
  /** Null where the table cannot be read so: then what parts its columns, and its head, may be chosen. */
  readonly view: ImportView | null;
  readonly onChoices: (choices: TableChoices) => void;
}

const DELIMITERS = () => [
  { value: ',', label: tell('import-delimiter.comma') },
  { value: ';', label: tell('import-delimiter.semicolon') },
  { value: '\t', label: tell('import-delimiter.tab') },
  { value: '|', label: tell('import-delimiter.line') },
] as const;
const HEADS = () => [
  { value: 'yes', label: tell('import-head.yes') },
  { value: 'no', label: tell('import-head.no') },
] as const;
const ORDERS = () => (['dmy', 'mdy', 'ymd'] as const).map((value) => ({ value, label: tell(`import-order.${value}`) }));
const MARKS = () => [
  { value: '.', label: tell('import-mark.point') },
  { value: ',', label: tell('import-mark.comma') },
] as const;
const UNITS = () => [
  { value: 'km', label: tell('unit.kilometres') },
  { value: 'mi', label: tell('unit.miles') },
] as const;

/** What was found out about the table, how, and each of it to be chosen otherwise. */
export function HowReadSection({ draft: { choices }, view, onChoices }: HowReadSectionProps) {
  const found = view?.detected;
  const open = (answer: string) => view?.questions.some((question) => question.answer === answer) === true;
  const plain = (answer: string, words: string) => (open(answer) ? tell('import.unanswered') : words);
  const head = found === undefined || found.hasHeader.value === null ? null : found.hasHeader.value ? 'yes' : 'no';
  const cars = view?.cars.map(({ id, name }) => ({ value: id, label: name })) ?? [];
  return (
    <Section id="import-how" title={tell('import.how')} hint={tell('import.how-what')}>
      {view !== null && <p className={sectionStyles.small}>{tell('import.how-text', { rows: tell('import.rows', { n: view.counts.rows }), encoding: view.detected.encoding })}</p>}
      <div className={styles.ways}>
        <HowRead label={tell('import.delimiter')} options={DELIMITERS()} chosen={choices.delimiter} found={found?.delimiter.value ?? null} none={tell('import.found-again')} onChoose={(delimiter) => onChoices(cutBy(choices, delimiter))} />
        <HowRead label={tell('import.head')} options={HEADS()} chosen={choices.hasHeader === null ? null : choices.hasHeader ? 'yes' : 'no'} found={head} none={tell('import.found-again')} onChoose={(is) => onChoices({ ...choices, hasHeader: is === null ? null : is === 'yes' })} />
        {found !== undefined && (
          <>
            <HowRead label={tell('import.order')} options={ORDERS()} chosen={choices.dateOrder} found={found.dateOrder.value} why={found.dateOrder.text} none={plain('dateOrder', tell('import.order-plain'))} onChoose={(dateOrder) => onChoices({ ...choices, dateOrder })} />
            <HowRead label={tell('import.mark')} options={MARKS()} chosen={choices.decimalMark} found={found.decimalMark.value} why={found.decimalMark.text} none={plain('decimalMark', tell('import.mark-plain'))} onChoose={(decimalMark) => onChoices({ ...choices, decimalMark })} />
            <HowRead label={tell('import.unit')} options={UNITS()} chosen={choices.unit} found={found.unit.value} none={plain('unit', tell(found.unit.by === 'car' ? 'import.unit-car' : 'import.unit-rows'))} onChoose={(unit) => onChoices({ ...choices, unit })} />
            {cars.length > 1 && <HowRead label={tell('import.car')} options={cars} chosen={choices.car} found={found.car.value} none={plain('car', tell('import.car-rows'))} onChoose={(car) => onChoices({ ...choices, car })} />}
          </>
        )}
      </div>
    </Section>
  );
}
