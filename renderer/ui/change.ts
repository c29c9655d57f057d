import type { OperationName, ReplyOf, RequestOf } from '../../shared-core/contract/contract.ts';
import type { Result } from '../../shared-core/result/result.ts';
import { call } from '../bridge/call.ts';

/** The reply to a change, with the numbers of the entries that undo it. */
export type Changed<Name extends OperationName> = ReplyOf<Name> & { readonly undo: readonly number[] };

/** Sends one change to the host. Never rejects. */
export function change<Name extends OperationName>(name: Name, request: RequestOf<Name>): Promise<Result<Changed<Name>>> {
  return call(name, request) as Promise<Result<Changed<Name>>>;
}
