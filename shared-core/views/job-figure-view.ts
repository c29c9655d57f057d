import type { z } from 'zod';
import type { CardFigure } from '../fleet/card-figure.ts';
import type { FigureKind } from '../fleet/known-figures.ts';
import { questionAbout } from '../fleet/set-card-figure.ts';
import { torqueQuestion } from '../fleet/torque-question.ts';
import { say } from '../result/words/say.ts';
import { resolveFigure, torqueInUnits, type ResolvedFigure } from '../work/job-figures.ts';
import type { FigureRef, StepFluid, StepTorque } from '../work/sheet-step.ts';
import { otherUnits, valueText } from './figure-text.ts';
import type { jobFigureSchema, jobFluidSchema, JobTorque } from './job-sheet-view-schema.ts';
import { said, type Said } from './plan-said.ts';

/** The data card of one car. */
export interface JobCard {
  readonly carName: string;
  readonly figures: readonly CardFigure[];
}

/** A figure as a sheet shows it, with its source; where it is not entered, what to do. */
export function jobFigure(card: JobCard, ref: FigureRef, kind: FigureKind | null): z.infer<typeof jobFigureSchema> {
  const resolved = resolveFigure(card.figures, ref, kind);
  const { figure } = resolved;
  return {
    figure: resolved.key,
    name: resolved.name,
    kind: resolved.kind,
    entered: figure !== null,
    text: figure === null ? notEntered() : valueText(figure.value),
    otherUnits: figure === null ? [] : [...otherUnits(figure.value)],
    source: figure?.source ?? null,
    paper: figure?.paper ?? null,
    note: figure?.note ?? '',
    lack: lackOf(card, resolved),
  };
}

/** A fluid with what it must meet and how much. */
export function jobFluid(card: JobCard, fluid: StepFluid): z.infer<typeof jobFluidSchema> {
  const { name, specification, quantity } = fluid;
  return { name, specification: specification === null ? null : jobFigure(card, specification, 'text'), quantity: quantity === null ? null : jobFigure(card, quantity, 'volume') };
}

/** A torque in every unit; an unlikely one is asked about and stays as it is. */
export function jobTorque(card: JobCard, torque: StepTorque): JobTorque {
  if (torque.by === 'own') {
    const question = torque.sure ? null : torqueQuestion(torque.typed, torque.on);
    const { name, typed, on, source } = torque;
    return { name, figure: null, entered: true, text: torqueText(torque.typed), inUnits: [...torqueInUnits(typed)], typedUnit: typed.unit, on, source, note: '', question: question === null ? null : said(question), lack: null };
  }
  const resolved = resolveFigure(card.figures, torque, 'torque');
  const { figure } = resolved;
  const value = figure?.value.kind === 'torque' ? figure.value : null;
  const question = figure === null ? null : questionAbout(figure);
  return {
    name: resolved.name,
    figure: resolved.key,
    entered: value !== null,
    text: value === null ? notEntered() : torqueText(value.typed),
    inUnits: value === null ? [] : [...torqueInUnits(value.typed)],
    typedUnit: value?.typed.unit ?? null,
    on: value?.on ?? null,
    source: figure?.source ?? null,
    note: figure?.note ?? '',
    question: question === null ? null : said(question),
    lack: lackOf(card, resolved),
  };
}

function torqueText(typed: Parameters<typeof torqueInUnits>[0]): string {
  return torqueInUnits(typed).find((one) => one.unit === typed.unit)?.text ?? '';
}

function notEntered(): string {
  return say({ key: 'not-entered', values: {} });
}

function lackOf(card: JobCard, { name, figure, missed }: ResolvedFigure): Said | null {
  if (figure !== null) return null;
  const why = missed.find((one) => one.startsWith('sheet-'));
  return said({ key: 'sheet-lacks', values: { figure: name, car: card.carName, why: why === undefined ? '' : ` ${say({ key: `missed-${why}`, values: {} })}` } });
}
