import { z } from 'zod';
import { newEntry } from '../journal/entry-kind.ts';
import { family } from '../journal/family.ts';
import type { Facts } from '../journal/facts.ts';
import { change } from '../journal/operation.ts';
import { idSchema } from '../result/id.ts';
import { plainText } from '../result/plain-text.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { cardFigureCleared, cardFigures, cardFigureSchema, cardFigureSet, jointDataSchema, type CardFigure, type JointData } from './card-figure.ts';
import type { Car } from './car.ts';
import { figureValue } from './figure-value.ts';
import { findCar } from './find-car.ts';
import { figuresFor, jointOf, knownFigure, type KnownFigure } from './known-figures.ts';
import { torqueQuestion } from './torque-question.ts';

const shape = cardFigureSchema.shape;
const joint = jointDataSchema.shape;

const setRequest = z.strictObject({
  car: z.string().min(1).max(80),
  /** Of the known list, or the keeper's own. */
  key: idSchema,
  /** Needed for a figure of one's own. */
  name: plainText(80).nullable().default(null),
  value: z.union([z.number(), plainText(200)]),
  unit: z.string().min(1).max(20).nullable().default(null),
  source: shape.source.default(null),
  paper: shape.paper.default(null),
  note: shape.note.default(''),
  /** What a torque is on; of a known figure the list says it. */
  joint: joint.joint.optional(),
  thread: joint.thread.default(null),
  strength: joint.strength.default(null),
  seat: joint.seat.default(null),
  /** The figure is as it is printed, however unlikely. */
  sure: z.boolean().default(false),
});
type SetRequest = z.infer<typeof setRequest>;

/** What is asked about a figure: the key of its sentence and the sentence's values; null where nothing is. */
export const figureQuestionSchema = z.object({ key: z.string(), values: z.record(z.string(), z.union([z.string(), z.number(), z.null()])) }).nullable();

/** Enters one figure of a car's data card, or enters it anew; an unlikely torque is kept and asked about. */
export const setCardFigure = change({
  request: setRequest,
  reply: z.object({ figure: cardFigureSchema, question: figureQuestionSchema }),
  decide: (facts, request, moment) => {
    const car = findCar(facts, request.car);
    if (!car.ok) return car;
    const known = knownFigure(request.key);
    const sound = checkFigure(facts, car.value, request, known);
    if (!sound.ok) return sound;
    const value = figureValue(request, known?.kind ?? null, jointData(request, known));
    if (!value.ok) return value;
    const standing = figureOf(facts, car.value.id, request.key);
    const { key, source, paper, note, sure } = request;
    const figure: CardFigure = { id: standing?.id ?? moment.newId(), car: car.value.id, key, name: known === null ? request.name : null, value: value.value, source, paper, note, sure };
    return ok({ entries: [newEntry(cardFigureSet, figure)], reply: { figure, question: questionAbout(figure) } });
  },
});

/** Takes a figure off a car's data card. */
export const clearCardFigure = change({
  request: z.strictObject({ car: z.string().min(1).max(80), key: idSchema }),
  reply: z.object({ figure: cardFigureSchema }),
  decide: (facts, request) => {
    const car = findCar(facts, request.car);
    if (!car.ok) return car;
    const figure = figureOf(facts, car.value.id, request.key);
    if (figure === null) return refuse('figure-not-entered', { figure: request.key }, ['key']);
    return ok({ entries: [newEntry(cardFigureCleared, { id: figure.id, car: figure.car })], reply: { figure } });
  },
});

/** A car's figure by its key. */
export function figureOf(facts: Facts, car: string, key: string): CardFigure | null {
  return facts.ofCar(cardFigures, car).find((figure) => figure.key === key) ?? null;
}

/** What to ask about a figure that stands: an unlikely torque of which the keeper is not sure. */
export function questionAbout({ value, sure }: Pick<CardFigure, 'value' | 'sure'>): z.infer<typeof figureQuestionSchema> {
  if (value.kind !== 'torque' || sure) return null;
  const question = torqueQuestion(value.typed, value.on);
  return question === null ? null : { key: question.key, values: { ...question.values } };
}

function checkFigure(facts: Facts, car: Car, request: SetRequest, known: KnownFigure | null): Result<null> {
  if (known === null && request.name === null) return refuse('figure-without-name', {}, ['name']);
  if (known !== null && request.name !== null) return refuse('figure-has-name', { name: known.name }, ['name']);
  if (known !== null && !figuresFor(car).includes(known)) return refuse('figure-not-of-car', { figure: known.name, car: car.name }, ['key']);
  // Papers belong to a later stage: their family is known here by its name alone.
  if (request.paper !== null && facts.get(family('paper', 'records', z.unknown()), request.paper) === null) return refuse('unknown-paper', { paper: request.paper }, ['paper']);
  return ok(null);
}

function jointData({ joint: asked, thread, strength, seat }: SetRequest, known: KnownFigure | null): JointData {
  const of = known?.kind === 'torque' ? jointOf(known) : 'bolt';
  return { joint: asked ?? of, thread, strength, seat };
}
