import { Button, Checkbox, CloseButton, NativeSelect, TextInput } from '@mantine/core';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { FieldGroup } from '../../ui/form/fields.tsx';
import type { FieldPlace } from '../../ui/form/use-entry.ts';
import { tell } from '../../ui/words/tell.ts';
import styles from './forms.module.css';
import { lineDone, lineOfItem, type LineDraft, type Work } from './record-draft.ts';
import { RecordFinding } from './record-finding.tsx';
import { fromWorked, workedChoices, workedOf } from './worked.ts';

type Item = CarView['items'][number]['item'];
type Place = (path: string) => FieldPlace;

interface RecordLinesProps {
  readonly place: Place;
  readonly group: FieldPlace;
  readonly items: readonly Item[];
  readonly lines: readonly LineDraft[];
  /** Lines that one came with: they stand before everything else. */
  readonly begun: readonly LineDraft[];
  readonly onChange: (lines: readonly LineDraft[]) => void;
}

/** What was done: the car's items to be ticked, and lines of their own; each replaced, looked at or left. */
export function RecordLines({ place, group, items, lines, begun, onChange }: RecordLinesProps) {
  const replace = (at: number, change: Partial<LineDraft>) => onChange(lines.map((line, index) => (index === at ? { ...line, ...change } : line)));
  const remove = (at: number) => onChange(lines.filter((_, index) => index !== at));
  const itemLine = (item: Item) => {
    const at = lines.findIndex((line) => line.item === item.id);
    return <ItemLine key={item.id} at={at} item={item} line={lines[at]} place={place} onTick={(done) => (done ? onChange([...lines, lineOfItem(item)]) : remove(at))} onChange={(change) => replace(at, change)} />;
  };
  const [first, rest] = [begunItems(items, begun), begun.length === 0 ? [] : items.filter((item) => !isBegun(item, begun))];
  return (
    <FieldGroup legend={tell('record-form.lines')} hint={tell('record-form.lines-what')} place={group}>
      {first.map(itemLine)}
      {lines.map((line, at) => line.item === null && <OwnLine key={at} at={at} line={line} place={place} onChange={(change) => replace(at, change)} onRemove={() => remove(at)} />)}
      <Button className={styles.add ?? ''} variant="default" size="compact-md" onClick={() => onChange([...lines, lineDone({ item: null, name: '', work: 'replace' })])}>{tell('record-form.add-line')}</Button>
      {rest.map(itemLine)}
    </FieldGroup>
  );
}

/** Those that one came with, or all where one came with none. */
function begunItems(items: readonly Item[], begun: readonly LineDraft[]): readonly Item[] {
  return begun.length === 0 ? items : items.filter((item) => isBegun(item, begun));
}

function isBegun({ id }: Item, begun: readonly LineDraft[]): boolean {
  return begun.some((line) => line.item === id);
}

interface ItemLineProps {
  readonly at: number;
  readonly item: Item;
  readonly line: LineDraft | undefined;
  readonly place: Place;
  readonly onTick: (done: boolean) => void;
  readonly onChange: (change: Partial<LineDraft>) => void;
}

function ItemLine({ at, item, line, place, onTick, onChange }: ItemLineProps) {
  return (
    <div className={styles.line}>
      <Checkbox label={item.name} checked={line !== undefined} onChange={(event) => onTick(event.currentTarget.checked)} />
      {line !== undefined && (
        <>
          <NativeSelect size="xs" aria-label={tell('record-form.outcome', { line: item.name })} value={workedOf(line)} onChange={(event) => onChange(fromWorked(event.currentTarget.value, item.work))} data={workedChoices(item.work)} />
          <RecordFinding at={at} line={line} place={place} onChange={onChange} />
        </>
      )}
    </div>
  );
}

interface OwnLineProps {
  readonly at: number;
  readonly line: LineDraft;
  readonly place: Place;
  readonly onChange: (change: Partial<LineDraft>) => void;
  readonly onRemove: () => void;
}

/** What a line of one's own asks for is what was done to it. */
const ASKED: Work = 'replace';

function OwnLine({ at, line, place, onChange, onRemove }: OwnLineProps) {
  return (
    <div className={styles.own}>
      {/* One that was just added is empty and is typed into at once; those that one came with are not. */}
      <TextInput {...place(`lines.${at}.name`)} label={tell('record-form.line')} value={line.name} autoFocus={line.name === ''} autoComplete="off" onChange={(event) => onChange({ name: event.currentTarget.value })} />
      <NativeSelect label={tell('record-form.line-work')} value={workedOf(line)} onChange={(event) => onChange(fromWorked(event.currentTarget.value, line.work))} data={workedChoices(ASKED)} />
      <CloseButton size="lg" className={styles.remove ?? ''} aria-label={tell('record-form.remove-line', { n: at + 1 })} onClick={onRemove} />
      <RecordFinding at={at} line={line} place={place} onChange={onChange} />
    </div>
  );
}
