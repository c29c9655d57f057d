import { Button, Checkbox, CloseButton, NativeSelect, TextInput } from '@mantine/core';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { choices } from '../../ui/form/choices.ts';
import { FieldGroup } from '../../ui/form/fields.tsx';
import type { FieldPlace } from '../../ui/form/use-entry.ts';
import { tell } from '../../ui/words/tell.ts';
import styles from './forms.module.css';
import { lineOfItem, outcomesOf, type LineDraft, type Outcome, type Work } from './record-draft.ts';

type Item = CarView['items'][number]['item'];

interface RecordLinesProps {
  readonly place: (path: string) => FieldPlace;
  readonly group: FieldPlace;
  readonly items: readonly Item[];
  readonly lines: readonly LineDraft[];
  readonly onChange: (lines: readonly LineDraft[]) => void;
}

/** What was done: the car's items to be ticked, and lines of their own. */
export function RecordLines({ place, group, items, lines, onChange }: RecordLinesProps) {
  const replace = (at: number, change: Partial<LineDraft>) => onChange(lines.map((line, index) => (index === at ? { ...line, ...change } : line)));
  const remove = (at: number) => onChange(lines.filter((_, index) => index !== at));
  return (
    <FieldGroup legend={tell('record-form.lines')} hint={tell('record-form.lines-what')} place={group}>
      {items.map((item) => {
        const at = lines.findIndex((line) => line.item === item.id);
        return <ItemLine key={item.id} item={item} line={lines[at]} onTick={(done) => (done ? onChange([...lines, lineOfItem(item)]) : remove(at))} onOutcome={(outcome) => replace(at, { outcome })} />;
      })}
      {lines.map((line, at) => line.item === null && <OwnLine key={at} at={at} line={line} place={place(`lines.${at}.name`)} onChange={(change) => replace(at, change)} onRemove={() => remove(at)} />)}
      <Button className={styles.add ?? ''} variant="default" size="compact-md" onClick={() => onChange([...lines, { item: null, name: '', work: 'replace', outcome: 'done' }])}>{tell('record-form.add-line')}</Button>
    </FieldGroup>
  );
}

interface ItemLineProps {
  readonly item: Item;
  readonly line: LineDraft | undefined;
  readonly onTick: (done: boolean) => void;
  readonly onOutcome: (outcome: Outcome) => void;
}

function ItemLine({ item, line, onTick, onOutcome }: ItemLineProps) {
  return (
    <div className={styles.line}>
      <Checkbox label={item.name} checked={line !== undefined} onChange={(event) => onTick(event.currentTarget.checked)} />
      {line !== undefined && (
        <NativeSelect size="xs" aria-label={tell('record-form.outcome', { line: item.name })} value={line.outcome} onChange={(event) => onOutcome(event.currentTarget.value as Outcome)} data={choices('outcome.', outcomesOf(item.work))} />
      )}
    </div>
  );
}

interface OwnLineProps {
  readonly at: number;
  readonly line: LineDraft;
  readonly place: FieldPlace;
  readonly onChange: (change: Partial<LineDraft>) => void;
  readonly onRemove: () => void;
}

function OwnLine({ at, line, place, onChange, onRemove }: OwnLineProps) {
  const setWork = (work: Work) => onChange({ work, outcome: work === 'replace' ? 'done' : 'good' });
  return (
    <div className={styles.own}>
      <TextInput {...place} label={tell('record-form.line')} value={line.name} autoFocus autoComplete="off" onChange={(event) => onChange({ name: event.currentTarget.value })} />
      <NativeSelect label={tell('record-form.line-work')} value={line.work} onChange={(event) => setWork(event.currentTarget.value as Work)} data={choices('item-form.work-', ['replace', 'check'])} />
      <CloseButton size="lg" className={styles.remove ?? ''} aria-label={tell('record-form.remove-line', { n: at + 1 })} onClick={onRemove} />
    </div>
  );
}
