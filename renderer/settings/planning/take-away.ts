import { change } from '../../ui/change.ts';
import { sayFault } from '../../ui/form/say-fault.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { focusHeading } from '../../ui/screen-title.tsx';

type Removal = 'place.remove' | 'place-days.remove' | 'car-days.remove' | 'access.remove' | 'worth-while.remove';

/** Takes something away with one press, to be given back by its undo; a refusal is said in the same place. The focus goes to the screen's heading, for what had it is gone. */
export async function takeAway(operation: Removal, id: string, done: string): Promise<void> {
  const reply = await change(operation, { id });
  note(reply.ok ? done : sayFault(reply.refusal), reply.ok ? reply.value.undo : []);
  if (reply.ok) focusHeading({ preventScroll: true });
}
