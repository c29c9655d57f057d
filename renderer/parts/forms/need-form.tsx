import { Button, CloseButton, NativeSelect, TextInput } from '@mantine/core';
import type { Result } from '../../../shared-core/result/result.ts';
import type { NeedsView } from '../../../shared-core/views/needs-view-schema.ts';
import type { PartsView } from '../../../shared-core/views/parts-view-schema.ts';
import { Asked } from '../../ui/asked.tsx';
import { change, type Changed } from '../../ui/change.ts';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldGroup } from '../../ui/form/fields.tsx';
import { FieldsRead } from '../../ui/form/read-fields.ts';
import { useEntry } from '../../ui/form/use-entry.ts';
import { useWords } from '../../ui/household.tsx';
import { note } from '../../ui/notices/notice-store.ts';
import { useAsk } from '../../ui/use-ask.ts';
import { tell } from '../../ui/words/tell.ts';
import styles from '../parts.module.css';

interface NeedFormProps {
  readonly view: PartsView;
  readonly item: string;
  readonly onClose: () => void;
}

/** Enters what a task takes: specifications, and how much of each. */
export function NeedForm(props: NeedFormProps) {
  const needs = useAsk('needs.show', { horizonDays: 90 });
  return <Asked answer={needs}>{({ tasks }) => {
    const task = tasks.find((one) => one.item === props.item);
    return task === undefined ? null : <NeedsOfTask {...props} task={task} />;
  }}</Asked>;
}

interface Row {
  readonly specification: string;
  readonly quantity: string;
}

function NeedsOfTask({ view, item, task, onClose }: NeedFormProps & { readonly task: NeedsView['tasks'][number] }) {
  const { byName } = useWords();
  const choices = view.specifications.map(({ specification }) => ({ value: specification.id, label: tell('need-form.choice', { name: specification.name, unit: tell(`amount-unit.${specification.unit}`) }) })).sort((a, b) => byName(a.label, b.label));
  const begin: Row = { specification: choices[0]?.value ?? '', quantity: '1' };
  const entry = useEntry({
    key: `item.change needs ${item}`,
    start: { rows: (task.needs.length === 0 ? [begin] : task.needs.map((need) => ({ specification: need.specification, quantity: String(need.quantity) }))) as readonly Row[] },
    send: ({ rows }) => send(rows, item),
    onDone: ({ undo }) => {
      note(tell('need-form.done', { item: task.itemName }), undo);
      onClose();
    },
  });
  const { rows } = entry.draft;
  const set = (at: number, next: Partial<Row>) => entry.set({ rows: rows.map((row, index) => (index === at ? { ...row, ...next } : row)) });
  if (choices.length === 0) return <p>{tell('need-form.no-specification')}</p>;
  return (
    <EntryForm entry={entry} submit={tell('parts.save')} onCancel={onClose}>
      <FieldGroup legend={tell('need-form.rows')} hint={tell('need-form.hint')} place={entry.atGroup('needs')}>
        {rows.map((row, at) => (
          <div key={at} className={styles.line}>
            <NativeSelect {...entry.at(`needs.${at}.specification`)} {...(at === 0 ? { 'data-autofocus': true } : {})} label={tell('need-form.specification', { n: at + 1 })} value={row.specification} onChange={(event) => set(at, { specification: event.currentTarget.value })} data={choices} />
            <div className={styles.head}>
              <TextInput {...entry.at(`needs.${at}.quantity`)} label={tell('need-form.quantity', { n: at + 1 })} value={row.quantity} onChange={(event) => set(at, { quantity: event.currentTarget.value })} inputMode="decimal" autoComplete="off" />
              <CloseButton aria-label={tell('need-form.remove', { n: at + 1 })} onClick={() => entry.set({ rows: rows.filter((_, index) => index !== at) })} />
            </div>
          </div>
        ))}
        <Button variant="default" size="compact-md" onClick={() => entry.set({ rows: [...rows, begin] })}>{tell('need-form.add')}</Button>
      </FieldGroup>
    </EntryForm>
  );
}

async function send(rows: readonly Row[], item: string): Promise<Result<Changed<'item.change'>>> {
  const read = new FieldsRead();
  const whole = read.whole({ id: item, needs: rows.map((row, at) => ({ specification: row.specification, quantity: read.number(`needs.${at}.quantity`, row.quantity, '4.5') })) });
  return whole.ok ? change('item.change', whole.value) : whole;
}
