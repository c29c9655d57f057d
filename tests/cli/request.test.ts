import { describe, expect, test } from 'vitest';
import { bookingViewSchema } from '../../shared-core/views/booking-view-schema.ts';
import { jsonOf, runCommand } from './run-command.ts';

const SAMPLE = ['--sample', '--on', '2026-11-25'];

describe('request', () => {
  test('alone lists the sessions at garages and how each stands', async () => {
    const { status, out } = await runCommand('request', ...SAMPLE);
    expect([status, out.trimEnd().split('\n')]).toEqual([0, ['heron-winter  13 Jan 2027, the van workshop on the hill: booked for 09:00', 'pip-brakes  25 Apr 2026, the garage on the corner: done on 25 Apr 2026']]);
  }, 120_000);

  test('of a session is the sheet, and as one JSON value all of it', async () => {
    const { status, out } = await runCommand('request', 'heron-winter', ...SAMPLE);
    expect(status).toBe(0);
    expect(out).toMatch(/^Request to the van workshop on the hill\nBooked: 13 Jan 2027, 09:00\nCar: Heron, camper\n/);
    expect(out).toContain('\nPlease do not do:\n- engine oil and filter\n');
    expect(out).not.toMatch(/undefined|null|\{/);
    const view = bookingViewSchema.parse(jsonOf(await runCommand('request', 'heron-winter', ...SAMPLE, '--json')));
    expect(out.trimEnd()).toBe(view.cars.map((car) => car.text).join('\n\n'));
  }, 240_000);

  test.each([
    { words: ['request', 'none', ...SAMPLE], status: 1 },
    { words: ['request', 'one', 'two'], status: 2 },
  ])('$words ends with $status', async ({ words, status }) => {
    expect((await runCommand(...words)).status).toBe(status);
  }, 120_000);
});
