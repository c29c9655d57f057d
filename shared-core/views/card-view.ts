import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { serviceItems, type ServiceItem } from '../care/service-item.ts';
import { cardFigures, figureValueSchema, type CardFigure } from '../fleet/card-figure.ts';
import type { Car } from '../fleet/car.ts';
import { findCar, sameName } from '../fleet/find-car.ts';
import { FIGURE_GROUPS, figureGroupSchema, figureKindSchema, figuresFor, knownFigure, KNOWN_FIGURES, type FigureGroup, type KnownFigure } from '../fleet/known-figures.ts';
import { questionAbout } from '../fleet/set-card-figure.ts';
import type { Facts } from '../journal/facts.ts';
import { ask } from '../journal/operation.ts';
import { papers } from '../records/paper.ts';
import { compareNames } from '../result/compare-names.ts';
import { ok } from '../result/result.ts';
import { say } from '../result/words/say.ts';
import { otherUnits, valueText } from './figure-text.ts';
import { ownWanted, type WantedFigure } from './own-wanted.ts';

const said = z.object({ code: z.string(), text: z.string() });

export const figureViewSchema = z.object({
  key: z.string(),
  name: z.string(),
  kind: figureKindSchema,
  /** Of the keeper's own, not of the known list. */
  own: z.boolean(),
  entered: z.boolean(),
  /** "not entered" where it is not. */
  text: z.string(),
  value: figureValueSchema.nullable(),
  /** The same in other units. */
  otherUnits: z.array(z.string()),
  source: z.string().nullable(),
  paper: z.object({ id: z.string(), name: z.string() }).nullable(),
  note: z.string(),
  sure: z.boolean(),
  question: said.nullable(),
  /** Where it is missed; empty where it is entered. */
  missed: z.array(said),
  /** The car's items that want it. */
  items: z.array(z.object({ item: z.string(), name: z.string() })),
});
export type FigureView = z.infer<typeof figureViewSchema>;

export const cardViewSchema = z.object({
  today: dateSchema,
  car: z.object({ id: z.string(), name: z.string(), description: z.string().nullable(), year: z.number().nullable() }),
  groups: z.array(z.object({ group: figureGroupSchema, name: z.string(), figures: z.array(figureViewSchema) })),
  entered: z.int(),
  missing: z.int(),
  /** Figures that have neither a source nor a paper. */
  withoutSource: z.int(),
});
export type CardView = z.infer<typeof cardViewSchema>;

/** A car's data card: every known figure that it has, entered or missed, and the keeper's own. */
export const showCard = ask({
  request: z.strictObject({ car: z.string().min(1).max(80) }),
  reply: cardViewSchema,
  answer: (facts, request, moment) => {
    const car = findCar(facts, request.car);
    if (!car.ok) return car;
    const { id, name, description, year } = car.value;
    const groups = groupsOf(facts, car.value);
    const figures = groups.flatMap((group) => group.figures);
    const entered = figures.filter((figure) => figure.entered);
    return ok({
      today: moment.today,
      car: { id, name, description, year },
      groups,
      entered: entered.length,
      missing: figures.length - entered.length,
      withoutSource: entered.filter((figure) => figure.source === null && figure.paper === null).length,
    });
  },
});

function groupsOf(facts: Facts, car: Car): CardView['groups'] {
  const standing = new Map(facts.ofCar(cardFigures, car.id).map((figure) => [figure.key, figure]));
  const items = facts.ofCar(serviceItems, car.id);
  // A figure entered before the car was said to be of another kind is still shown.
  const known = KNOWN_FIGURES.filter((figure) => standing.has(figure.key) || figuresFor(car).includes(figure));
  const ofGroup = (group: FigureGroup): FigureView[] =>
    group === 'own'
      ? [...[...standing.values()].filter((figure) => knownFigure(figure.key) === null).map((figure) => enteredView(facts, figure, null, [])), ...ownWanted(facts, car.id).map(missedView)].sort((a, b) => compareNames(a.name, b.name))
      : known.filter((figure) => figure.group === group).map((figure) => knownView(facts, figure, standing.get(figure.key) ?? null, items));
  return FIGURE_GROUPS.map((group) => ({ group, name: say({ key: `card-group-${group}`, values: {} }), figures: ofGroup(group) })).filter((group) => group.figures.length > 0);
}

function knownView(facts: Facts, known: KnownFigure, figure: CardFigure | null, items: readonly ServiceItem[]): FigureView {
  if (figure !== null) return enteredView(facts, figure, known, items);
  const missed = known.missed.map((where) => ({ code: where, text: say({ key: `missed-${where}`, values: {} }) }));
  const { key, name, kind } = known;
  return { key, name, kind, own: false, entered: false, text: say({ key: 'not-entered', values: {} }), value: null, otherUnits: [], source: null, paper: null, note: '', sure: false, question: null, missed, items: itemsFor(known, items) };
}

function enteredView(facts: Facts, figure: CardFigure, known: KnownFigure | null, items: readonly ServiceItem[]): FigureView {
  const question = questionAbout(figure);
  return {
    key: figure.key,
    name: known?.name ?? figure.name ?? figure.key,
    kind: figure.value.kind,
    own: known === null,
    entered: true,
    text: valueText(figure.value),
    value: figure.value,
    otherUnits: [...otherUnits(figure.value)],
    source: figure.source,
    paper: figure.paper === null ? null : { id: figure.paper, name: facts.get(papers, figure.paper)?.name ?? figure.paper.slice(0, 12) },
    note: figure.note,
    sure: figure.sure,
    question: question === null ? null : { code: question.key, text: say(question) },
    missed: [],
    items: known === null ? [] : itemsFor(known, items),
  };
}

/** A figure of the keeper's own that a sheet names and nobody has entered. */
function missedView({ key, name, kind, items }: WantedFigure): FigureView {
  const missed = [{ code: 'sheet-own', text: say({ key: 'missed-sheet-own', values: {} }) }];
  return { key, name, kind: kind ?? 'text', own: true, entered: false, text: say({ key: 'not-entered', values: {} }), value: null, otherUnits: [], source: null, paper: null, note: '', sure: false, question: null, missed, items: [...items] };
}

function itemsFor(known: KnownFigure, items: readonly ServiceItem[]): FigureView['items'] {
  return items.filter((item) => known.items.some((name) => sameName(name, item.name))).map((item) => ({ item: item.id, name: item.name }));
}
