import { z } from 'zod';
import { itemKey } from '../care/match-item.ts';
import { serviceItems, type ServiceItem } from '../care/service-item.ts';
import { cars, type Car } from '../fleet/car.ts';
import type { Facts } from '../journal/facts.ts';
import { ask } from '../journal/operation.ts';
import { tools } from '../parts/tool.ts';
import { compareNames } from '../result/compare-names.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse } from '../result/result.ts';
import { say } from '../result/words/say.ts';
import { disposalSchema } from '../work/disposal.ts';
import { hazardSchema } from '../work/hazard.ts';
import { sheetFor } from '../work/starting-sheet.ts';
import { questionsOf, stepQuestionSchema } from '../work/set-sheet.ts';
import { unmarkedHazards } from '../work/spoken-hazards.ts';
import { taskSheets, taskSheetSchema, type TaskSheet } from '../work/task-sheet.ts';
import { said, saidSchema } from './plan-said.ts';

const elsewhereSchema = z.object({ item: z.string(), itemName: z.string(), car: z.string(), carName: z.string(), steps: z.int(), ownTorques: z.int() });

export const sheetEditingSchema = z.object({
  item: z.string(),
  itemName: z.string(),
  car: z.string(),
  carName: z.string(),
  /** As it was written, in the order in which it was written; null where nobody has. */
  sheet: taskSheetSchema.nullable(),
  /** What is asked about torques of the keeper's own, by step and name. */
  questions: z.array(stepQuestionSchema.omit({ question: true }).extend({ said: saidSchema })),
  /** What is asked about steps that speak of a hazard which nothing on the sheet marks. */
  unmarked: z.array(z.object({ step: z.string(), hazard: hazardSchema, said: saidSchema })),
  /** Sheets of the same task on other cars. */
  elsewhere: z.array(elsewhereSchema),
  /** What can be named: hazards the gravest first, what is left over, the household's tools, and accesses that items and sheets of this car name. */
  hazards: z.array(z.object({ hazard: hazardSchema, name: z.string() })),
  disposal: z.array(z.object({ what: disposalSchema, name: z.string() })),
  tools: z.array(z.string()),
  accesses: z.array(z.string()),
});

/** The sheet of one service item as it was written, with all that can be named in it: what its editor needs. */
export const showSheetEditing = ask({
  request: z.strictObject({ item: idSchema }),
  reply: sheetEditingSchema,
  answer: (facts, request) => {
    const item = facts.get(serviceItems, request.item);
    const car = item === null ? null : facts.get(cars, item.car);
    if (item === null || car === null) return refuse('unknown-item', { item: request.item }, ['item']);
    const sheet = facts.get(taskSheets, item.id);
    return ok({
      item: item.id, itemName: item.name, car: car.id, carName: car.name,
      sheet,
      questions: (sheet?.steps ?? []).flatMap(questionsOf).map(({ question, ...rest }) => ({ ...rest, said: said(question) })),
      unmarked: sheet === null ? [] : unmarkedOf(sheet),
      elsewhere: elsewhereOf(facts, item, car),
      hazards: hazardSchema.options.map((hazard) => ({ hazard, name: say({ key: `hazard-${hazard}`, values: {} }) })),
      disposal: disposalSchema.options.map((what) => ({ what, name: say({ key: `left-over-${what}`, values: {} }) })),
      tools: inOrder(facts.all(tools).map((one) => one.name)),
      accesses: accessesOf(facts, item),
    });
  },
});

/** What the words, the turn or the access of a step speak of, and no step nor the whole sheet marks. */
function unmarkedOf({ hazards, steps }: TaskSheet): z.infer<typeof sheetEditingSchema>['unmarked'] {
  const marked = [...hazards, ...steps.flatMap((step) => step.hazards)];
  return steps.flatMap((step) => unmarkedHazards(step, marked).map(({ hazard, words, by }) => ({ step: step.id, hazard, said: said({ key: `unmarked-${by}`, values: { words, hazard: say({ key: `hazard-${hazard}`, values: {} }) } }) })));
}

/** The sheets of other cars' items that are the same work: called alike, or called for by the same starting sheet. */
function elsewhereOf(facts: Facts, item: ServiceItem, car: Car): z.infer<typeof elsewhereSchema>[] {
  const [key, starting] = [itemKey(item.name), sheetFor(item.name, car)?.key ?? null];
  return facts.all(taskSheets).flatMap((sheet) => {
    const other = facts.get(serviceItems, sheet.id);
    const itsCar = facts.get(cars, sheet.car);
    if (other === null || itsCar === null || sheet.car === car.id) return [];
    const isSame = itemKey(other.name) === key || (starting !== null && sheetFor(other.name, itsCar)?.key === starting);
    const ownTorques = sheet.steps.flatMap((step) => step.torques).filter((one) => one.by === 'own').length;
    return isSame ? [{ item: other.id, itemName: other.name, car: itsCar.id, carName: itsCar.name, steps: sheet.steps.length, ownTorques }] : [];
  }).sort((a, b) => compareNames(a.carName, b.carName) || compareNames(a.itemName, b.itemName));
}

/** What can be opened on this car: as its items name it, those of this one first, then as its sheets do. */
function accessesOf(facts: Facts, item: ServiceItem): string[] {
  const items = facts.ofCar(serviceItems, item.car).flatMap((one) => one.access);
  const sheets = facts.ofCar(taskSheets, item.car).flatMap((one) => one.steps.flatMap((step) => step.access?.name ?? []));
  return [...new Set([...item.access, ...inOrder([...items, ...sheets])])];
}

function inOrder(names: readonly string[]): string[] {
  return [...new Set(names)].sort(compareNames);
}
