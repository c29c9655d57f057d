import { describe, expect, test } from 'vitest';
import { joinTools } from '../../../shared-core/work/join-tools.ts';
import { resolveFigure, torqueInUnits } from '../../../shared-core/work/job-figures.ts';
import { hazardsOf } from '../../../shared-core/work/job-hazards.ts';
import { turnOf } from '../../../shared-core/work/turn-of.ts';
import { day } from '../calendar/day.ts';
import { step } from './job-examples.ts';

describe('a torque in the units of a wrench', () => {
  // Source: NIST SP 811 (2008) B.8: 1 lbf ft = 1.355 818 N m, 1 lbf in = 0.112 984 8 N m (seen in a copy); by hand, to three figures.
  test.each([
    { typed: { value: 30, unit: 'Nm' }, texts: ['30 N·m', '22.1 lbf·ft', '266 lbf·in'], by: '30/1.355818 = 22.127, 30/0.1129848 = 265.5' },
    { typed: { value: 80, unit: 'lbf-ft' }, texts: ['108 N·m', '80 lbf·ft', '960 lbf·in'], by: '80*1.355818 = 108.465, 80*12' },
    { typed: { value: 120, unit: 'Nm' }, texts: ['120 N·m', '88.5 lbf·ft', '1062 lbf·in'], by: '120/1.355818 = 88.507, 120/0.1129848 = 1062.09' },
    { typed: { value: 88, unit: 'lbf-in' }, texts: ['9.94 N·m', '7.33 lbf·ft', '88 lbf·in'], by: '88*0.1129848 = 9.9427, 88/12' },
    { typed: { value: 11, unit: 'kgf-m' }, texts: ['11 kgf·m', '108 N·m', '79.6 lbf·ft', '955 lbf·in'], by: '11*9.80665 = 107.873, /1.355818 = 79.563, *12' },
  ] as const)('$typed.value $typed.unit: $texts ($by)', ({ typed, texts }) => {
    expect(torqueInUnits(typed).map((one) => one.text)).toEqual(texts);
  });
});

test('a figure in another kind than the sheet needs counts as not entered', () => {
  const figure = { id: 'f', car: 'pip', key: 'own', name: 'Own', value: { kind: 'text', text: 'tight' }, source: null, paper: null, note: '', sure: false } as const;
  expect(resolveFigure([figure], { figure: 'own', name: null }, 'torque')).toMatchObject({ name: 'Own', figure: null });
  expect(resolveFigure([figure], { figure: 'own', name: null }, null)).toMatchObject({ figure });
  expect(resolveFigure([], { figure: 'wheel-torque', name: null }, 'torque')).toMatchObject({ name: 'Wheel bolts or nuts', figure: null, missed: ['sheet-torque', 'torque-check'] });
});

test.each([
  { steps: ['run: x'], running: [], at: 0, turn: 'run' }, { steps: ['x', 'drain: y'], running: [0], at: 0, turn: 'before' }, { steps: ['x', 'y'], running: [0], at: 0, turn: 'run' },
  { steps: ['drain: x', 'y'], running: [1], at: 1, turn: 'run' }, { steps: ['x'], running: [], at: 0, turn: 'work' }, { steps: ['level: x'], running: [0], at: 0, turn: 'level' },
])('$steps, running at $running: step $at is $turn', ({ steps, running, at, turn }) => {
  expect(turnOf(steps.map((words, index) => ({ ...step(words), hazards: running.includes(index) ? ['running-engine' as const] : [] })), at)).toBe(turn);
});

test('the tools of all tasks are joined once, with where they are', () => {
  const tool = { id: 'w', name: 'Filter wrench', state: 'borrowed', where: null, lender: 'a neighbour', until: day('2026-11-27'), note: '' } as const;
  const wanted = [{ name: 'filter wrench', task: 'b' }, { name: 'Funnel', task: 'b' }, { name: 'FILTER WRENCH', task: 'a' }, { name: 'funnel', task: 'b' }];
  const joined = joinTools(wanted, [tool], day('2026-11-28'));
  expect(joined.map(({ name, lacking, tasks }) => ({ name, lacking, tasks }))).toEqual([{ name: 'Filter wrench', lacking: true, tasks: ['a', 'b'] }, { name: 'Funnel', lacking: false, tasks: ['b'] }]);
  expect(joinTools([...wanted].reverse(), [tool], day('2026-11-28'))).toEqual(joined);
  expect(joinTools(wanted, [tool], day('2026-11-27'))[0]?.lacking).toBe(false);
});

describe('hazards', () => {
  const car = { power: 'petrol', year: 2022, firstRegistered: null } as const;
  test.each([
    { case: 'of a task without a sheet are those of the one its name calls for', car, name: 'Brake fluid', has: 'brake-fluid', is: true },
    { case: 'of an unknown task are not known', car, name: 'Polish', has: 'lifting', is: false },
    { case: 'of brakes on an older car are old linings too', car: { ...car, year: 1972 }, name: 'Brake pads', has: 'old-linings', is: true },
    { case: 'of brakes on a car known by its registration', car: { ...car, year: null, firstRegistered: day('1999-12-31') }, name: 'Brake pads', has: 'old-linings', is: true },
    { case: 'of brakes on a later car are not', car: { ...car, year: 2000 }, name: 'Brake pads', has: 'old-linings', is: false },
    { case: 'of other work on an older car are not', car: { ...car, year: 1972 }, name: 'Wiper blades', has: 'old-linings', is: false },
  ] as const)('$case', ({ car: on, name, has, is }) => {
    expect(hazardsOf(on, name, null).includes(has)).toBe(is);
  });
});
