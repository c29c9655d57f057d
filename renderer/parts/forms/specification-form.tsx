import { Button, Checkbox, CloseButton, NativeSelect, Textarea, TextInput } from '@mantine/core';
import type { SpecificationView } from '../../../shared-core/views/parts-view-schema.ts';
import { bindText, bindTick } from '../../ui/form/bind.ts';
import { choices } from '../../ui/form/choices.ts';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldGroup, FieldRow, MoreFields } from '../../ui/form/fields.tsx';
import { useEntry } from '../../ui/form/use-entry.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';
import { baseChoices, sendSpecification, specificationDraft, type AskDraft } from './specification-draft.ts';
import styles from '../parts.module.css';

interface SpecificationFormProps {
  /** What stands, or null: a new one. */
  readonly now: SpecificationView['specification'] | null;
  readonly onClose: () => void;
}

/** States what a need must meet, in the handbook's own words; apart from the parts that meet it. */
export function SpecificationForm({ now, onClose }: SpecificationFormProps) {
  const entry = useEntry({
    key: `specification.set ${now?.id ?? ''}`,
    start: specificationDraft(now),
    send: (draft) => sendSpecification(draft, now),
    onDone: ({ set, undo }) => {
      note(tell('specification.done', { name: set.name }), undo);
      onClose();
    },
  });
  const { asks, use } = entry.draft;
  const setAsk = (at: number, next: Partial<AskDraft>) => entry.set({ asks: asks.map((ask, index) => (index === at ? { ...ask, ...next } : ask)) });
  return (
    <EntryForm entry={entry} submit={tell('parts.save')} onCancel={onClose}>
      <FieldRow>
        <TextInput {...bindText(entry, 'name')} data-autofocus label={tell('specification.name')} placeholder={tell('specification.name-example')} autoComplete="off" />
        <NativeSelect {...bindText(entry, 'unit')} label={tell('specification.unit')} data={choices('amount-unit.', ['each', 'litre', 'kilogram', 'metre', 'set'])} />
      </FieldRow>
      <FieldGroup legend={tell('specification.asks')} hint={tell('specification.asks-what')} place={entry.atGroup('asks')}>
        {asks.map((ask, at) => (
          <div key={at} className={styles.head}>
            <NativeSelect {...entry.at(`asks.${at}.kind`)} label={tell('specification.ask-kind', { n: at + 1 })} value={ask.kind} onChange={(event) => setAsk(at, { kind: event.currentTarget.value })} data={choices('ask-kind.', ['approval', 'grade', 'viscosity', 'size', 'thread', 'handedness', 'material', 'other'])} />
            <TextInput {...entry.at(`asks.${at}.text`)} label={tell('specification.ask-text', { n: at + 1 })} value={ask.text} onChange={(event) => setAsk(at, { text: event.currentTarget.value })} autoComplete="off" />
            <CloseButton aria-label={tell('specification.ask-remove', { n: at + 1 })} onClick={() => entry.set({ asks: asks.filter((_, index) => index !== at) })} />
          </div>
        ))}
        <Button variant="default" size="compact-md" onClick={() => entry.set({ asks: [...asks, { kind: 'size', text: '' }] })}>{tell('specification.ask-add')}</Button>
      </FieldGroup>
      <FieldGroup legend={tell('specification.fluid')} hint={tell('specification.fluid-what')} place={entry.atGroup('fluid')}>
        <FieldRow>
          <NativeSelect label={tell('specification.use')} value={use} onChange={(event) => entry.set({ use: event.currentTarget.value, base: '' })} data={choices('fluid-use.', ['none', 'brake-fluid', 'coolant', 'grease'])} />
          {use !== 'none' && <NativeSelect label={tell('specification.base')} value={entry.draft.base} onChange={(event) => entry.set({ base: event.currentTarget.value })} data={baseChoices(use)} />}
        </FieldRow>
      </FieldGroup>
      <Checkbox {...bindTick(entry, 'mix')} label={tell('specification.mix')} />
      <MoreFields>
        <TextInput {...bindText(entry, 'step')} label={tell('specification.step')} description={tell('specification.step-what')} inputMode="decimal" autoComplete="off" />
        <Textarea {...bindText(entry, 'note')} label={tell('parts.note')} rows={2} />
      </MoreFields>
    </EntryForm>
  );
}
