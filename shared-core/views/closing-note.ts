import { say } from '../result/words/say.ts';
import { unitText } from '../units/unit-text.ts';
import type { StepValue, Tick } from '../work/doing.ts';
import type { DoingStep } from './doing-schema.ts';

/** As the line and the record itself allow. */
const LONGEST_LINE_NOTE = 500;
const LONGEST_NOTE = 4000;
const LONGEST_STEP = 60;

/** Lines for the note of a record, each of which stands whole or is counted. */
export interface NoteLine {
  /** What it is about; null: the whole session. */
  readonly about: string | null;
  readonly pieces: readonly string[];
}

/**
 * What a task's line in the record says beside its outcome: the torques that were given, and the steps that were left out with their reason.
 * What was measured stands in measurements of its own.
 */
export function notesOfTask(task: string, steps: readonly DoingStep[], told: Told): readonly string[] {
  const own = steps.filter((step) => step.of.some((ref) => ref.task === task));
  const left = own.flatMap((step) => (step.tick?.as === 'left-out' ? [say({ key: 'closing-left-out', values: { step: shortened(step.text), why: step.tick.note } })] : []));
  // The sheet was changed while the work was in hand: what was told of a step that is gone stands all the same.
  const [shown, ticked] = [new Set(own.flatMap((step) => step.values.map((one) => one.id))), new Set(own.flatMap((step) => step.tick?.id ?? []))];
  const values = told.values.filter((one) => one.at.task === task && !shown.has(one.id));
  const gone = told.ticks.filter((one) => one.as === 'left-out' && !ticked.has(one.id) && one.of.some((ref) => ref.task === task));
  return [...torqueNotes([...own.flatMap((step) => step.values), ...values]), ...left, ...gone.map((one) => say({ key: 'closing-left-out-gone', values: { why: one.note } }))];
}

/** All that was read and ticked in a session. */
export interface Told {
  readonly values: readonly StepValue[];
  readonly ticks: readonly Tick[];
}

/** The torques among what was read. */
export function torqueNotes(values: readonly StepValue[]): readonly string[] {
  return values.flatMap(({ read }) => (read.kind === 'torque' ? [say({ key: 'closing-torque', values: { name: read.name, value: `${read.typed.value} ${unitText(read.typed.unit)}` } })] : []));
}

/** As many of the pieces as stand whole in the note of a line, and the rest: none is cut. */
export function lineNote(pieces: readonly string[]): { readonly note: string; readonly rest: readonly string[] } {
  const count = fitting(pieces, '; ', LONGEST_LINE_NOTE);
  return { note: pieces.slice(0, count).join('; '), rest: pieces.slice(count) };
}

/** The note of a record: a line for each thing it is about. What does not stand in it whole is counted at its end. */
export function recordNote(lines: readonly NoteLine[]): string {
  const pieces = lines.flatMap(({ about, pieces: own }) => own.map((piece) => (about === null ? piece : say({ key: 'closing-about', values: { task: about, note: piece } }))));
  const count = fitting(pieces, '\n', LONGEST_NOTE);
  if (count === pieces.length) return pieces.join('\n');
  const more = (kept: number) => say({ key: 'closing-more', values: { n: pieces.length - kept } });
  const kept = fitting(pieces, '\n', LONGEST_NOTE - more(0).length - 1);
  return [...pieces.slice(0, kept), more(kept)].join('\n');
}

/** How many of the first pieces, joined, are no longer than allowed. */
function fitting(pieces: readonly string[], by: string, longest: number): number {
  const tooLong = pieces.findIndex((_, at) => pieces.slice(0, at + 1).join(by).length > longest);
  return tooLong < 0 ? pieces.length : tooLong;
}

/** Cut between words, and never inside a character. */
function shortened(text: string): string {
  if (text.length <= LONGEST_STEP) return text.replace(/\.$/, '');
  return `${text.slice(0, LONGEST_STEP).replace(/[\ud800-\udbff]$/, '').replace(/\s+\S*$/, '')} …`;
}
