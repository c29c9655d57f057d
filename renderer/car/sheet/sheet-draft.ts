import type { ReplyOf, RequestOf } from '../../../shared-core/contract/contract.ts';

export type Editing = ReplyOf<'sheet.editing'>;
type SavedSheet = NonNullable<Editing['sheet']>;
type SavedStep = SavedSheet['steps'][number];
type SavedTorque = SavedStep['torques'][number];
export type Hazard = SavedSheet['hazards'][number];
export type LeftOver = SavedStep['disposal'][number];
export type Turn = SavedStep['turn'];
export type SheetRequest = RequestOf<'sheet.set'>;

/** Something in a list of the form, told apart by a number of the page's own. */
export interface Keyed {
  readonly key: number;
}

/** A line of text in a list. */
export interface LineDraft extends Keyed {
  readonly text: string;
}

/** A figure of the data card; `figure` is empty where none is chosen, `name` is what one of the keeper's own is called. */
export interface RefDraft extends Keyed {
  readonly figure: string;
  readonly name: string;
}

/** A torque by a figure of the card, or, where `by` says so, the keeper's own. */
export interface TorqueDraft extends RefDraft {
  readonly by: 'figure' | 'own';
  readonly value: string;
  readonly unit: string;
  readonly joint: string;
  readonly thread: string;
  readonly strength: string;
  readonly seat: string;
  readonly source: string;
  readonly sure: boolean;
}

export interface FluidDraft extends Keyed {
  readonly name: string;
  readonly specification: RefDraft;
  readonly quantity: RefDraft;
}

export interface FollowUpDraft extends LineDraft {
  readonly days: string;
  readonly distance: string;
  readonly unit: string;
}

/** One step as it is typed. `id` is that of the step that stands; null: a new one. */
export interface StepDraft extends Keyed {
  readonly id: string | null;
  readonly text: string;
  readonly turn: Turn;
  readonly accessWay: '' | 'open' | 'close';
  readonly accessName: string;
  readonly torques: readonly TorqueDraft[];
  readonly fluids: readonly FluidDraft[];
  readonly figures: readonly RefDraft[];
  readonly tools: readonly LineDraft[];
  /** A kind, or empty: nothing is measured. */
  readonly measure: string;
  readonly measureName: string;
  readonly measurePlace: string;
  readonly hazards: readonly Hazard[];
  readonly disposal: readonly LeftOver[];
}

/** A whole sheet as it is typed. */
export interface SheetDraft {
  readonly steps: readonly StepDraft[];
  readonly hazards: readonly Hazard[];
  readonly checks: readonly LineDraft[];
  readonly reset: string;
  readonly followUps: readonly FollowUpDraft[];
  readonly note: string;
}

let last = 0;
/** A number that nothing in the page's lists has. */
export const newKey = () => (last += 1);

export const lineDraft = (text: string): LineDraft => ({ key: newKey(), text });
export const refDraft = (ref: { readonly figure: string; readonly name: string | null } | null = null): RefDraft => ({ key: newKey(), figure: ref?.figure ?? '', name: ref?.name ?? '' });
export const fluidDraft = (): FluidDraft => ({ key: newKey(), name: '', specification: refDraft(), quantity: refDraft() });
export const followUpDraft = (unit: string): FollowUpDraft => ({ key: newKey(), text: '', days: '', distance: '', unit });

/** A torque by a figure that is yet to be chosen. */
export function torqueDraft(): TorqueDraft {
  return { ...refDraft(), by: 'figure', value: '', unit: 'Nm', joint: 'bolt', thread: '', strength: '', seat: '', source: '', sure: false };
}

/** A step with nothing in it. */
export function emptyStep(turn: Turn = 'work'): StepDraft {
  return { key: newKey(), id: null, text: '', turn, accessWay: '', accessName: '', torques: [], fluids: [], figures: [], tools: [], measure: '', measureName: '', measurePlace: '', hazards: [], disposal: [] };
}

/** The form as it opens on a sheet as it stands; on none, empty. Steps of `like` lend their keys, so that what is on the screen stays in its place. */
export function draftOf(sheet: SavedSheet | null, unit: string, like: readonly StepDraft[] = []): SheetDraft {
  if (sheet === null) return { steps: [], hazards: [], checks: [], reset: '', followUps: [], note: '' };
  return {
    steps: sheet.steps.map((step, at) => stepDraft(step, like[at]?.key ?? newKey())),
    hazards: sheet.hazards,
    checks: sheet.checks.map(lineDraft),
    reset: sheet.reset ?? '',
    followUps: sheet.followUps.map(({ text, days, distance }) => ({ key: newKey(), text, days: days === null ? '' : String(days), distance: distance === null ? '' : String(distance.value), unit: distance?.unit ?? unit })),
    note: sheet.note,
  };
}

function stepDraft(step: SavedStep, key: number): StepDraft {
  const { id, text, turn, access, measure, hazards, disposal } = step;
  return {
    key, id, text, turn, hazards, disposal,
    accessWay: access?.way ?? '', accessName: access?.name ?? '',
    torques: step.torques.map(savedTorque),
    fluids: step.fluids.map(({ name, specification, quantity }) => ({ key: newKey(), name, specification: refDraft(specification), quantity: refDraft(quantity) })),
    figures: step.figures.map(refDraft),
    tools: step.tools.map(lineDraft),
    measure: measure?.kind ?? '', measureName: measure?.name ?? '', measurePlace: measure?.place ?? '',
  };
}

function savedTorque(torque: SavedTorque): TorqueDraft {
  if (torque.by === 'figure') return { ...torqueDraft(), figure: torque.figure, name: torque.name ?? '' };
  const { name, typed, on, source, sure } = torque;
  return { ...torqueDraft(), by: 'own', name, value: String(typed.value), unit: typed.unit, joint: on.joint, thread: on.thread ?? '', strength: on.strength ?? '', seat: on.seat ?? '', source, sure };
}

/** Whether two drafts say the same. */
export function saysTheSame(a: SheetDraft, b: SheetDraft): boolean {
  const said = (draft: SheetDraft) => JSON.stringify(draft, (name, value: unknown) => (name === 'key' ? undefined : value));
  return said(a) === said(b);
}
