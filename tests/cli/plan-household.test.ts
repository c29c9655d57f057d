import { describe, expect, test } from 'vitest';
import { planViewSchema } from '../../shared-core/views/plan-view-schema.ts';
import { jsonOf, runCommand } from './run-command.ts';

describe('plan of the household', () => {
  test('one JSON value, as the contract has it', async () => {
    const ran = await runCommand('plan', '--sample', '--on', '2026-11-25', '--horizon', '14', '--json');
    expect(ran).toMatchObject({ status: 0, said: '' });
    const plan = planViewSchema.parse(jsonOf(ran));
    expect(plan).toMatchObject({ today: '2026-11-25', horizonDays: 14, lastDay: '2026-12-09', status: 'optimal' });
    expect(plan.sessions.flatMap((session) => session.tasks.map((task) => task.task.id))).toContain('pip-brake-fluid');
  }, 120_000);

  test('the same in sentences: what it comes to, each session with its reasons, what is left', async () => {
    const { status, out } = await runCommand('plan', '--sample', '--on', '2026-11-25', '--horizon', '14');
    expect(status).toBe(0);
    expect(out).toContain('Sessions from 25 Nov 2026 to 9 Dec 2026\n  It costs ');
    expect(out).toMatch(/\nSat 5 Dec 2026, the drive \(kept\): \d+ of 240 min, opening 12\.00 GBP(, minutes \d+\.\d\d GBP)?\n/);
    expect(out).toMatch(/ {2}Pip: brake fluid, 60 min, 6\.00 GBP\. It .*late.*\.\n/);
    expect(out).toContain('No plan costs less: it is proven.');
    // Openings, minutes, tasks and what is left add up to what the plan says it costs.
    const pence = (text: string | undefined) => Math.round(Number((text ?? '').replaceAll(/[^\d.]/g, '')) * 100);
    const amounts = [...out.matchAll(/(?:opening|, minutes|, counts) ([\d\u202f  ]+\.\d\d) GBP|min, ([\d\u202f  ]+\.\d\d) GBP\./g)].map((found) => pence(found[1] ?? found[2]));
    expect(amounts.reduce((sum, amount) => sum + amount, 0)).toBe(pence(/It costs ([\d\u202f  ]+\.\d\d) GBP/.exec(out)?.[1]));
    expect(out).not.toMatch(/undefined|null|NaN|\{/);
  }, 120_000);

  test.each([
    { words: ['plan', 'more'], status: 2 },
    { words: ['plan', '--horizon', 'soon'], status: 2 },
    { words: ['plan', '--sample', '--horizon', '0'], status: 1 },
    { words: ['plan', '--household', '/nowhere/at/all'], status: 1 },
  ])('$words ends with $status', async ({ words, status }) => {
    expect((await runCommand(...words)).status).toBe(status);
  }, 120_000);
});
