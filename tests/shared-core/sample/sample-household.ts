import { createHash } from 'node:crypto';
import { localDate, type LocalDate } from '../../../shared-core/calendar/local-date.ts';
import { contract, type OperationName, type ReplyOf, type RequestOf } from '../../../shared-core/contract/contract.ts';
import { entryKinds } from '../../../shared-core/contract/entry-kinds.ts';
import { newEntry, type Entry, type NewEntry } from '../../../shared-core/journal/entry-kind.ts';
import type { Facts } from '../../../shared-core/journal/facts.ts';
import { memoryFacts } from '../../../shared-core/journal/memory-facts.ts';
import type { Ask, Do, HostServed } from '../../../shared-core/journal/operation.ts';
import { paperKept } from '../../../shared-core/records/paper.ts';
import { parseRequest } from '../../../shared-core/result/parse-request.ts';
import { ok, refuse, type Result } from '../../../shared-core/result/result.ts';
import { runSample } from '../../../shared-core/sample/run-sample.ts';
import { enteredAt, type SampleStep } from '../../../shared-core/sample/sample-step.ts';
import { sampleSteps } from '../../../shared-core/sample/sample-steps.ts';

/** A date of a test; an impossible one fails the test. */
export function day(text: string): LocalDate {
  const date = localDate(text);
  if (!date.ok) throw new Error(`not a date: ${text}`);
  return date.value;
}

/** A household in memory: the contract's pure operations over entries numbered here, papers by the digest of their label. */
export class MemoryHousehold {
  readonly entries: Entry[] = [];
  private ids = 0;

  get facts(): Facts {
    return memoryFacts(entryKinds, this.entries);
  }

  /** One step of the sample on its own day. */
  run(step: SampleStep): Result<unknown> {
    if (step.operation !== 'paper.keep') return this.call(step.operation, step.request, step.on);
    const id = createHash('sha256').update(step.label).digest('hex');
    const paper = { id, name: step.request.name, media: 'application/pdf', bytes: 1 } as const;
    this.write([newEntry(paperKept, paper)], step.on);
    return ok({ paper });
  }

  /** Any operation of the contract that needs no host. */
  call(name: OperationName, request: unknown, on: LocalDate): Result<unknown> {
    const operation: Ask | Do | HostServed = contract[name];
    const parsed = parseRequest(operation.request, request);
    if (!parsed.ok) return parsed;
    if ('host' in operation) return refuse('needs-a-host', { operation: name });
    const moment = { today: on, now: `${on}T12:00:00.000Z`, newId: () => `id-${String((this.ids += 1))}` };
    if (operation.kind === 'ask') return operation.answer(this.facts, parsed.value, moment);
    const decision = operation.decide(this.facts, parsed.value, moment);
    if (!decision.ok) return decision;
    this.write(decision.value.entries, on);
    return ok(operation.reply.parse(decision.value.reply));
  }

  private write(entries: readonly NewEntry[], on: LocalDate): void {
    for (const entry of entries) this.entries.push({ ...entry, seq: this.entries.length, at: enteredAt(on) });
  }
}

/** The sample as it stands on a day. */
export interface StandingSample {
  readonly today: LocalDate;
  readonly household: MemoryHousehold;
  readonly steps: readonly SampleStep[];
  /** The replies of the steps, in order. */
  readonly replies: readonly { readonly step: SampleStep; readonly reply: unknown }[];
  ask<Name extends OperationName>(name: Name, request: RequestOf<Name>): ReplyOf<Name>;
}

/** Runs the whole sample; a refusal fails the test with the step it names. */
export async function standingSample(todayText: string): Promise<StandingSample> {
  const today = day(todayText);
  const household = new MemoryHousehold();
  const replies: { step: SampleStep; reply: unknown }[] = [];
  const steps = sampleSteps(today);
  const done = await runSample(steps, (step) => {
    const reply = household.run(step);
    if (reply.ok) replies.push({ step, reply: reply.value });
    return Promise.resolve(reply);
  });
  if (!done.ok) throw new Error(`the sample is refused: ${JSON.stringify(done.refusal)}`);
  return {
    today, household, steps, replies,
    ask: (name, request) => {
      const reply = household.call(name, request, today);
      if (!reply.ok) throw new Error(`refused ${name}: ${JSON.stringify(reply.refusal)}`);
      return reply.value as never;
    },
  };
}
