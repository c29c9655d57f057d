import { Checkbox, NativeSelect } from '@mantine/core';
import type { NeedsView } from '../../../shared-core/views/needs-view-schema.ts';
import type { PartsView } from '../../../shared-core/views/parts-view-schema.ts';
import { Asked } from '../../ui/asked.tsx';
import { change } from '../../ui/change.ts';
import { EntryForm } from '../../ui/form/entry-form.tsx';
import { FieldGroup } from '../../ui/form/fields.tsx';
import { useEntry } from '../../ui/form/use-entry.ts';
import { useWords } from '../../ui/household.tsx';
import { note } from '../../ui/notices/notice-store.ts';
import { useAsk } from '../../ui/use-ask.ts';
import { tell } from '../../ui/words/tell.ts';

interface TaskToolsFormProps {
  readonly view: PartsView;
  readonly onClose: () => void;
}

/** States all the tools that a task takes. */
export function TaskToolsForm(props: TaskToolsFormProps) {
  const needs = useAsk('needs.show', { horizonDays: 90 });
  return <Asked answer={needs}>{({ tasks }) => (tasks.length === 0 ? <p>{tell('take.no-tasks')}</p> : <ToolsOfTask {...props} tasks={tasks} />)}</Asked>;
}

function ToolsOfTask({ view, onClose, tasks }: TaskToolsFormProps & { readonly tasks: NeedsView['tasks'] }) {
  const { byName } = useWords();
  const sorted = [...tasks].sort((a, b) => byName(a.carName, b.carName) || byName(a.itemName, b.itemName));
  const toolsOf = (item: string) => view.tools.filter((tool) => tool.takenBy.some((one) => one.item === item)).map((tool) => tool.id);
  const first = sorted[0]?.item ?? '';
  const entry = useEntry({
    key: 'task-tools.set',
    start: { item: first, tools: toolsOf(first) as readonly string[] },
    send: ({ item, tools }) => change('task-tools.set', { item, tools: [...tools] }),
    onDone: ({ undo }) => {
      note(tell('task-tools.done'), undo);
      onClose();
    },
  });
  const { item, tools } = entry.draft;
  return (
    <EntryForm entry={entry} submit={tell('parts.save')} onCancel={onClose}>
      <NativeSelect {...entry.at('item')} data-autofocus label={tell('task-tools.task')} value={item} onChange={(event) => entry.set({ item: event.currentTarget.value, tools: toolsOf(event.currentTarget.value) })} data={sorted.map((one) => ({ value: one.item, label: tell('needed.task-of', { car: one.carName, item: one.itemName }) }))} />
      <FieldGroup legend={tell('task-tools.tools')} place={entry.atGroup('tools')}>
        {[...view.tools].sort((a, b) => byName(a.name, b.name)).map((tool) => (
          <Checkbox key={tool.id} label={tell('task-tools.tool', { tool: tool.name, state: tell(`tool.state-${tool.state}`) })} checked={tools.includes(tool.id)} onChange={(event) => entry.set({ tools: event.currentTarget.checked ? [...tools, tool.id] : tools.filter((id) => id !== tool.id) })} />
        ))}
      </FieldGroup>
    </EntryForm>
  );
}
