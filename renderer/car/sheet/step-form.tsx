import { Button, NativeSelect, Textarea, TextInput } from '@mantine/core';
import { useId } from 'react';
import { choices } from '../../ui/form/choices.ts';
import { FieldRow } from '../../ui/form/fields.tsx';
import { tell } from '../../ui/words/tell.ts';
import { useEditor } from './editor-context.ts';
import { FigureChoice } from './figure-choice.tsx';
import { Fold } from './fold.tsx';
import { KeyedList } from './keyed-list.tsx';
import { fluidDraft, lineDraft, refDraft, torqueDraft, type StepDraft, type Turn } from './sheet-draft.ts';
import { MeasureFields } from './measure-fields.tsx';
import { useQuestion } from './use-question.ts';
import { TickList } from './tick-list.tsx';
import { TorqueFields } from './torque-fields.tsx';
import styles from './editor.module.css';

interface StepFormProps {
  readonly step: StepDraft;
  readonly at: number;
  readonly of: number;
  readonly set: (change: Partial<StepDraft>) => void;
  readonly onPlace: (at: number) => void;
  readonly onDone: () => void;
}

/** One step with all that it may have. */
export function StepForm({ step, at, of, set, onPlace, onDone }: StepFormProps) {
  const { editing, entry } = useEditor();
  const question = useQuestion();
  const accesses = useId();
  const path = `steps.${at}`;
  return (
    <div className={styles.stepForm}>
      <Textarea {...entry.at(`${path}.text`)} label={tell('sheet-edit.text')} autosize minRows={2} maxLength={600} value={step.text} onChange={(event) => set({ text: event.currentTarget.value })} />
      <FieldRow>
        <NativeSelect {...entry.at(`${path}.turn`)} label={tell('sheet-edit.turn')} data={choices('turn.', ['before', 'drain', 'work', 'fill', 'run', 'level'])} value={step.turn} onChange={(event) => set({ turn: event.currentTarget.value as Turn })} />
        <NativeSelect id={`${entry.at(path).id}-place`} label={tell('sheet-edit.place')} data={Array.from({ length: of }, (_, one) => ({ value: String(one), label: tell('sheet-edit.place-is', { n: one + 1, of }) }))} value={String(at)} onChange={(event) => onPlace(Number(event.currentTarget.value))} />
      </FieldRow>
      <FieldRow>
        <NativeSelect {...entry.at(`${path}.access.way`)} label={tell('sheet-edit.access')} data={[{ value: '', label: tell('sheet-edit.access-none') }, ...choices('sheet-edit.access-', ['open', 'close'])]} value={step.accessWay} onChange={(event) => set({ accessWay: event.currentTarget.value as 'open' })} />
        {step.accessWay !== '' && <TextInput {...entry.at(`${path}.access.name`)} label={tell('sheet-edit.access-name')} list={accesses} autoComplete="off" maxLength={40} value={step.accessName} onChange={(event) => set({ accessName: event.currentTarget.value })} />}
        <datalist id={accesses}>{editing.accesses.map((name) => <option key={name} value={name} />)}</datalist>
      </FieldRow>
      <Fold title={tell('job.torques')} count={step.torques.length}>
        <KeyedList path={`${path}.torques`} list={step.torques} onChange={(torques) => set({ torques })} fresh={torqueDraft} most={8} addLabel={tell('sheet-edit.torque-add')} nameOf={(_one, one) => tell('sheet-edit.torque-nth', { n: one + 1 })}>
          {(torque, change, here) => <TorqueFields torque={torque} set={change} path={here} question={question(step, torque)} />}
        </KeyedList>
      </Fold>
      <Fold title={tell('job.fluids')} count={step.fluids.length}>
        <KeyedList path={`${path}.fluids`} list={step.fluids} onChange={(fluids) => set({ fluids })} fresh={fluidDraft} most={4} addLabel={tell('sheet-edit.fluid-add')} nameOf={(_one, one) => tell('sheet-edit.fluid-nth', { n: one + 1 })}>
          {(fluid, change, here) => (
            <>
              <TextInput {...entry.at(`${here}.name`)} label={tell('sheet-edit.fluid')} autoComplete="off" maxLength={80} value={fluid.name} onChange={(event) => change({ name: event.currentTarget.value })} />
              <FigureChoice label={tell('sheet-edit.fluid-specification')} kind="text" value={fluid.specification} path={`${here}.specification`} none={tell('sheet-edit.none')} onChange={(ref) => change({ specification: { ...fluid.specification, ...ref } })} />
              <FigureChoice label={tell('sheet-edit.fluid-quantity')} kind="volume" value={fluid.quantity} path={`${here}.quantity`} none={tell('sheet-edit.none')} onChange={(ref) => change({ quantity: { ...fluid.quantity, ...ref } })} />
            </>
          )}
        </KeyedList>
      </Fold>
      <Fold title={tell('sheet-edit.figures')} count={step.figures.length}>
        <KeyedList path={`${path}.figures`} list={step.figures} onChange={(figures) => set({ figures })} fresh={refDraft} most={12} addLabel={tell('sheet-edit.figure-add')} nameOf={(_one, one) => tell('sheet-edit.figure-nth', { n: one + 1 })}>
          {(ref, change, here) => <FigureChoice label={tell('sheet-edit.figure')} kind={null} value={ref} path={here} onChange={change} />}
        </KeyedList>
      </Fold>
      <ToolsFold step={step} set={set} path={path} />
      <Fold title={tell('sheet-edit.measure')} count={step.measure === '' ? 0 : 1}><MeasureFields step={step} set={set} path={`${path}.measure`} /></Fold>
      <Fold title={tell('sheet-edit.hazards')} count={step.hazards.length}>
        <TickList label={tell('sheet-edit.hazards')} path={`${path}.hazards`} choices={editing.hazards.map(({ hazard, name }) => ({ value: hazard, label: name }))} ticked={step.hazards} onChange={(hazards) => set({ hazards })} />
      </Fold>
      <Fold title={tell('job.disposal')} count={step.disposal.length}>
        <TickList label={tell('job.disposal')} path={`${path}.disposal`} choices={editing.disposal.map(({ what, name }) => ({ value: what, label: name }))} ticked={step.disposal} onChange={(disposal) => set({ disposal })} />
      </Fold>
      <Button size="compact-md" variant="default" className={styles.start ?? ''} aria-label={tell('sheet-edit.done-for', { n: at + 1 })} onClick={onDone}>{tell('sheet-edit.done')}</Button>
    </div>
  );
}

function ToolsFold({ step, set, path }: Pick<StepFormProps, 'step' | 'set'> & { readonly path: string }) {
  const { editing, entry } = useEditor();
  const listed = useId();
  return (
    <Fold title={tell('job.tools')} count={step.tools.length}>
      <datalist id={listed}>{editing.tools.map((name) => <option key={name} value={name} />)}</datalist>
      <KeyedList path={`${path}.tools`} list={step.tools} onChange={(tools) => set({ tools })} fresh={() => lineDraft('')} most={20} addLabel={tell('sheet-edit.tool-add')} nameOf={(_one, at) => tell('sheet-edit.tool-nth', { n: at + 1 })}>
        {(tool, change, here) => <TextInput {...entry.at(here)} label={tell('sheet-edit.tool')} list={listed} autoComplete="off" maxLength={80} value={tool.text} onChange={(event) => change({ text: event.currentTarget.value })} />}
      </KeyedList>
    </Fold>
  );
}
