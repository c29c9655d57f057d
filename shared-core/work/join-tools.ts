import { sameName } from '../fleet/find-car.ts';
import type { LocalDate } from '../calendar/local-date.ts';
import type { Tool } from '../parts/tool.ts';

/** A tool by its name, and a task that takes it. */
export interface WantedTool {
  readonly name: string;
  readonly task: string;
}

/** A tool of a job sheet, once, with all tasks that take it and where it is. */
export interface JobTool {
  readonly name: string;
  /** Null where it is not on the household's list of tools. */
  readonly tool: Tool | null;
  /** It is missing, or to be given back before the day. */
  readonly lacking: boolean;
  readonly tasks: readonly string[];
}

/** The tools of all tasks joined, in whatever spelling, by name. */
export function joinTools(wanted: readonly WantedTool[], tools: readonly Tool[], day: LocalDate): readonly JobTool[] {
  const joined: { name: string; tasks: string[] }[] = [];
  const sorted = [...wanted].sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : a.task < b.task ? -1 : 1));
  for (const { name, task } of sorted) {
    const there = joined.find((one) => sameName(one.name, name));
    if (there === undefined) joined.push({ name, tasks: [task] });
    else if (!there.tasks.includes(task)) there.tasks.push(task);
  }
  return joined
    .map(({ name, tasks }): JobTool => {
      const tool = tools.find((one) => sameName(one.name, name)) ?? null;
      const lacking = tool !== null && (tool.state === 'missing' || (tool.state === 'borrowed' && tool.until !== null && tool.until < day));
      return { name: tool?.name ?? name, tool, lacking, tasks: [...tasks].sort() };
    })
    .sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : 0));
}
