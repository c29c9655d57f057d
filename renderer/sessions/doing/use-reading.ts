import { useState } from 'react';
import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import { change } from '../../ui/change.ts';
import { FieldsRead } from '../../ui/form/read-fields.ts';
import { sayFault } from '../../ui/form/say-fault.ts';

type Request = RequestOf<'work.read'>;

/** What was typed as read at a step: `known` where it can be written, else a sentence on why not. */
export function useReading(start: string) {
  const [text, setText] = useState(start);
  const [fault, setFault] = useState<string | undefined>(undefined);
  const write = async (request: Request) => {
    const reply = await change('work.read', request);
    setFault(reply.ok ? undefined : sayFault(reply.refusal));
    return reply.ok;
  };
  return { text, setText, fault, setFault, write };
}

/** A number as a hand types it; null where it is none. @example numberOf('5,5') //=> 5.5 */
export function numberOf(text: string): number | null {
  const read = new FieldsRead();
  const whole = read.whole(read.number('value', text));
  return whole.ok ? whole.value : null;
}
