import { Button, Checkbox, CloseButton, NativeSelect, TextInput } from '@mantine/core';
import type { PartsView } from '../../../shared-core/views/parts-view-schema.ts';
import { bindText, bindTick } from '../../ui/form/bind.ts';
import { choices } from '../../ui/form/choices.ts';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldGroup, FieldRow } from '../../ui/form/fields.tsx';
import { useEntry, type Entry } from '../../ui/form/use-entry.ts';
import { useWords } from '../../ui/household.tsx';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';
import { meetsStart, partDraft, sendPart, type MeetsDraft, type PartDraft } from './part-draft.ts';
import styles from '../parts.module.css';

interface PartFormProps {
  readonly view: PartsView;
  /** What stands, or null: a new one. */
  readonly now: PartsView['parts'][number]['part'] | null;
  /** What a new one is to meet. */
  readonly meets: string | null;
  readonly onClose: () => void;
}

/** States a part with what it meets and who says so, or a kit with its contents. */
export function PartForm({ view, now, meets, onClose }: PartFormProps) {
  const entry = useEntry({
    key: `part.set ${now?.id ?? ''} ${meets ?? ''}`,
    start: partDraft(now, meets),
    send: (draft) => sendPart(draft, now),
    onDone: ({ set, undo }) => {
      note(tell('part-form.done', { part: set.name }), undo);
      onClose();
    },
  });
  return (
    <EntryForm entry={entry} submit={tell('parts.save')} onCancel={onClose}>
      <FieldRow>
        <TextInput {...bindText(entry, 'name')} data-autofocus label={tell('part-form.name')} placeholder={tell('part-form.name-example')} autoComplete="off" />
        <TextInput {...bindText(entry, 'number')} label={tell('part-form.number')} autoComplete="off" />
      </FieldRow>
      <Checkbox {...bindTick(entry, 'kit')} label={tell('part-form.kit')} />
      {entry.draft.kit ? <Contents entry={entry} view={view} /> : <Meets entry={entry} view={view} />}
      {!entry.draft.kit && <TextInput {...bindText(entry, 'keepsOpenedDays')} label={tell('lot.keeps')} inputMode="numeric" autoComplete="off" />}
    </EntryForm>
  );
}

interface RowsProps {
  readonly entry: Entry<PartDraft>;
  readonly view: PartsView;
}

function Meets({ entry, view }: RowsProps) {
  const { byName } = useWords();
  const { meets } = entry.draft;
  const all = view.specifications.map(({ specification }) => ({ value: specification.id, label: specification.name })).sort((a, b) => byName(a.label, b.label));
  const set = (at: number, next: Partial<MeetsDraft>) => entry.set({ meets: meets.map((one, index) => (index === at ? { ...one, ...next } : one)) });
  const [first] = all;
  return (
    <FieldGroup legend={tell('part-form.meets')} hint={tell('part-form.meets-what')} place={entry.atGroup('meets')}>
      {meets.map((one, at) => (
        <div key={at} className={styles.line}>
          <div className={styles.head}>
            <NativeSelect {...entry.at(`meets.${at}`)} label={tell('part-form.specification', { n: at + 1 })} value={one.specification} onChange={(event) => set(at, { specification: event.currentTarget.value })} data={all} />
            <CloseButton aria-label={tell('part-form.meets-remove', { n: at + 1 })} onClick={() => entry.set({ meets: meets.filter((_, index) => index !== at) })} />
          </div>
          <FieldRow>
            <NativeSelect {...entry.at(`stated.${at}.by`)} label={tell('part-form.by', { n: at + 1 })} value={one.by} onChange={(event) => set(at, { by: event.currentTarget.value })} data={choices('stated-by.', ['keeper', 'part-maker', 'car-maker', 'seller'])} />
            <NativeSelect {...entry.at(`stated.${at}.basis`)} label={tell('part-form.basis', { n: at + 1 })} value={one.basis} onChange={(event) => set(at, { basis: event.currentTarget.value })} data={choices('stated-basis.', ['fit', 'approval', 'grade'])} />
            <TextInput {...entry.at(`stated.${at}.source`)} label={tell('part-form.source', { n: at + 1 })} value={one.source} onChange={(event) => set(at, { source: event.currentTarget.value })} autoComplete="off" />
          </FieldRow>
        </div>
      ))}
      {first === undefined ? <p>{tell('part-form.no-specification')}</p> : <Button variant="default" size="compact-md" onClick={() => entry.set({ meets: [...meets, meetsStart(first.value)] })}>{tell('part-form.meets-add')}</Button>}
    </FieldGroup>
  );
}

function Contents({ entry, view }: RowsProps) {
  const { byName } = useWords();
  const { contains } = entry.draft;
  const singles = view.parts.filter(({ part }) => part.contains.length === 0).map(({ part }) => ({ value: part.id, label: part.name })).sort((a, b) => byName(a.label, b.label));
  const set = (at: number, next: Partial<(typeof contains)[number]>) => entry.set({ contains: contains.map((one, index) => (index === at ? { ...one, ...next } : one)) });
  const [first] = singles;
  return (
    <FieldGroup legend={tell('part-form.contains')} hint={tell('part-form.contains-what')} place={entry.atGroup('contains')}>
      {contains.map((one, at) => (
        <div key={at} className={styles.head}>
          <NativeSelect {...entry.at(`contains.${at}.part`)} label={tell('part-form.inside', { n: at + 1 })} value={one.part} onChange={(event) => set(at, { part: event.currentTarget.value })} data={singles} />
          <TextInput {...entry.at(`contains.${at}.quantity`)} label={tell('part-form.inside-quantity', { n: at + 1 })} value={one.quantity} onChange={(event) => set(at, { quantity: event.currentTarget.value })} inputMode="decimal" autoComplete="off" />
          <CloseButton aria-label={tell('part-form.inside-remove', { n: at + 1 })} onClick={() => entry.set({ contains: contains.filter((_, index) => index !== at) })} />
        </div>
      ))}
      {first !== undefined && <Button variant="default" size="compact-md" onClick={() => entry.set({ contains: [...contains, { part: first.value, quantity: '1' }] })}>{tell('part-form.inside-add')}</Button>}
    </FieldGroup>
  );
}
