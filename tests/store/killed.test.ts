import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { composeHost } from '../../electron/host/compose-host.ts';
import { realWorld } from '../../electron/host/real-world.ts';
import { readEntries } from '../../electron/store/journal-table.ts';
import { sampleRandom } from '../../shared-core/sample/sample-random.ts';
import type { Entry } from '../../shared-core/journal/entry-kind.ts';
import { temporaryFolder } from '../host/open-test-host.ts';
import { killChild, type KillMoment } from './kill-child-process.ts';
import { killPlan, PLANNED_ENTRIES, type PlannedStep } from './kill-plan.ts';

// Source: own property, after DESIGN.md section 7 and the public docs of SQLite (a commit in a WAL with synchronous=FULL survives
// the death of its process: seen). Steps confirmed through the pipe must all be there; one more may be, and none in part.
const KILLS = Number(process.env['STORM_KILLS'] ?? 10);
const LATEST_START_MILLISECONDS = 900;
const seeds = Array.from({ length: KILLS }, (_, at) => ({ seed: at + 1 }));
const tally = { kills: 0, confirmed: 0, beyond: 0, beforeAny: 0 };

/** Every fourth child dies while it starts or opens the folder for the first time; the others somewhere in their work. */
function momentOf(seed: number): KillMoment {
  const random = sampleRandom(seed * 7919);
  if (seed % 4 === 0) return { after: 'start', milliseconds: random() * LATEST_START_MILLISECONDS };
  return { after: 1 + Math.floor(random() * (PLANNED_ENTRIES * 0.6)), milliseconds: random() * 6 };
}

test.each(seeds)('what was confirmed before the kill of seed $seed is there, and nothing is there by half', async ({ seed }) => {
  const folder = join(temporaryFolder(), 'household');
  const plan = killPlan(seed);
  const { confirmed, signal, said } = await killChild(folder, seed, momentOf(seed));
  expect({ signal, said }).toEqual({ signal: 'SIGKILL', said: '' });

  const opened = composeHost(folder, realWorld());
  expect(opened.ok).toBe(true);
  if (!opened.ok) return;
  const host = opened.value;
  try {
    const entries = [...readEntries(host.context.household().store)];
    const whole = wholeSteps(plan, entries);
    tally.kills += 1;
    tally.confirmed += confirmed.length;
    tally.beyond += whole - confirmed.length;
    tally.beforeAny += entries.length === 0 ? 1 : 0;
    expect(confirmed).toEqual(confirmed.map((_, at) => at));
    expect(whole, `steps whole, of ${confirmed.length} confirmed`).toBeGreaterThanOrEqual(confirmed.length);
    expect(whole, `steps whole, of ${confirmed.length} confirmed`).toBeLessThanOrEqual(confirmed.length + 1);
    expect(await host.call('household.examine', {})).toMatchObject({ ok: true, value: { entries: entries.length, faults: [] } });
    await goOn(host, whole, plan);
    expect(await host.call('household.examine', {})).toMatchObject({ ok: true, value: { faults: [] } });
  } finally {
    await host.close();
    rmSync(folder, { recursive: true });
  }
});

afterAll(() => {
  console.log(`${tally.kills} kills: ${tally.confirmed} steps confirmed and all there; ${tally.beyond} whole though the word did not get out; ${tally.beforeAny} before the first entry`);
});

/** How many steps of the plan the entries are, one after another and each with all its entries; anything else fails. */
function wholeSteps(plan: readonly PlannedStep[], entries: readonly Entry[]): number {
  let seq = 0;
  for (const [at, step] of plan.entries()) {
    if (seq === entries.length) return at;
    const own = entries.slice(seq, seq + step.entries);
    expect(own, `entries of step ${at}, ${step.operation}`).toHaveLength(step.entries);
    expect(JSON.stringify(own), `step ${at}, ${step.operation}`).toContain(markOf(step));
    seq += step.entries;
  }
  return plan.length;
}

/** Something of what the step asked for that must stand in its entries as it was typed. */
function markOf({ request }: PlannedStep): string {
  return String(request['description'] ?? request['why'] ?? request['id'] ?? request['name']);
}

/** The household goes on: the step that was cut off, or the next one, can be made again. */
async function goOn(host: { call(operation: string, request: unknown): Promise<{ readonly ok: boolean }> }, whole: number, plan: readonly PlannedStep[]): Promise<void> {
  const next = plan[whole];
  if (next !== undefined) expect(await host.call(next.operation, next.request)).toMatchObject({ ok: true });
}
