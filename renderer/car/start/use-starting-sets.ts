import { useState } from 'react';
import type { ReplyOf, RequestOf } from '../../../shared-core/contract/contract.ts';
import { useAsk } from '../../ui/use-ask.ts';

export type StartingSets = ReplyOf<'starting-sets.show'>;
export type SetKey = StartingSets['sets'][number]['key'];
export type OfferedItem = StartingSets['sets'][number]['items'][number];
export type History = StartingSets['history'];

/** The starting sets for a car, there or not yet; while a later answer is on its way, the one before stays. Null before the first. */
export function useStartingSets(request: RequestOf<'starting-sets.show'>): StartingSets | null {
  const answer = useAsk('starting-sets.show', request);
  const [last, setLast] = useState<StartingSets | null>(null);
  if (answer.state === 'answered' && answer.value !== last) setLast(answer.value);
  return answer.state === 'answered' ? answer.value : last;
}
