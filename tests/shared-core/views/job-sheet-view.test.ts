import { beforeAll, describe, expect, test } from 'vitest';
import type { ReplyOf } from '../../../shared-core/contract/contract.ts';
import { taskSheets } from '../../../shared-core/work/task-sheet.ts';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';
import { standingSample, type StandingSample } from '../sample/sample-household.ts';

type JobSheet = ReplyOf<'sheet.session'>;

/** A petrol car with an oil change and brakes, kept for one day at home. */
function withSession(place: 'home' | 'garage' = 'home', tasks: readonly string[] = ['polish', 'brakes', 'oil']): MemoryHousehold {
  const household = memoryHousehold();
  const interval = { repeat: { months: 12, distance: null } };
  household.must('car.add', { id: 'pip', name: 'Pip', power: 'petrol', year: 2022 });
  household.must('specification.set', { id: 'oil-a', name: 'oil A', unit: 'litre' });
  household.must('specification.set', { id: 'filter', name: 'oil filter', unit: 'each' });
  household.must('specification.set', { id: 'pads', name: 'pads', unit: 'set' });
  household.must('part.set', { id: 'can', name: 'can of oil', meets: ['oil-a'] });
  household.must('part.set', { id: 'filter-f', name: 'filter F', meets: ['filter'] });
  household.must('supplier.set', { id: 's', name: 'Copper Lane', leadDays: 1, deliveryMinor: 0 });
  household.must('item.add', { id: 'oil', car: 'pip', name: 'Engine oil and filter', interval, minutes: 45, access: ['undertray'], needs: [{ specification: 'oil-a', quantity: 4 }, { specification: 'filter', quantity: 1 }] });
  household.must('item.add', { id: 'brakes', car: 'pip', name: 'Brake pads and discs', interval, minutes: 30, needs: [{ specification: 'pads', quantity: 1 }] });
  household.must('item.add', { id: 'polish', car: 'pip', name: 'Polish', interval });
  household.must('lot.set', { id: 'lot-1', part: 'can', quantity: 5, receivedOn: '2026-01-02' as never, where: 'shelf, floor' });
  household.must('card.set', { car: 'pip', key: 'oil-drain-torque', value: 30, unit: 'Nm', source: 'handbook, page 213' });
  household.must('card.set', { car: 'pip', key: 'wheel-torque', value: 11, unit: 'Nm', thread: 'M12x1.5' });
  household.must('card.set', { car: 'pip', key: 'engine-oil-quantity', value: 4.1, unit: 'l', source: 'handbook, page 212' });
  household.must('tool.set', { id: 'wrench', name: 'Oil filter wrench', state: 'missing' });
  household.must('sheet.start', { item: 'oil', from: 'engine-oil-and-filter' });
  household.must('sheet.start', { item: 'brakes', from: 'brake-pads-look' });
  household.must('place.set', { id: 'garage', name: 'a garage', kind: 'garage' });
  household.must('session.keep', { sessions: [{ day: '2026-12-05' as never, place, tasks: tasks.map((id) => ({ kind: 'item' as const, id })) }] });
  return household;
}

function sheetOf(household: MemoryHousehold): JobSheet {
  return household.must('sheet.session', { session: household.must('sessions.show', {}).sessions[0]?.id ?? '' });
}

describe('a job sheet', () => {
  test('gives each torque by the card with its source, in both units, and asks about an unlikely one', () => {
    const [car] = sheetOf(withSession()).cars;
    const torque = (figure: string) => car?.torques.find((one) => one.figure === figure);
    expect(torque('oil-drain-torque')).toMatchObject({ entered: true, text: '30 N·m', source: 'handbook, page 213', question: null, lack: null, tasks: ['item/oil'] });
    expect(torque('oil-drain-torque')?.inUnits.map((one) => one.text)).toEqual(['30 N·m', '22.1 lbf·ft', '266 lbf·in']);
    expect(torque('wheel-torque')).toMatchObject({ text: '11 N·m', source: null, tasks: ['item/brakes'], question: { code: 'torque-low-in' } });
  });

  test('names what the card lacks where it is missed, and invents nothing', () => {
    const [car] = sheetOf(withSession()).cars;
    const filter = car?.blocks.flatMap((block) => block.steps).flatMap((step) => step.torques).find((one) => one.figure === 'oil-filter-torque');
    expect(filter).toMatchObject({ entered: false, text: 'not entered', inUnits: [], lack: { code: 'sheet-lacks', text: 'Oil filter: not entered. Enter it on the data card of Pip, with its source. A job sheet leaves the torque blank.' } });
    expect(car?.lacks.find((one) => one.figure === 'oil-filter-torque')).toMatchObject({ kind: 'torque', tasks: ['item/oil'] });
    expect(car?.lacks.map((one) => one.figure)).not.toContain('oil-drain-torque');
    expect(car?.lacks.map((one) => one.figure)).toContain('engine-oil-specification');
    expect(car?.fluids[0]).toMatchObject({ name: 'Engine oil', quantity: { text: '4.1 L', source: 'handbook, page 212' }, specification: { text: 'not entered' } });
  });

  test('has cautions first, tools once, and leavings to an authorised place', () => {
    const sheet = sheetOf(withSession());
    expect(Object.keys(sheet).indexOf('cautions')).toBeLessThan(Object.keys(sheet).indexOf('cars'));
    expect(sheet.cautions.slice(0, 3).map((one) => [one.said.code, one.tasks])).toEqual([['caution-maker-first', []], ['caution-unknown', ['item/polish']], ['caution-lifting', ['item/brakes', 'item/oil']]]);
    expect(sheet.cautions.find((one) => one.hazard === 'brakes')?.by).toBe('skilled');
    expect(sheet.tools.filter((one) => one.name === 'torque wrench')).toMatchObject([{ state: 'not-listed', lacking: false, tasks: ['item/brakes', 'item/oil'] }]);
    expect(sheet.tools.find((one) => one.tool === 'wrench')).toMatchObject({ name: 'Oil filter wrench', state: 'missing', lacking: true });
    expect(sheet.disposal.map((one) => [one.what, one.tasks])).toEqual([['used-oil', ['item/oil']], ['oil-filter', ['item/oil']]]);
    expect(sheet.disposal[0]?.said.text).toMatch(/authorised/);
  });

  test('a task without a sheet stands with its name and where to write one', () => {
    const [car] = sheetOf(withSession()).cars;
    expect(car?.tasks.find((one) => one.key === 'item/polish')).toMatchObject({ hasSheet: false, startingSheet: null, gap: { code: 'sheet-none', text: '"Polish" has no sheet yet. Write its steps on its task sheet, which opens beside it in Car, Care; then they stand here.' } });
    expect(car?.blocks.filter((block) => block.tasks.includes('item/polish'))).toMatchObject([{ kind: 'work', title: 'Polish', steps: [], gap: { code: 'sheet-none' } }]);
  });

  test('says where each part stands: shelf lot and place, order and day, or missing', () => {
    const household = withSession();
    const part = (specification: string) => sheetOf(household).parts.find((one) => one.specification === specification);
    expect(part('oil-a')).toMatchObject({ state: 'on-shelf', task: 'item/oil', taken: [{ lot: 'lot-1', where: 'shelf, floor', quantity: 4 }], said: { code: 'job-part-on-shelf' } });
    expect(part('filter')).toMatchObject({ state: 'missing', lacking: 1, orders: [], said: { code: 'job-part-missing' } });
    const { order } = household.must('order.place', { id: 'o', supplier: 's', number: 'CL 1', expectedOn: '2026-12-09' as never, sure: true, lines: [{ part: 'filter-f', packs: 1, quantity: 1, priceMinor: 500, for: [] }] } as never) as { order: { id: string } };
    expect(part('filter')).toMatchObject({ state: 'missing', orders: [{ order: order.id, supplierName: 'Copper Lane', number: 'CL 1', expectedOn: '2026-12-09', partName: 'filter F', inTime: false }], said: { code: 'job-part-too-late' } });
    household.must('order.change', { order: order.id, expectedOn: '2026-12-04' as never });
    expect(part('filter')).toMatchObject({ state: 'on-the-way', comingOn: '2026-12-04', orders: [{ inTime: true }] });
  });

  test('a session at a garage lists no parts of ours', () => {
    expect(sheetOf(withSession('garage'))).toMatchObject({ partsFrom: 'garage', parts: [], session: { placeKind: 'garage' } });
  });

  test('leaves the steps of what is done out, and keeps its name', () => {
    const household = withSession();
    household.must('record.add', { car: 'pip', date: '2026-11-25' as never, lines: [{ name: 'Oil', item: 'oil' }] });
    const [car] = sheetOf(household).cars;
    expect(car?.tasks.map((one) => [one.key, one.done])).toContainEqual(['item/oil', true]);
    expect(car?.blocks.flatMap((block) => block.tasks)).not.toContain('item/oil');
    expect(sheetOf(household).parts.map((one) => one.specification)).toEqual(['pads']);
  });

  test('does not depend on the order in which the tasks were named', () => {
    const [one, other] = [withSession('home', ['polish', 'brakes', 'oil']), withSession('home', ['oil', 'polish', 'brakes'])];
    expect({ ...sheetOf(other), session: null }).toEqual({ ...sheetOf(one), session: null });
  });

  test('of no session is refused', () => {
    expect(memoryHousehold().call('sheet.session', { session: 'none' })).toMatchObject({ ok: false, refusal: { code: 'unknown-session' } });
  });
});

describe('the longest session of the sample', () => {
  let sample: StandingSample;
  let sheet: JobSheet;
  const LONGEST = ['pip-oil', 'pip-coolant', 'pip-brake-fluid', 'pip-pads', 'pip-plugs', 'pip-air-filter', 'pip-cabin-filter', 'heron-leisure-battery', 'wren-hoses', 'ember-wipers'];

  beforeAll(async () => {
    sample = await standingSample('2026-11-25');
    const kept = sample.household.call('session.keep', { sessions: [{ day: '2026-11-28', place: 'home', tasks: LONGEST.map((id) => ({ kind: 'item', id })) }] }, sample.today);
    if (!kept.ok) throw new Error(JSON.stringify(kept));
    sheet = sample.ask('sheet.session', { session: (kept.value as { sessions: readonly { id: string }[] }).sessions[0]?.id ?? '' });
  });

  test('shows four cars, every step of every task once, and numbers them through', () => {
    expect(sheet.cars.map((car) => car.carName)).toEqual(['Ember', 'Heron', 'Pip', 'Wren']);
    for (const car of sheet.cars) {
      const steps = car.blocks.flatMap((block) => block.steps);
      expect(steps.map((step) => step.number)).toEqual(steps.map((_step, at) => at + 1));
      const wanted = car.tasks.flatMap((task) => (sample.household.facts.get(taskSheets, task.task.id)?.steps ?? []).map((step) => `${task.key} ${step.id}`));
      expect(steps.flatMap((step) => step.of.map((ref) => `${ref.task} ${ref.step}`)).sort()).toEqual(wanted.sort());
    }
  });

  test('shows everything a sheet can have', () => {
    const steps = sheet.cars.flatMap((car) => car.blocks.flatMap((block) => block.steps));
    const torques = sheet.cars.flatMap((car) => car.torques);
    expect(new Set(sheet.cars.flatMap((car) => car.blocks.map((block) => block.kind)))).toEqual(new Set(['open', 'close', 'before', 'drain', 'work', 'fill', 'run', 'level']));
    expect(steps.some((step) => step.of.length > 1)).toBe(true);
    expect(steps.some((step) => step.measure !== null)).toBe(true);
    expect([torques.some((one) => one.figure === null && one.source !== null), torques.some((one) => one.question !== null), torques.some((one) => !one.entered)]).toEqual([true, true, true]);
    expect(sheet.cars.some((car) => car.tasks.some((task) => task.gap !== null))).toBe(true);
    expect(sheet.cars.some((car) => car.tasks.some((task) => task.followUps.some((one) => one.when.text === 'after 7 days or 50 km')))).toBe(true);
    expect(sheet.cars.some((car) => car.tasks.some((task) => task.reset !== null))).toBe(true);
    expect(new Set(sheet.parts.map((part) => part.state))).toContain('on-shelf');
    expect(new Set(sheet.parts.map((part) => part.state))).toContain('missing');
    expect(new Set(sheet.tools.map((tool) => tool.state))).toEqual(new Set(['owned', 'missing', 'not-listed']));
    expect(sheet.cautions.map((one) => one.said.code)).toEqual(expect.arrayContaining(['caution-maker-first', 'caution-high-voltage-near', 'caution-old-linings', 'caution-lifting', 'caution-brakes', 'caution-airbag']));
    expect(sheet.cars.every((car) => car.lacks.every((one) => one.said.text.includes('not entered')))).toBe(true);
  });

  test('no engine of a car runs between the first drain and the last filling', () => {
    for (const car of sheet.cars) {
      const kinds = car.blocks.map((block) => block.kind);
      const [from, to] = [kinds.indexOf('drain'), kinds.lastIndexOf('fill')];
      if (from >= 0) expect(kinds.slice(from, to).filter((kind) => kind === 'run' || kind === 'before')).toEqual([]);
    }
  });
});
