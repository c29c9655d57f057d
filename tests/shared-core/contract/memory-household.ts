import type { LocalDate } from '../../../shared-core/calendar/local-date.ts';
import { contract, type OperationName, type ReplyOf, type RequestOf } from '../../../shared-core/contract/contract.ts';
import { entryKinds } from '../../../shared-core/contract/entry-kinds.ts';
import type { Entry } from '../../../shared-core/journal/entry-kind.ts';
import type { Facts } from '../../../shared-core/journal/facts.ts';
import { memoryFacts } from '../../../shared-core/journal/memory-facts.ts';
import type { Ask, Do, HostServed } from '../../../shared-core/journal/operation.ts';
import { parseRequest } from '../../../shared-core/result/parse-request.ts';
import { ok, type Result } from '../../../shared-core/result/result.ts';
import { day } from '../calendar/day.ts';

/** A household in memory: the contract's own operations on facts that are a replay of the entries so far. */
export interface MemoryHousehold {
  readonly entries: readonly Entry[];
  facts(): Facts;
  /** Sets the day on which all that follows is asked and entered. */
  on(date: string): MemoryHousehold;
  /** Sets the time of day, in UTC: '09:30:00'. */
  at(time: string): MemoryHousehold;
  call<Name extends OperationName>(name: Name, request: RequestOf<Name>): Result<ReplyOf<Name>>;
  /** The reply, where a refusal would fail the test. */
  must<Name extends OperationName>(name: Name, request: RequestOf<Name>): ReplyOf<Name>;
}

/** A started household without cars, on 2026-11-25. */
export function memoryHousehold(settings: RequestOf<'household.start'> = {}): MemoryHousehold {
  const household = unstartedHousehold();
  household.must('household.start', settings);
  return household;
}

/** A folder in which no household was started. */
export function unstartedHousehold(): MemoryHousehold {
  let today: LocalDate = day('2026-11-25');
  let now = `${today}T12:00:00.000Z`;
  const entries: Entry[] = [];
  let ids = 0;
  const moment = () => ({ today, now, newId: () => `new-${(ids += 1)}` });
  const facts = () => memoryFacts(entryKinds, entries);

  const run = (name: OperationName, request: unknown): Result<unknown> => {
    const operation: Ask | Do | HostServed = contract[name];
    if ('host' in operation) throw new Error(`${name} is served by the host`);
    const parsed = parseRequest(operation.request, request);
    if (!parsed.ok) return parsed;
    if (operation.kind === 'ask') {
      const answer = operation.answer(facts(), parsed.value, moment());
      return answer.ok ? ok(operation.reply.parse(answer.value)) : answer;
    }
    const decided = operation.decide(facts(), parsed.value, moment());
    if (!decided.ok) return decided;
    for (const entry of decided.value.entries) entries.push({ ...entry, seq: entries.length, at: now });
    return ok(operation.reply.parse(decided.value.reply));
  };

  const household: MemoryHousehold = {
    entries,
    facts,
    on: (date) => {
      today = day(date);
      now = `${today}T12:00:00.000Z`;
      return household;
    },
    at: (time) => {
      now = `${today}T${time}.000Z`;
      return household;
    },
    call: (name, request) => run(name, request) as never,
    must: (name, request) => {
      const reply = run(name, request);
      if (!reply.ok) throw new Error(`refused ${name}: ${JSON.stringify(reply.refusal)}`);
      return reply.value as never;
    },
  };
  return household;
}
