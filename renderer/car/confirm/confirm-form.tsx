import { TextInput } from '@mantine/core';
import { useEffect, useRef } from 'react';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { change } from '../../ui/change.ts';
import { bindText } from '../../ui/form/bind.ts';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldRow } from '../../ui/form/fields.tsx';
import { FieldsRead } from '../../ui/form/read-fields.ts';
import { useEntry } from '../../ui/form/use-entry.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';
import { intervalDraft, readInterval } from '../forms/interval-draft.ts';
import { IntervalFields } from '../forms/interval-fields.tsx';
import styles from './confirm.module.css';

interface ConfirmFormProps {
  readonly item: CarView['items'][number]['item'];
  readonly unit: CarView['car']['unit'];
  /** The source that is offered. */
  readonly source: string;
  /** Another one was confirmed or put off in the same sheet before. */
  readonly follows: boolean;
  readonly onConfirmed: (source: string) => void;
  readonly onLater?: () => void;
  readonly onClose: () => void;
}

/** Confirms one interval: as it stands with Enter alone, or with its page, or changed to what the source prints. */
export function ConfirmForm({ item, unit, source, follows, onConfirmed, onLater, onClose }: ConfirmFormProps) {
  const page = useRef<HTMLInputElement>(null);
  // The sheet itself puts the focus on the first one; taken before the sheet has it, it could not go back to where it came from.
  useEffect(() => {
    if (follows) page.current?.focus();
  }, [follows]);
  const entry = useEntry({
    key: `item.confirm ${item.id}`,
    start: { source, page: '', ...intervalDraft(item.interval, unit) },
    send: (draft) => {
      const read = new FieldsRead();
      const whole = read.whole({ item: item.id, source: sourceText(draft), interval: readInterval(draft, read) });
      return whole.ok ? change('item.confirm', whole.value) : Promise.resolve(whole);
    },
    onDone: (reply, draft) => {
      note(tell('confirm.done', { item: reply.item.name, source: reply.item.source ?? '' }), reply.undo);
      onConfirmed(draft.source);
    },
  });
  return (
    <EntryForm entry={entry} submit={tell('confirm.submit')} onCancel={onClose} {...(onLater === undefined ? {} : { other: { label: tell('confirm.later'), onPress: onLater } })}>
      <p>{tell('confirm.what')} <span className={styles.soft}>{item.source === null ? tell('confirm.now-none') : tell('confirm.now', { source: item.source })}</span></p>
      <FieldRow>
        <TextInput {...bindText(entry, 'source')} label={tell('confirm.source')} autoComplete="off" />
        <TextInput {...bindText(entry, 'page')} ref={page} data-autofocus label={tell('confirm.page')} autoComplete="off" />
      </FieldRow>
      <IntervalFields entry={entry} />
    </EntryForm>
  );
}

/** The source as it is kept: with its page, where one was given. */
function sourceText({ source, page }: { readonly source: string; readonly page: string }): string {
  return page.trim() === '' ? source : tell('confirm.source-page', { source: source.trim(), page: page.trim() });
}
