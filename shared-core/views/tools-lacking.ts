import type { LocalDate } from '../calendar/local-date.ts';
import { serviceItems } from '../care/service-item.ts';
import type { Facts } from '../journal/facts.ts';
import { taskTools, tools, type Tool } from '../parts/tool.ts';
import type { LackingTool } from './order-view-schema.ts';

/** Work to be done, and on which day where that is known. */
export interface ToolTask {
  readonly item: string;
  readonly day: LocalDate | null;
}

/** The tools that some work takes and that are missing, or borrowed and to be given back before its day; by name. */
export function toolsLacking(facts: Facts, tasks: readonly ToolTask[], today: LocalDate): LackingTool[] {
  const lacking = facts.all(tools).flatMap((tool): LackingTool[] => {
    const items = tasks.flatMap(({ item, day }) => {
      const stated = facts.get(serviceItems, item);
      const takes = facts.get(taskTools, item)?.tools.includes(tool.id) === true;
      return stated !== null && takes && lacks(tool, day ?? today) ? [{ car: stated.car, item, itemName: stated.name, day }] : [];
    });
    return items.length === 0 ? [] : [{ tool: tool.id, name: tool.name, why: tool.state === 'missing' ? 'missing' : 'borrowed-until', until: tool.until, lender: tool.lender, items }];
  });
  return lacking.sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : 0));
}

function lacks(tool: Tool, day: LocalDate): boolean {
  return tool.state === 'missing' || (tool.state === 'borrowed' && tool.until !== null && tool.until < day);
}
