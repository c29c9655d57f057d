import { Button } from '@mantine/core';
import { useRef, useState, type FormEvent } from 'react';
import type { ReplyOf } from '../../../shared-core/contract/contract.ts';
import type { CardView } from '../../../shared-core/views/card-view.ts';
import { change } from '../../ui/change.ts';
import { sayFault } from '../../ui/form/say-fault.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';
import { BeginSection, type LeftOut } from './begin-section.tsx';
import { Beside } from './beside.tsx';
import { EditorContext } from './editor-context.ts';
import { LeaveQuestion } from './leave-question.tsx';
import type { Editing } from './sheet-draft.ts';
import { StepsSection } from './steps-section.tsx';
import { useFocusNext } from './use-focus-next.ts';
import { useLeaveGuard } from './use-leave-guard.ts';
import { useSheetDraft } from './use-sheet-draft.ts';
import { WholeSection } from './whole-section.tsx';
import { focusHeading } from '../../ui/screen-title.tsx';
import styles from './editor.module.css';

interface SheetEditorProps {
  readonly editing: Editing;
  readonly shown: ReplyOf<'sheet.show'>;
  readonly card: CardView;
}

/** The sheet of a task as a form, saved as a whole; the cautions stand beside. */
export function SheetEditor({ editing, shown, card }: SheetEditorProps) {
  const entry = useSheetDraft(editing);
  const focusNext = useFocusNext();
  const leaving = useLeaveGuard(entry.dirty);
  const [leftOut, setLeftOut] = useState<LeftOut | null>(null);
  const form = useRef<HTMLFormElement>(null);
  const onSubmit = (event: FormEvent) => {
    event.preventDefault();
    void entry.save();
  };
  const onBegun = (left: LeftOut | null) => {
    setLeftOut(left);
    entry.dropTyped();
    focusHeading();
  };
  return (
    <EditorContext value={{ editing, card, entry, focusNext }}>
      <LeaveQuestion leaving={leaving} entry={entry} />
      {editing.sheet === null && <BeginSection editing={editing} onBegun={onBegun} />}
      {leftOut !== null && <CopiedLine leftOut={leftOut} car={editing.carName} />}
      <div className={styles.columns}>
        <form ref={form} noValidate className={styles.form} onSubmit={onSubmit} aria-label={tell('sheet-edit.form', { task: editing.itemName })}>
          <StepsSection />
          <WholeSection />
          <Foot entry={entry} editing={editing} />
        </form>
        <Beside shown={shown} dirty={entry.dirty} />
      </div>
      {editing.sheet !== null && <BeginSection editing={editing} onBegun={onBegun} />}
    </EditorContext>
  );
}

function Foot({ entry, editing }: { readonly entry: ReturnType<typeof useSheetDraft>; readonly editing: Editing }) {
  const onRemove = async () => {
    const reply = await change('sheet.remove', { item: editing.item });
    note(reply.ok ? tell('sheet-edit.sheet-removed', { task: editing.itemName }) : sayFault(reply.refusal), reply.ok ? reply.value.undo : []);
    if (reply.ok) entry.dropTyped();
    if (reply.ok) focusHeading();
  };
  return (
    <div className={styles.foot}>
      <p role="alert" className={entry.fault === null ? 'only-said' : styles.fault}>{entry.fault !== null && <><strong>{tell('sheet-edit.not-saved')}</strong> {entry.fault}</>}</p>
      {entry.overtaken && <p className={styles.soft} role="status">{tell('sheet-edit.overtaken')} <Button size="compact-sm" variant="subtle" onClick={entry.takeStanding}>{tell('sheet-edit.take-standing')}</Button></p>}
      <div className={styles.buttons}>
        <Button type="submit" aria-disabled={entry.sending}>{tell('sheet-edit.save')}</Button>
        {entry.dirty && <Button variant="default" onClick={entry.takeStanding}>{tell('sheet-edit.drop')}</Button>}
        {editing.sheet !== null && <Button variant="subtle" onClick={() => void onRemove()}>{tell('sheet-edit.remove-sheet')}</Button>}
        <span className={styles.state}>{tell(entry.dirty ? 'sheet-edit.unsaved' : editing.sheet === null ? 'sheet-edit.nothing' : 'sheet-edit.stands')}</span>
      </div>
    </div>
  );
}

/** What a copied sheet is to be read through for, and what did not come along. */
function CopiedLine({ leftOut: { torques, figures }, car }: { readonly leftOut: LeftOut; readonly car: string }) {
  return (
    <div className={styles.copied} role="status">
      <p>{tell('sheet-edit.copied-what', { car })}</p>
      {torques.length > 0 && <p>{tell('sheet-edit.copied-torques', { torques: torques.join(', ') })}</p>}
      {figures.length > 0 && <p>{tell('sheet-edit.copied-figures', { figures: figures.join(', '), car })}</p>}
    </div>
  );
}
