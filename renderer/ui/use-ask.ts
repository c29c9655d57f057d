import { keepPreviousData, useQuery } from '@tanstack/react-query';
import type { OperationName, ReplyOf, RequestOf } from '../../shared-core/contract/contract.ts';
import type { Refusal, Result } from '../../shared-core/result/result.ts';
import { call } from '../bridge/call.ts';

/** What stands where the host's answer will be shown: one of four states, each with its own look. */
export type Answer<Reply> =
  | { readonly state: 'asking' }
  | { readonly state: 'failed'; readonly refusal: Refusal; readonly again: () => void }
  | { readonly state: 'refused'; readonly refusal: Refusal }
  | { readonly state: 'answered'; readonly value: Reply };

/** Refusals that say that something went wrong rather than that something is not so; trying again may help. */
const FAILURES = new Set(['no-answer', 'internal', 'database-locked', 'household-locked']);

/**
 * Asks one operation of the host and keeps its answer until the host says that something has changed. With `hold`, the answer to the request
 * before stands until the new one has come.
 */
export function useAsk<Name extends OperationName>(name: Name, request: RequestOf<Name>, { hold = false } = {}): Answer<ReplyOf<Name>> {
  const query = useQuery({ queryKey: [name, request], queryFn: () => call(name, request) as Promise<Result<ReplyOf<Name>>>, ...(hold ? { placeholderData: keepPreviousData } : {}) });
  const result = query.data;
  if (result === undefined) return { state: 'asking' };
  if (result.ok) return { state: 'answered', value: result.value };
  const { refusal } = result;
  return FAILURES.has(refusal.code) ? { state: 'failed', refusal, again: () => void query.refetch() } : { state: 'refused', refusal };
}
