import { NativeSelect } from '@mantine/core';
import type { FieldPlace } from '../../ui/form/use-entry.ts';
import { choices } from '../../ui/form/choices.ts';
import { tell } from '../../ui/words/tell.ts';
import type { ChosenSet, SetDraft } from './set-draft.ts';
import type { History, StartingSets } from './use-starting-sets.ts';

interface SetChoiceProps {
  readonly sets: StartingSets;
  readonly chosen: ChosenSet;
  readonly place: (path: string) => FieldPlace;
  /** Whether there may be no set at all. */
  readonly mayBeNone: boolean;
  readonly onChange: (change: Partial<SetDraft>) => void;
}

/** Which set a car starts from; the one that fits stands there until another is chosen. */
export function SetChoice({ sets, chosen, place, mayBeNone, onChange }: SetChoiceProps) {
  const offered = sets.sets.map(({ key, name, items }) => ({ value: key as string, label: tell('set.of', { set: name, n: items.length }) }));
  const none = mayBeNone || chosen.set === null ? [{ value: 'none', label: tell('set.none') }] : [];
  return (
    <NativeSelect
      {...place('set')}
      label={tell('set.choose')}
      description={tell('set.choose-what')}
      data={[...offered, ...none]}
      value={chosen.set ?? 'none'}
      onChange={(event) => onChange({ set: event.currentTarget.value as SetDraft['set'], omit: [], besides: [] })}
    />
  );
}

/** What is known of the time before the first record; each item can be answered by itself later. */
export function HistoryChoice({ chosen, place, onChange }: Pick<SetChoiceProps, 'chosen' | 'place' | 'onChange'>) {
  return (
    <NativeSelect
      {...place('history')}
      label={tell('set.history')}
      description={tell('set.history-what')}
      data={choices('set.history-', ['unknown', 'from-purchase', 'never-done'])}
      value={chosen.history}
      onChange={(event) => onChange({ history: event.currentTarget.value as History })}
    />
  );
}
