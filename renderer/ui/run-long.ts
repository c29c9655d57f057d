import type { OperationName, ReplyOf, RequestOf } from '../../shared-core/contract/contract.ts';
import type { Result } from '../../shared-core/result/result.ts';
import { call } from '../bridge/call.ts';

/** Sends work that may take a while to the host. Never rejects. */
export function runLong<Name extends OperationName>(name: Name, request: RequestOf<Name>): Promise<Result<ReplyOf<Name>>> {
  return call(name, request) as Promise<Result<ReplyOf<Name>>>;
}
