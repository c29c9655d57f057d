import { useAsk } from './use-ask.ts';
import type { Choice } from './household-choices.ts';
import { useWords } from './household.tsx';

/** The cars as choices, by name; empty until they are known. */
export function useCars(): Choice[] {
  const { byName } = useWords();
  const yard = useAsk('yard.show', {});
  return yard.state !== 'answered' ? [] : yard.value.lanes.map(({ id, name }) => ({ value: id, label: name })).sort((a, b) => byName(a.label, b.label));
}
