import { describe, expect, test } from 'vitest';
import { wishesViewSchema } from '../../shared-core/views/wishes-view-schema.ts';
import { jsonOf, runCommand } from './run-command.ts';

const SAMPLE = ['wishes', '--sample', '--on', '2026-11-25'] as const;

describe('wishes', () => {
  test('one JSON value, as the contract has it', async () => {
    const ran = await runCommand(...SAMPLE, '--json');
    expect(ran).toMatchObject({ status: 0, said: '' });
    const view = wishesViewSchema.parse(jsonOf(ran));
    expect(view.wishes.map((one) => [one.wish.id, one.state])).toEqual([['wren-springs', 'saving'], ['heron-radio', 'planned'], ['pip-camera', 'saving']]);
    // By hand: 60.00 and 11 months of 40.00; springs 139.00 + 18.50 and 165.00 of work; then the radio with its loudspeakers.
    expect([view.saving.putByMinor, view.wishes.map((one) => one.cost?.likelyMinor), view.wishes.map((one) => one.paidForOn)]).toEqual([50_000, [32_250, 12_390, 0], ['2026-11-25', '2026-11-25', null]]);
  }, 120_000);

  test('the same in sentences', async () => {
    const { status, out } = await runCommand(...SAMPLE);
    expect(status).toBe(0);
    expect(out).toContain('1. Wren: firmer front springs (saved for)');
    expect(out).toContain('No price is known for camera with its screen, so no day can be said.');
    expect(out).not.toMatch(/undefined|null|NaN|\{/);
  }, 120_000);

  test('takes no words', async () => expect((await runCommand('wishes', 'more')).status).toBe(2));
});
