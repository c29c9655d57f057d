import type { CardFigure } from '../fleet/card-figure.ts';
import type { Car } from '../fleet/car.ts';
import { sameName } from '../fleet/find-car.ts';
import { figuresFor, knownFigure } from '../fleet/known-figures.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { torqueFromTyped } from '../units/torque.ts';
import { figuresOf, type AskedFigure } from './figure-refs.ts';
import type { SheetStep } from './sheet-step.ts';
import type { FollowUpRule } from './task-sheet.ts';

/** Refuses steps that could not be done in their order, or that name a figure which the car's card cannot hold. */
export function checkSteps(car: Car, card: readonly CardFigure[], steps: readonly SheetStep[]): Result<unknown> {
  for (const [at, step] of steps.entries()) {
    if (steps.findIndex((one) => one.id === step.id) !== at) return refuse('step-id-twice', { step: step.id }, ['steps', at, 'id']);
    if (step.measure?.kind === 'other' && step.measure.name === null) return refuse('step-measure-unnamed', {}, ['steps', at, 'measure', 'name']);
    const sound = [() => checkAccess(steps, at), () => checkFigures(car, card, step, at), () => checkTorques(step, at)].map((check) => check()).find((one) => !one.ok);
    if (sound !== undefined) return sound;
  }
  return ok(null);
}

/** Refuses what is to be looked at again after no days or no distance: it would be due before the work is put down. */
export function checkFollowUpRules(rules: readonly FollowUpRule[]): Result<unknown> {
  const [noDays, noWay] = [rules.findIndex((one) => one.days === 0), rules.findIndex((one) => one.distance?.value === 0)];
  if (noDays >= 0) return refuse('follow-up-rule-no-days', {}, ['followUps', noDays, 'days']);
  return noWay >= 0 ? refuse('follow-up-no-distance', {}, ['followUps', noWay, 'distance', 'value']) : ok(null);
}

/** What a task has closed it does not open again, and what it opens it has not closed before. */
function checkAccess(steps: readonly SheetStep[], at: number): Result<unknown> {
  const access = steps[at]?.access ?? null;
  if (access?.way !== 'open') return ok(null);
  const closed = steps.slice(0, at).some((one) => one.access?.way === 'close' && sameName(one.access.name, access.name));
  return closed ? refuse('access-opened-again', { access: access.name }, ['steps', at, 'access']) : ok(null);
}

function checkFigures(car: Car, card: readonly CardFigure[], step: SheetStep, at: number): Result<unknown> {
  const refusals = figuresOf(step).map((asked) => checkFigure(car, card, asked, ['steps', at, ...asked.path]));
  return refusals.find((one) => !one.ok) ?? ok(null);
}

function checkFigure(car: Car, card: readonly CardFigure[], { ref, kind }: AskedFigure, path: readonly (string | number)[]): Result<unknown> {
  const known = knownFigure(ref.figure);
  const own = card.find((one) => one.key === ref.figure) ?? null;
  if (known !== null && own === null && !figuresFor(car).includes(known)) return refuse('figure-not-of-car', { figure: known.name, car: car.name }, path);
  if (known === null && own === null && ref.name === null) return refuse('step-figure-unnamed', { figure: ref.figure }, path);
  const is = known?.kind ?? own?.value.kind ?? kind;
  return kind === null || is === kind ? ok(null) : refuse(`step-figure-not-${kind}`, { figure: known?.name ?? own?.name ?? ref.figure }, path);
}

function checkTorques(step: SheetStep, at: number): Result<unknown> {
  for (const [index, torque] of step.torques.entries()) {
    if (torque.by !== 'own') continue;
    const whole = torqueFromTyped(torque.typed);
    if (!whole.ok) return refuse(whole.refusal.code, whole.refusal.values, ['steps', at, 'torques', index, 'typed', 'value']);
  }
  return ok(null);
}
