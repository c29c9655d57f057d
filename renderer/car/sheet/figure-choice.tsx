import { NativeSelect, TextInput } from '@mantine/core';
import type { FigureView } from '../../../shared-core/views/card-view.ts';
import { newOwnFigure } from '../card/own-figure.ts';
import { tell } from '../../ui/words/tell.ts';
import { useEditor } from './editor-context.ts';
import type { RefDraft } from './sheet-draft.ts';
import { figureOn } from './step-figures.ts';

const NEW = '*new*';

interface FigureChoiceProps {
  readonly label: string;
  /** The kind that it must be; null: any. */
  readonly kind: FigureView['kind'] | null;
  readonly value: RefDraft;
  /** Its path in the request. */
  readonly path: string;
  readonly onChange: (ref: Pick<RefDraft, 'figure' | 'name'>) => void;
  /** What stands for no figure; where it is left out, one must be chosen. */
  readonly none?: string;
  /** A further choice at the end. */
  readonly more?: { readonly label: string; readonly onChoose: () => void };
}

/** One of the figures of the car's data card, entered or missed, or a new one of the keeper's own that is named here and entered on the card. */
export function FigureChoice({ label, kind, value, path, onChange, none, more }: FigureChoiceProps) {
  const { card, entry } = useEditor();
  const groups = card.groups.map(({ name, figures }) => ({ group: name, items: figures.filter((one) => kind === null || one.kind === kind).map((one) => ({ value: one.key, label: labelOf(one) })) })).filter(({ items }) => items.length > 0);
  const isOnCard = figureOn(card, value.figure) !== null;
  const isNamedHere = value.figure !== '' && !isOnCard;
  const others = [
    ...(isNamedHere ? [{ value: value.figure, label: value.name === '' ? tell('sheet-edit.figure-new') : value.name }] : [{ value: NEW, label: tell('sheet-edit.figure-new') }]),
    ...(more === undefined ? [] : [{ value: '*more*', label: more.label }]),
  ];
  return (
    <>
      <NativeSelect
        {...entry.at(isNamedHere ? `${path}.figure` : path)}
        label={label}
        value={value.figure}
        data={[{ value: '', label: none ?? tell('sheet-edit.choose') }, ...groups, { group: tell('sheet-edit.figure-else'), items: others }]}
        onChange={(event) => {
          const chosen = event.currentTarget.value;
          if (chosen === '*more*') more?.onChoose();
          else if (chosen === NEW) onChange({ figure: newOwnFigure().key, name: '' });
          // What is on the card has its name there.
          else onChange({ figure: chosen, name: chosen === value.figure ? value.name : '' });
        }}
      />
      {isNamedHere && <TextInput {...entry.at(`${path}.name`)} label={tell('sheet-edit.figure-name')} description={tell('sheet-edit.figure-name-what')} autoComplete="off" maxLength={80} value={value.name} onChange={(event) => onChange({ figure: value.figure, name: event.currentTarget.value })} />}
    </>
  );
}

function labelOf({ name, entered, text }: FigureView): string {
  return tell('sheet-edit.figure-is', { name, value: entered ? text : tell('job.not-entered') });
}
