import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { composeBlocks } from '../../../shared-core/work/compose-blocks.ts';
import type { JobBlock } from '../../../shared-core/work/job-block.ts';
import type { OrderedTask } from '../../../shared-core/work/job-graph.ts';
import { anyTasks, task } from './job-examples.ts';

/** Blocks in words: '+undertray', 'oil drain: the oil', '-undertray'. */
function inWords(blocks: readonly JobBlock[]): readonly string[] {
  return blocks.flatMap((block) => {
    if (block.access !== null) return [`${block.kind === 'open' ? '+' : '-'}${block.access}`];
    const words = block.steps.map(({ step }) => `${block.tasks[0] ?? ''}: ${step.text}`);
    return words.length > 0 ? words : [`${block.tasks[0] ?? ''}: ?`];
  });
}

// Source: own, after DESIGN.md section 4 and the order of work in a workshop (common practice, no source).
describe('the order of work', () => {
  test.each<{ case: string; tasks: readonly OrderedTask[]; order: readonly string[] }>([
    { case: 'one task stays as it is written', tasks: [task('oil', ['+tray: off', 'drain: out', 'plug', '-tray: on', 'fill: in', 'level: read'])], order: ['+tray', 'oil: out', 'oil: plug', '-tray', 'oil: in', 'oil: read'] },
    {
      case: 'two that share an access open it once and close it last',
      tasks: [task('fluid', ['+wheels: off', 'bleed', '-wheels: on']), task('pads', ['+wheels: off', 'look', '-wheels: on'])],
      order: ['+wheels', 'fluid: bleed', 'pads: look', '-wheels'],
    },
    {
      case: 'drains come before other work, levels after it',
      tasks: [task('belt', ['look']), task('coolant', ['drain: out', 'fill: in', 'level: read']), task('oil', ['drain: out', 'fill: in', 'level: read'])],
      order: ['coolant: out', 'oil: out', 'belt: look', 'coolant: in', 'oil: in', 'coolant: read', 'oil: read'],
    },
    { case: 'what leads to a drain comes before other work', tasks: [task('air', ['look']), task('oil', ['cap', '+tray: off', 'drain: out', '-tray: on'])], order: ['oil: cap', '+tray', 'oil: out', '-tray', 'air: look'] },
    {
      case: 'no engine runs while something is drained',
      tasks: [task('coolant', ['drain: out', 'fill: in', 'run: bleed']), task('oil', ['before: warm it', 'drain: out', 'fill: in', 'run: lamp', 'level: read'])],
      order: ['oil: warm it', 'oil: out', 'coolant: out', 'oil: in', 'coolant: in', 'oil: lamp', 'coolant: bleed', 'oil: read'],
    },
    { case: 'an access that only the item names is opened before all and closed before the levels', tasks: [task('oil', ['drain: out', 'level: read'], ['tray'])], order: ['+tray', 'oil: out', '-tray', 'oil: read'] },
    { case: 'what an item lists first is opened first and closed last', tasks: [task('belt', ['change'], ['tray', 'mount'])], order: ['+tray', '+mount', 'belt: change', '-mount', '-tray'] },
    { case: 'a task without a sheet stands, with its access', tasks: [task('hoses', [], ['wheels']), task('fluid', ['bleed'], ['Wheels'])], order: ['+Wheels', 'fluid: bleed', 'hoses: ?', '-Wheels'] },
    {
      case: 'what is open is used up before something else is opened',
      tasks: [task('air', ['+box: off', 'filter', '-box: on']), task('cabin', ['+glove: off', 'filter', '-glove: on']), task('plugs', ['+box: off', 'plugs', '-box: on'])],
      order: ['+box', 'air: filter', 'plugs: plugs', '-box', '+glove', 'cabin: filter', '-glove'],
    },
    {
      case: 'tasks that contradict each other still open each once',
      tasks: [task('one', ['+a: a', 'x', '-a: a', '+b: b', 'y', '-b: b']), task('two', ['+b: b', 'p', '+a: a', 'q', '-a: a', '-b: b'])],
      // By hand: "one" wants a closed before b, "two" wants both open: its own order gives way only in that y comes before a is closed.
      order: ['+b', 'two: p', '+a', 'two: q', 'one: x', 'one: y', '-a', '-b'],
    },
  ])('$case', ({ tasks, order }) => {
    expect(inWords(composeBlocks(tasks))).toEqual(order);
  });

  test('what two say word for word is said once, for both', () => {
    const blocks = composeBlocks([task('oil', ['+raised: chock', '+raised: raise', 'drain: out']), task('pads', ['+raised: chock', '+raised: loosen', '+raised: raise', 'look'])]);
    expect(blocks[0]?.steps.map(({ step, of }) => [step.text, of])).toEqual([
      ['chock', [{ task: 'oil', step: 's0' }, { task: 'pads', step: 's0' }]],
      ['loosen', [{ task: 'pads', step: 's1' }]],
      ['raise', [{ task: 'oil', step: 's1' }, { task: 'pads', step: 's2' }]],
    ]);
    expect(blocks[0]?.tasks).toEqual(['oil', 'pads']);
  });

  test('what one task says twice stays two', () => {
    const blocks = composeBlocks([task('oil', ['+x: turn', '+x: turn', 'go']), task('pads', ['+x: turn', '+x: turn', 'go'])]);
    expect(blocks[0]?.steps.map(({ of }) => of.map((ref) => `${ref.task} ${ref.step}`))).toEqual([['oil s0', 'pads s0'], ['oil s1', 'pads s1']]);
  });

  test('steps that go on in one task make one block', () => {
    expect(composeBlocks([task('wipers', ['one', 'two'])]).map((block) => [block.kind, block.steps.length])).toEqual([['work', 2]]);
  });
});

describe('whatever the tasks', () => {
  const runs = { numRuns: 400 };

  test('every step of every task is there exactly once, and no other', () => {
    fc.assert(fc.property(anyTasks, (tasks) => {
      const there = composeBlocks(tasks).flatMap((block) => block.steps.flatMap(({ of }) => of.map((ref) => `${ref.task}/${ref.step}`)));
      expect([...there].sort()).toEqual(tasks.flatMap((one) => one.steps.map((own) => `${one.key}/${own.id}`)).sort());
    }), runs);
  });

  test('a joined step says what each of its own says', () => {
    fc.assert(fc.property(anyTasks, (tasks) => {
      for (const { step: joined, of } of composeBlocks(tasks).flatMap((block) => block.steps)) {
        for (const ref of of) expect(tasks.find((one) => one.key === ref.task)?.steps.find((own) => own.id === ref.step)?.text).toBe(joined.text);
      }
    }), runs);
  });

  test('each access is opened once before its first use and closed once after its last', () => {
    fc.assert(fc.property(anyTasks, (tasks) => {
      const blocks = composeBlocks(tasks);
      for (const access of new Set(tasks.flatMap((one) => [...one.access, ...one.steps.flatMap((own) => own.access?.name ?? [])]))) {
        const at = (kind: 'open' | 'close') => blocks.flatMap((block, index) => (block.kind === kind && block.access === access ? [index] : []));
        expect([at('open').length, at('close').length]).toEqual([1, 1]);
        const uses = blocks.flatMap((block, index) => (block.access === null && block.steps.some(({ of }) => of.some((ref) => needs(tasks, ref, access))) ? [index] : []));
        for (const use of [...uses, ...at('close')]) expect(use).toBeGreaterThan(at('open')[0] ?? Infinity);
        for (const use of uses) expect(use).toBeLessThan(at('close')[0] ?? -1);
      }
    }), runs);
  });

  test('the own steps of a task keep their order', () => {
    fc.assert(fc.property(anyTasks, (tasks) => {
      const own = composeBlocks(tasks).filter((block) => block.access === null).flatMap((block) => block.steps.flatMap(({ of }) => of));
      for (const one of tasks) expect(own.filter((ref) => ref.task === one.key).map((ref) => ref.step)).toEqual(one.steps.filter((step) => step.access === null).map((step) => step.id));
    }), runs);
  });

  test('the order does not depend on that of the tasks', () => {
    fc.assert(fc.property(anyTasks, fc.nat(), (tasks, turn) => {
      const turned = tasks.map((_one, at) => tasks[(at + turn) % tasks.length] as OrderedTask);
      expect(composeBlocks(turned)).toEqual(composeBlocks(tasks));
      expect(composeBlocks([...tasks].reverse())).toEqual(composeBlocks(tasks));
    }), runs);
  });

  test('of tasks without any access, nothing runs before all that is drained is filled in', () => {
    fc.assert(fc.property(fc.array(fc.subarray(['before: a', 'drain: b', 'c', 'fill: d', 'run: e', 'level: f']), { minLength: 1, maxLength: 6 }), (drawn) => {
      const kinds = composeBlocks(drawn.map((steps, at) => task(`task ${at}`, steps))).filter((block) => block.steps.length > 0).map((block) => block.kind);
      const [firstRun, lastFill] = [kinds.indexOf('run'), Math.max(kinds.lastIndexOf('fill'), kinds.lastIndexOf('drain'))];
      if (firstRun >= 0) expect(lastFill).toBeLessThan(firstRun);
      if (kinds.includes('level')) expect(kinds.slice(kinds.indexOf('level')).every((kind) => kind === 'level')).toBe(true);
    }), runs);
  });
});

/** Whether a step stands between the opening and the closing of something in its own task, as its sheet and its item say. */
function needs(tasks: readonly OrderedTask[], ref: { readonly task: string; readonly step: string }, access: string): boolean {
  const one = tasks.find((each) => each.key === ref.task);
  if (one === undefined) return false;
  const way = (kind: 'open' | 'close') => one.steps.flatMap((step, at) => (step.access?.way === kind && step.access.name === access ? [at] : []));
  const at = one.steps.findIndex((step) => step.id === ref.step);
  const uses = one.access.includes(access) || way('open').length + way('close').length > 0;
  const lastOfWork = one.steps.findLastIndex((step) => step.access !== null || (step.turn !== 'run' && step.turn !== 'level'));
  const opened = Math.max(-1, ...way('open'));
  const closed = way('close')[0] ?? lastOfWork + 1;
  return uses && at > opened && at < closed;
}
