import { useEffect, useId, useRef, useState } from 'react';
import type { Refusal, Result } from '../../../shared-core/result/result.ts';
import { draftLeft, dropDraft, leaveDraft } from './drafts.ts';
import { focusField } from './focus-field.ts';
import { sayFault } from './say-fault.ts';

interface EntryOptions<Draft, Reply> {
  /** Names the form, so that what was typed is found again when it was left. */
  readonly key: string;
  readonly start: Draft;
  /** Composes the request and sends it; what cannot be read is refused before anything is sent. */
  readonly send: (draft: Draft) => Promise<Result<Reply>>;
  readonly onDone: (reply: Reply, draft: Draft) => void;
}

/** A form being filled in. */
export interface Entry<Draft> {
  readonly id: string;
  readonly draft: Draft;
  readonly set: (change: Partial<Draft>) => void;
  /** The sentence of what was refused, for the form's own live region. */
  readonly fault: string | null;
  readonly sending: boolean;
  /** What was typed before was found again. */
  readonly found: boolean;
  readonly submit: () => void;
  readonly startOver: () => void;
  /** The id and the error of a field, by its path in the request. */
  readonly at: (path: string) => FieldPlace;
  /** The same for a group of fields, which shows only what none of its fields can: what is refused of itself, or of parts that are no fields. */
  readonly atGroup: (path: string, ...parts: readonly string[]) => FieldPlace;
}

/** Where a field stands in its form, and what was refused of it. */
export interface FieldPlace {
  readonly id: string;
  readonly error: string | undefined;
}

/**
 * Fills in and sends one entry. What was typed stays, whatever the answer; a refusal is shown at the field it names, and
 * the field gets the focus.
 */
export function useEntry<Draft extends object, Reply>({ key, start, send, onDone }: EntryOptions<Draft, Reply>): Entry<Draft> {
  const id = useId();
  const [before] = useState(() => draftLeft<Draft>(key));
  const [found, setFound] = useState(before !== null);
  const [draft, setDraft] = useState<Draft>({ ...start, ...before });
  const [refusal, setRefusal] = useState<Refusal | null>(null);
  const [sending, setSending] = useState(false);
  const under = useRef(false);
  const path = refusal?.path?.join('.') ?? null;

  useEffect(() => {
    if (refusal !== null) focusField(path, (field) => fieldId(id, field));
  }, [id, refusal, path]);

  const submit = async () => {
    if (under.current) return;
    under.current = true;
    setSending(true);
    const result = await send(draft);
    under.current = false;
    setSending(false);
    setRefusal(result.ok ? null : result.refusal);
    if (!result.ok) return;
    dropDraft(key);
    onDone(result.value, draft);
  };

  return {
    id,
    draft,
    set: (change) => {
      const next = { ...draft, ...change };
      setDraft(next);
      leaveDraft(key, next);
    },
    fault: refusal === null ? null : sayFault(refusal),
    sending,
    found,
    submit: () => void submit(),
    startOver: () => {
      dropDraft(key);
      setDraft(start);
      setRefusal(null);
      setFound(false);
    },
    atGroup: (group, ...parts) => ({ id: fieldId(id, group), error: refusal !== null && path !== null && [group, ...parts].includes(path) ? sayFault(refusal) : undefined }),
    at: (field) => ({ id: fieldId(id, field), error: refusal !== null && isAt(path, field) ? sayFault(refusal) : undefined }),
  };
}

function fieldId(form: string, path: string): string {
  return `${form}-${path}`;
}

/** A refusal of `lines.0.name` is shown at that field and at a field for all `lines`, where there is one. */
function isAt(path: string | null, field: string): boolean {
  return path !== null && (path === field || path.startsWith(`${field}.`));
}
