import { sampleRandom } from '../../shared-core/sample/sample-random.ts';

/** One thing the child does, and how many entries it comes to. */
export interface PlannedStep {
  readonly operation: string;
  readonly request: Readonly<Record<string, unknown>>;
  readonly entries: number;
}

/** What is made before the child dies. */
export const PLANNED_ENTRIES = 100;

/**
 * About a hundred entries of a household, the same for a seed: readings, records with their readings (two entries at once),
 * papers (bytes on disk first, then the entry), renewals, changes and withdrawals.
 */
export function killPlan(seed: number): readonly PlannedStep[] {
  const random = sampleRandom(seed);
  const steps: PlannedStep[] = [
    { operation: 'household.start', request: { name: 'Killed', unit: 'km' }, entries: 1 },
    { operation: 'car.add', request: { id: 'pip', name: 'Pip' }, entries: 1 },
    { operation: 'obligation.add', request: { id: 'duty', car: 'pip', kind: 'insurance', lastValidDay: '2020-01-31' }, entries: 1 },
  ];
  const count = () => steps.reduce((sum, step) => sum + step.entries, 0);
  while (count() < PLANNED_ENTRIES) steps.push(...nextSteps(steps.length, count(), random));
  return steps;
}

function nextSteps(at: number, seq: number, random: () => number): readonly PlannedStep[] {
  const value = 1000 + at * 10;
  const reading: PlannedStep = { operation: 'reading.record', request: { id: `r${at}`, car: 'pip', value, date: dayOf(at), sure: true }, entries: 1 };
  const dice = random();
  if (dice < 0.3) return [reading];
  if (dice < 0.5) return [{ operation: 'record.add', request: { id: `w${at}`, car: 'pip', date: dayOf(at), reading: { value, unit: 'km' }, lines: [{ name: `Work ${at}` }] }, entries: 2 }];
  if (dice < 0.7) return [{ operation: 'paper.keep', request: { name: `paper ${at}`, base64: paperBytes(at, random).toString('base64') }, entries: 1 }];
  if (dice < 0.8) return [{ operation: 'obligation.renew', request: { id: `n${at}`, obligation: 'duty', on: dayOf(at), lastValidDay: '2021-01-31' }, entries: 2 }];
  if (dice < 0.9) return [{ operation: 'car.change', request: { id: 'pip', description: `as of step ${at}` }, entries: 1 }];
  return [reading, { operation: 'entry.withdraw', request: { entries: [seq], why: `step ${at}` }, entries: 1 }];
}

/** Each step has its own day, so that no two readings meet. */
function dayOf(at: number): string {
  return new Date(Date.UTC(2020, 0, 1) + at * 86_400_000).toISOString().slice(0, 10);
}

function paperBytes(at: number, random: () => number): Buffer {
  return Buffer.alloc(3000 + Math.floor(random() * 60_000), `paper of step ${at} `);
}
