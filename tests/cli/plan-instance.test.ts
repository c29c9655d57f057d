import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { planAnswerSchema } from '../../shared-core/sessions/plan-answer.ts';
import { temporaryFolder } from '../host/open-test-host.ts';
import { jsonOf, runCommand, runProcess } from './run-command.ts';

/** The instance of the headless commands' own description, as it stands there. */
const DESCRIBED = {
  days: ['2027-01-09', '2027-01-16'],
  places: [{ id: 'home', openingMinor: 1500, minutesADay: 300, minuteMinor: 0, closed: ['2027-01-16'] }],
  tasks: [{ id: 't1', car: 'c1', minutes: 40, access: ['airbox'], mustDo: true, leftUndoneMinor: 0, costMinor: { home: [0, 250] } }],
  access: [{ car: 'c1', id: 'airbox', minutes: 25 }],
  cars: [{ id: 'c1', closed: [] }],
};
const [place] = DESCRIBED.places;
const [task] = DESCRIBED.tasks;

function fileOf(name: string, content: unknown): string {
  const file = join(temporaryFolder(), `${name}.json`);
  writeFileSync(file, typeof content === 'string' ? content : JSON.stringify(content));
  return file;
}

describe('plan --instance', () => {
  // Source: HEADLESS.md, "plan --instance". By hand: an opening of 1500, 40 minutes and 25 of access at nothing.
  const answer = { status: 'optimal', totalMinor: 1500, boundMinor: 1500, sessions: [{ day: '2027-01-09', place: 'home', tasks: ['t1'], minutes: 65 }], left: [] };

  test('one JSON value of the described form, and nothing else', async () => {
    const ran = await runCommand('plan', '--instance', fileOf('described', DESCRIBED), '--json');
    expect(ran).toMatchObject({ status: 0, said: '' });
    expect(jsonOf(ran)).toEqual(answer);
    expect(planAnswerSchema.parse(jsonOf(ran))).toEqual(answer);
    expect(Object.keys(jsonOf(ran))).toEqual(['status', 'totalMinor', 'boundMinor', 'sessions', 'left']);
  });

  test('the same in sentences, with what is left', async () => {
    const more = { ...DESCRIBED, tasks: [...DESCRIBED.tasks, { ...task, id: 't2', mustDo: false, leftUndoneMinor: 30, costMinor: { home: [31, null] } }] };
    const ran = await runCommand('plan', '--instance', fileOf('more', more));
    expect(ran).toEqual({ status: 0, said: '', out: 'optimal: 1530 in minor units; nothing cheaper than 1530\n  9 Jan 2027, home: t1 (65 min)\n  left: t2\n' });
  });

  test('in a process of its own, from standard input', async () => {
    const ran = await runProcess(['plan', '--instance', '-', '--json'], [JSON.stringify(DESCRIBED)]);
    expect(ran).toMatchObject({ status: 0, said: '' });
    expect(jsonOf(ran)).toEqual(answer);
  });

  test('nothing to do is a plan of nothing', async () => {
    expect(jsonOf(await runCommand('plan', '--instance', fileOf('empty', { days: [], places: [], tasks: [] }), '--json'))).toEqual({ status: 'optimal', totalMinor: 0, boundMinor: 0, sessions: [], left: [] });
  });

  test.each([
    { case: 'no day takes what must be done', change: { days: ['2027-01-16'], tasks: [{ ...task, costMinor: { home: [0] } }] }, code: 'plan-must-do-no-day' },
    { case: 'it takes longer than the day', change: { places: [{ ...place, minutesADay: 64 }] }, code: 'plan-must-do-too-long' },
    { case: 'two must be done and one fits', change: { places: [{ ...place, minutesADay: 70 }], tasks: [task, { ...task, id: 't2' }] }, code: 'plan-must-do-not-all' },
    { case: 'costs not one for each day', change: { tasks: [{ ...task, costMinor: { home: [0] } }] }, code: 'costs-unlike-days' },
    { case: 'costs at no place', change: { tasks: [{ ...task, costMinor: { moon: [0, 0] } }] }, code: 'cost-at-no-place' },
    { case: 'an access the car does not have', change: { access: [] }, code: 'access-not-given' },
    { case: 'an access twice', change: { access: [...DESCRIBED.access, ...DESCRIBED.access] }, code: 'access-twice' },
    { case: 'a day twice', change: { days: ['2027-01-09', '2027-01-09'] }, code: 'day-twice' },
    { case: 'a task twice', change: { tasks: [task, task] }, code: 'id-twice' },
    { case: 'a day that is none', change: { days: ['2027-02-29', '2027-01-16'] }, code: 'not-a-date' },
    { case: 'a cost below nothing', change: { tasks: [{ ...task, costMinor: { home: [-1, 0] } }] }, code: 'not-an-amount' },
    { case: 'half a minute', change: { tasks: [{ ...task, minutes: 0.5 }] }, code: 'not-minutes' },
    { case: 'a field that is not known', change: { horizon: 30 }, code: 'unknown-field' },
    { case: 'tasks that are no list', change: { tasks: {} }, code: 'not-understood' },
    { case: 'figures too large to reckon with', change: { places: [{ ...place, openingMinor: 900_000_000_000 }] }, code: 'figures-too-large' },
  ])('$case is refused: $code', async ({ change, code }) => {
    const file = fileOf('refused', { ...DESCRIBED, ...change });
    const [json, text] = [await runCommand('plan', '--instance', file, '--json'), await runCommand('plan', '--instance', file)];
    expect(json.status).toBe(1);
    expect(jsonOf(json)).toMatchObject({ refused: { code } });
    expect(text).toMatchObject({ status: 1, out: '' });
    expect(text.said).toMatch(new RegExp(`^\\S+ .*\\. .*\\(${code}\\)\\s$`));
    expect(text.said).not.toMatch(/[{}]|undefined/);
  });

  test.each([
    { case: 'a file that is not there', file: () => join(temporaryFolder(), 'none.json'), words: [], status: 1, code: 'file-unreadable' },
    { case: 'a file that is no JSON', file: () => fileOf('torn', '{ "days": ['), words: [], status: 1, code: 'file-not-json' },
    { case: 'a horizon, which an instance has by itself', file: () => fileOf('fine', DESCRIBED), words: ['--horizon', '30'], status: 2, code: null },
    { case: 'a word too many', file: () => fileOf('fine', DESCRIBED), words: ['more'], status: 2, code: null },
  ])('$case ends with $status', async ({ file, words, status, code }) => {
    const ran = await runCommand('plan', '--instance', file(), ...words, '--json');
    expect(ran.status).toBe(status);
    if (code !== null) expect(jsonOf(ran)).toMatchObject({ refused: { code } });
    // What the runtime says of it is in its own words.
    expect(ran.out + ran.said).not.toMatch(/Unexpected|position \d/);
  });

  test('the same instance gives the same bytes', async () => {
    const file = fileOf('described', DESCRIBED);
    expect((await runCommand('plan', '--instance', file, '--json')).out).toBe((await runCommand('plan', '--instance', file, '--json')).out);
  });
});
