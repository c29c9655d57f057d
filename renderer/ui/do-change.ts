import type { OperationName, RequestOf } from '../../shared-core/contract/contract.ts';
import { change } from './change.ts';
import { sayFault } from './form/say-fault.ts';
import { note } from './notices/notice-store.ts';
import { focusHeading } from './screen-title.tsx';

/** Sends a change that asks for nothing more, and says what was done with its undo, or why not. Where what was pressed goes away with it, the heading takes the focus. */
export async function doChange<Name extends OperationName>(name: Name, request: RequestOf<Name>, done: string, goes = false): Promise<void> {
  const reply = await change(name, request);
  if (!reply.ok) return note(sayFault(reply.refusal));
  note(done, reply.value.undo);
  if (goes) focusHeading({ preventScroll: true });
}
