import { NativeSelect, Textarea, TextInput } from '@mantine/core';
import { FieldRow } from '../../ui/form/fields.tsx';
import { unitChoices } from '../../ui/household-choices.ts';
import { useHousehold } from '../../ui/household.tsx';
import { Section } from '../../ui/section.tsx';
import { tell } from '../../ui/words/tell.ts';
import { useEditor } from './editor-context.ts';
import { Fold } from './fold.tsx';
import { KeyedList } from './keyed-list.tsx';
import { followUpDraft, lineDraft } from './sheet-draft.ts';
import { TickList } from './tick-list.tsx';
import styles from './editor.module.css';

/** What is of the whole task: its hazards, what is looked at afterwards, the reminder, what is looked at again, a note. */
export function WholeSection() {
  const { editing, entry } = useEditor();
  const { unit } = useHousehold();
  const { draft, set, at } = entry;
  return (
    <Section title={tell('sheet-edit.whole')}>
      <div className={styles.whole}>
        <Fold title={tell('sheet-edit.hazards-whole')} count={draft.hazards.length}>
          <TickList label={tell('sheet-edit.hazards-whole')} path="hazards" choices={editing.hazards.map(({ hazard, name }) => ({ value: hazard, label: name }))} ticked={draft.hazards} onChange={(hazards) => set({ hazards })} />
        </Fold>
        <Fold title={tell('sheet-edit.checks')} count={draft.checks.length}>
          <KeyedList path="checks" list={draft.checks} onChange={(checks) => set({ checks })} fresh={() => lineDraft('')} most={20} addLabel={tell('sheet-edit.check-add')} nameOf={(_one, one) => tell('sheet-edit.check-nth', { n: one + 1 })}>
            {(line, change, path) => <TextInput {...at(path)} label={tell('sheet-edit.check')} autoComplete="off" maxLength={200} value={line.text} onChange={(event) => change({ text: event.currentTarget.value })} />}
          </KeyedList>
        </Fold>
        <Fold title={tell('job.follow-ups')} count={draft.followUps.length}>
          <KeyedList path="followUps" list={draft.followUps} onChange={(followUps) => set({ followUps })} fresh={() => followUpDraft(unit)} most={10} addLabel={tell('sheet-edit.follow-up-add')} nameOf={(_one, one) => tell('sheet-edit.follow-up-nth', { n: one + 1 })}>
            {(one, change, path) => (
              <>
                <TextInput {...at(`${path}.text`)} label={tell('sheet-edit.follow-up')} autoComplete="off" maxLength={200} value={one.text} onChange={(event) => change({ text: event.currentTarget.value })} />
                <FieldRow>
                  <TextInput {...at(`${path}.days`)} label={tell('sheet-edit.follow-up-days')} inputMode="numeric" autoComplete="off" value={one.days} onChange={(event) => change({ days: event.currentTarget.value })} />
                  <TextInput {...at(`${path}.distance.value`)} label={tell('sheet-edit.follow-up-distance')} inputMode="numeric" autoComplete="off" value={one.distance} onChange={(event) => change({ distance: event.currentTarget.value })} />
                  <NativeSelect {...at(`${path}.distance.unit`)} label={tell('sheet-edit.follow-up-unit')} data={unitChoices()} value={one.unit} onChange={(event) => change({ unit: event.currentTarget.value })} />
                </FieldRow>
              </>
            )}
          </KeyedList>
        </Fold>
        <Textarea {...at('reset')} label={tell('sheet-edit.reset')} description={tell('sheet-edit.reset-what')} autosize minRows={1} maxLength={300} value={draft.reset} onChange={(event) => set({ reset: event.currentTarget.value })} />
        <Textarea {...at('note')} label={tell('sheet-edit.note')} autosize minRows={1} maxLength={1000} value={draft.note} onChange={(event) => set({ note: event.currentTarget.value })} />
      </div>
    </Section>
  );
}
