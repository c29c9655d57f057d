import { z } from 'zod';
import { serviceItems } from '../care/service-item.ts';
import { sameName } from '../fleet/find-car.ts';
import { newEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { change, type Moment } from '../journal/operation.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { newId, setWhole } from './set-whole.ts';
import { taskTools, taskToolsSchema, taskToolsSet, toolRemoved, tools, toolSchema, toolSet, type TaskTools, type Tool } from './tool.ts';

const shape = toolSchema.shape;

/** States a tool: one's own, borrowed from somebody, or missing. */
export const setTool = setWhole(
  toolSet,
  z.strictObject({ ...shape, id: newId, where: shape.where.default(null), lender: shape.lender.default(null), until: shape.until.default(null), note: shape.note.default('') }),
  toolSchema,
  checkTool,
);

function checkTool(facts: Facts, tool: Tool, { today }: Moment): Result<unknown> {
  if (facts.all(tools).some((one) => one.id !== tool.id && sameName(one.name, tool.name))) return refuse('tool-named-already', { tool: tool.name }, ['name']);
  if (tool.state === 'borrowed' && tool.lender === null) return refuse('borrowed-from-whom', { tool: tool.name }, ['lender']);
  if (tool.paidMinor !== undefined && tool.boughtOn === undefined) return refuse('tool-bought-when', { tool: tool.name }, ['boughtOn']);
  if (tool.paidMinor === undefined && (tool.boughtOn !== undefined || tool.spreadOver !== undefined)) return refuse('tool-paid-what', { tool: tool.name }, ['paidMinor']);
  if (tool.boughtOn !== undefined && tool.boughtOn > today) return refuse('date-in-future', { date: tool.boughtOn }, ['boughtOn']);
  return tool.state !== 'borrowed' && (tool.lender !== null || tool.until !== null) ? refuse('not-borrowed', { tool: tool.name }, ['lender']) : ok(null);
}

/** Takes a tool away that no task takes. */
export const removeTool = change({
  request: z.strictObject({ id: idSchema }),
  reply: z.object({ removed: z.string() }),
  decide: (facts, { id }) => {
    const tool = facts.get(tools, id);
    if (tool === null) return refuse('unknown-tool', { tool: id }, ['id']);
    if (tool.paidMinor !== undefined) return refuse('tool-has-a-price', { tool: tool.name }, ['id']);
    const task = facts.all(taskTools).find((one) => one.tools.includes(id));
    if (task !== undefined) return refuse('tool-in-use', { tool: tool.name, task: facts.get(serviceItems, task.id)?.name ?? task.id }, ['id']);
    return ok({ entries: [newEntry(toolRemoved, { id, car: null })], reply: { removed: id } });
  },
});

/** States all the tools that a service item takes. */
export const setTaskTools = change({
  request: z.strictObject({ item: idSchema, tools: taskToolsSchema.shape.tools }),
  reply: z.object({ set: taskToolsSchema }),
  decide: (facts, request) => {
    const item = facts.get(serviceItems, request.item);
    if (item === null) return refuse('unknown-item', { item: request.item }, ['item']);
    const strange = request.tools.find((id) => facts.get(tools, id) === null);
    if (strange !== undefined) return refuse('unknown-tool', { tool: strange }, ['tools']);
    const set: TaskTools = { id: item.id, car: item.car, tools: [...new Set(request.tools)] };
    return ok({ entries: [newEntry(taskToolsSet, set)], reply: { set } });
  },
});
