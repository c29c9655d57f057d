import { change } from './change.ts';
import { sayFault } from './form/say-fault.ts';
import { note } from './notices/notice-store.ts';
import { focusHeading } from './screen-title.tsx';
import { tell } from './words/tell.ts';

interface Named {
  readonly id: string;
  readonly text: string;
}

/** Ticks a follow-up with one press, to be given back by its undo. What was pressed goes away with it, and the heading takes the focus. */
export function tickFollowUp(one: Named): Promise<void> {
  return end('follow-up.done', one, tell('follow-ups.ticked', { text: one.text }));
}

/** Takes a follow-up away that was entered by mistake, to be given back by its undo. */
export function dropFollowUp(one: Named): Promise<void> {
  return end('follow-up.drop', one, tell('follow-ups.dropped', { text: one.text }));
}

async function end(operation: 'follow-up.done' | 'follow-up.drop', { id }: Named, done: string): Promise<void> {
  const reply = await change(operation, { followUp: id });
  note(reply.ok ? done : sayFault(reply.refusal), reply.ok ? reply.value.undo : []);
  if (reply.ok) focusHeading({ preventScroll: true });
}
