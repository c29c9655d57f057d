import { useEffect, useId, useState } from 'react';
import type { Refusal } from '../../../shared-core/result/result.ts';
import { change } from '../../ui/change.ts';
import { focusField } from '../../ui/form/focus-field.ts';
import { sayFault } from '../../ui/form/say-fault.ts';
import type { FieldPlace } from '../../ui/form/use-entry.ts';
import { useHousehold } from '../../ui/household.tsx';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';
import { composeSheet } from './compose-sheet.ts';
import { draftOf, saysTheSame, type Editing, type SheetDraft } from './sheet-draft.ts';

/** A sheet being written: what is typed, what stands, what was refused. */
export interface SheetEntry {
  readonly draft: SheetDraft;
  readonly set: (change: Partial<SheetDraft>) => void;
  /** Changes what is in a list or its order: what was refused stood at places that may be others now. */
  readonly rearrange: (change: Partial<SheetDraft>) => void;
  readonly dirty: boolean;
  /** The sheet was changed elsewhere since what is typed was begun. */
  readonly overtaken: boolean;
  /** Lets go of what is typed, for what stands. */
  readonly takeStanding: () => void;
  /** Lets go of what is typed, for what will stand as soon as the host has told it. */
  readonly dropTyped: () => void;
  readonly fault: string | null;
  /** The path of what was refused, or null. */
  readonly refusedAt: string | null;
  readonly sending: boolean;
  /** Saves the whole sheet; answers whether it stands. */
  readonly save: () => Promise<boolean>;
  readonly at: (path: string) => FieldPlace;
}

/** Keeps what is typed of a sheet, whatever the answer, until it is saved; while nothing is typed it follows what stands. */
export function useSheetDraft(editing: Editing): SheetEntry {
  const id = useId();
  const { unit } = useHousehold();
  const [{ standing, start, draft }, setPages] = useState(() => pagesOf(editing.sheet, unit));
  const [refusal, setRefusal] = useState<Refusal | null>(null);
  const [sending, setSending] = useState(false);
  const path = refusal?.path?.join('.') ?? null;
  const dirty = !saysTheSame(draft, start);
  /** What the host told last, and was taken up: what it tells anew is another sheet unless it is the one saved here. */
  const [heard, setHeard] = useState(() => JSON.stringify(editing.sheet));
  const told = JSON.stringify(editing.sheet);
  const isNew = told !== heard && told !== JSON.stringify(standing);

  const standOn = (sheet: Editing['sheet']) => {
    setPages(pagesOf(sheet, unit, draft.steps));
    setRefusal(null);
  };
  const type = (some: Partial<SheetDraft>) => setPages((pages) => ({ ...pages, draft: { ...pages.draft, ...some } }));
  if (told !== heard && !sending && !(isNew && dirty)) {
    setHeard(told);
    if (isNew) standOn(editing.sheet);
  }
  useEffect(() => {
    if (refusal !== null) focusField(path, (field) => `${id}-${field}`);
  }, [id, refusal, path]);

  const save = async () => {
    if (sending) return false;
    const sent = draft;
    const whole = composeSheet(sent, editing.item);
    setSending(true);
    const result = whole.ok ? await change('sheet.set', whole.value) : whole;
    setSending(false);
    setRefusal(result.ok ? null : result.refusal);
    if (!result.ok) return false;
    const { sheet, questions, undo } = result.value;
    const saved = pagesOf(sheet, unit, sent.steps);
    setPages(({ draft: typed }) => ({ ...saved, draft: typed === sent ? saved.draft : withIds(typed, saved.draft) }));
    note(tell(questions.length === 0 ? 'sheet-edit.saved' : 'sheet-edit.saved-asks', { task: editing.itemName, n: questions.length }), undo);
    return true;
  };

  return {
    draft, dirty, sending, save,
    set: type,
    rearrange: (some) => {
      setRefusal(null);
      type(some);
    },
    overtaken: isNew && dirty && !sending,
    takeStanding: () => {
      setHeard(told);
      standOn(isNew ? editing.sheet : standing);
    },
    dropTyped: () => {
      setRefusal(null);
      setPages((pages) => ({ ...pages, draft: pages.start }));
    },
    fault: refusal === null ? null : sayFault(refusal),
    refusedAt: path,
    at: (field) => ({ id: `${id}-${field}`, error: refusal !== null && path !== null && (path === field || path.startsWith(`${field}.`)) ? sayFault(refusal) : undefined }),
  };
}

/** The sheet that stands, the form as it opens on it, and what is typed. */
interface Pages {
  readonly standing: Editing['sheet'];
  readonly start: SheetDraft;
  readonly draft: SheetDraft;
}

function pagesOf(standing: Editing['sheet'], unit: string, like: SheetDraft['steps'] = []): Pages {
  const start = draftOf(standing, unit, like);
  return { standing, start, draft: start };
}

/** What was typed while the sheet was on its way stays; its new steps have their ids now. */
function withIds(typed: SheetDraft, saved: SheetDraft): SheetDraft {
  return { ...typed, steps: typed.steps.map((step) => ({ ...step, id: saved.steps.find((one) => one.key === step.key)?.id ?? step.id })) };
}
