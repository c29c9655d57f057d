import { beforeAll, describe, expect, test } from 'vitest';
import { isOnce } from '../../../shared-core/care/limit.ts';
import { addMonths } from '../../../shared-core/calendar/add-months.ts';
import { addDays, monthOf, type LocalDate } from '../../../shared-core/calendar/local-date.ts';
import type { ReplyOf } from '../../../shared-core/contract/contract.ts';
import { must } from '../../../shared-core/result/assert.ts';
import heron from '../../../shared-core/sample/heron.json' with { type: 'json' };
import { resolveDates } from '../../../shared-core/sample/resolve-dates.ts';
import { sampleCarSchema } from '../../../shared-core/sample/sample-car.ts';
import { sampleInstrument } from '../../../shared-core/sample/sample-instrument.ts';
import { standingSample, type StandingSample } from './sample-household.ts';

const CARS = ['pip', 'alder', 'wren', 'ember', 'heron'];
const WINTER = [11, 12, 1, 2, 3];

/** What Heron's present instrument shows by its story. */
function heronShown(today: LocalDate, on: LocalDate): number {
  const car = sampleCarSchema.parse(resolveDates(heron, today));
  return sampleInstrument(car).shown(on);
}

/** By hand: registered 48 months before; first due at 36 months. 2024-02-29 and 36 months is 2027-02-28, 366 days before 2028-02-29. */
const TODAYS = [
  { today: '2026-11-25', registered: '2022-11-25', daysLate: 365 },
  { today: '2028-02-29', registered: '2024-02-29', daysLate: 366 },
];

describe.each(TODAYS)('the sample household on $today', ({ today, registered, daysLate }) => {
  let sample: StandingSample;
  let due: ReplyOf<'due.show'>;
  let yard: ReplyOf<'yard.show'>;
  const car = (id: string) => sample.ask('car.show', { car: id });
  const window = (item: string) => must(due.cars.flatMap((one) => one.windows).find((one) => one.item === item), item);
  const obligations = () => due.cars.flatMap((one) => one.obligations);

  beforeAll(async () => {
    sample = await standingSample(today);
    due = sample.ask('due.show', {});
    yard = sample.ask('yard.show', {});
  });

  test('five cars, six years, and everything done before today and in order', () => {
    const days = sample.steps.map((step) => step.on);
    expect(yard.lanes.map((lane) => lane.name)).toEqual(['Alder', 'Ember', 'Heron', 'Pip', 'Wren']);
    expect(yard.household.sample).toBe(true);
    expect(days).toEqual([...days].sort());
    expect(days[0]).toBe(addMonths(sample.today, -72));
    expect(days.filter((on) => on >= sample.today)).toEqual([]);
  });

  test("Pip's brake fluid is late by twelve months to the day, by time", () => {
    const fluid = window('pip-brake-fluid');
    expect(car('pip').car.firstRegistered).toBe(registered);
    expect(fluid).toMatchObject({ state: 'late', limb: 'time', lateBy: { days: daysLate, months: 12, distance: null } });
    expect(fluid.reason.code).toBe('reason-time-first-registration');
  });

  test("Pip's air filter and spark plugs are probably due, its sealant bottle governed by the date printed on it", () => {
    for (const item of ['pip-air-filter', 'pip-plugs']) expect(window(item)).toMatchObject({ state: 'probably-due', likely: today, limb: 'time' });
    expect(window('pip-sealant')).toMatchObject({ state: 'ahead', limb: 'printed-date', likely: addDays(sample.today, 41) });
  });

  test('Pip kept the day of its test by renewing it inside the last month', () => {
    const pip = car('pip');
    const renewals = sample.replies.filter(({ step }) => step.operation === 'obligation.renew' && step.request['obligation'] === 'pip-test');
    const [first, second] = renewals.map(({ reply }) => (reply as ReplyOf<'obligation.renew'>).renewal);
    expect(must(second, 'renewal').lastValidDay).toBe(addMonths(must(first, 'renewal').lastValidDay, 12));
    expect(must(second, 'renewal').on < must(first, 'renewal').lastValidDay).toBe(true);
    expect(pip.readings.filter((reading) => reading.source === 'test' && reading.paper !== null)).toHaveLength(2);
  });

  test('Alder, under severe use, is late by distance; one item probably due, two open, all by distance', () => {
    const filter = window('alder-fuel-filter');
    expect(car('alder').car.severeUse).toBe(0.8);
    expect(filter).toMatchObject({ state: 'late', limb: 'distance' });
    expect(must(filter.lateBy, 'late').distance).toMatchObject({ unit: 'mi' });
    // By hand: 0.8 of 40 000 miles after the reading of 24 months ago.
    const done = must(car('alder').records.find(({ record }) => record.id === 'alder-oil-8'), 'record');
    const read = must(car('alder').readings.find((reading) => reading.id === done.record.reading), 'reading');
    expect(filter.reason.values['target']).toBe(read.typed.value + 32_000);
    expect(window('alder-water')).toMatchObject({ state: 'probably-due', limb: 'distance' });
    for (const item of ['alder-oil', 'alder-pads']) expect(window(item)).toMatchObject({ state: 'open', limb: 'distance' });
  });

  test('a record without a reading takes an estimated odometer', () => {
    const gearbox = must(car('alder').records.find(({ record }) => record.id === 'alder-gearbox-1'), 'record');
    expect(gearbox.record.reading).toBeNull();
    expect(window('alder-gearbox-oil')).toMatchObject({ state: 'ahead', limb: 'distance' });
  });

  test("Wren's grease, governed by distance, falls due when it is awake: without its sleep it would be thought due in it", () => {
    const grease = window('wren-grease');
    expect(grease.limb).toBe('distance');
    for (const edge of [grease.earliest, grease.likely, grease.latest]) expect(WINTER).not.toContain(monthOf(must(edge, 'edge')));
    expect(must(yard.lanes.find((lane) => lane.id === 'wren'), 'wren').laidUpMonths).toEqual(WINTER);
  });

  test('Wren is read only when it is awake and its yearly check keeps to the calendar', () => {
    const wren = car('wren');
    expect(wren.readings.filter((reading) => WINTER.includes(monthOf(reading.date)))).toEqual([]);
    expect(window('wren-yearly').likely).toMatch(/-04-09$/);
    expect(window('wren-yearly').reason.code).toBe('reason-time-first-date');
    expect(wren.due.obligations.map((one) => one.kind)).not.toContain('roadworthiness-test');
  });

  test('Ember has no oil, a declared distance, work for a garage only, and an item beyond five years', () => {
    const ember = car('ember');
    expect(ember.items.filter(({ item }) => /engine oil/.test(item.name))).toEqual([]);
    expect(ember.usage?.prior).toBe('declared');
    expect(ember.items.filter(({ item }) => item.place === 'garage').length).toBeGreaterThanOrEqual(3);
    expect(window('ember-gear-oil')).toMatchObject({ state: 'ahead', earliest: null, likely: null, latest: null, arrangeFrom: null });
    expect(window('ember-coolant').likely).not.toBeNull();
  });

  test('Heron will rest for a while, and nobody drives it then; Alder has been used otherwise for two years', () => {
    const heron = car('heron');
    expect(heron.layUps).toMatchObject([{ id: 'heron-rest', from: addDays(sample.today, 14), to: addMonths(sample.today, 4) }]);
    expect(heron.curve?.resting.some(({ from }) => from === addDays(sample.today, 14))).toBe(true);
    expect(car('alder').usage).toMatchObject({ since: addMonths(sample.today, -24), prior: 'declared', declaredAYear: { value: 18_000, unit: 'mi' } });
  });

  test('Heron has one doubtful reading: a lost digit, and the first repair is the true value', () => {
    const meant = heronShown(sample.today, addDays(sample.today, -16));
    const doubtful = due.cars.flatMap((one) => one.doubtful.map((reading) => ({ car: one.id, ...reading })));
    expect(doubtful).toHaveLength(1);
    expect(doubtful[0]).toMatchObject({ car: 'heron', code: 'decrease', date: addDays(sample.today, -16), value: meant % 10_000 });
    expect(meant).toBeGreaterThan(50_000);
    expect(must(doubtful[0], 'doubtful').repairs[0]).toBe(meant);
  });

  test("Heron's instrument was replaced before it was bought; its history is unknown in part, and counted from the purchase once", () => {
    const heron = car('heron');
    const bought = must(heron.car.keptSince, 'purchase');
    expect(heron.instruments).toHaveLength(1);
    expect(must(heron.instruments[0], 'instrument')).toMatchObject({ estimated: false, firstShown: 4000 });
    expect(must(heron.instruments[0], 'instrument').date < bought).toBe(true);
    expect(must(yard.lanes.find((lane) => lane.id === 'heron'), 'heron').instrumentReplacedOn).toBe(addMonths(sample.today, -89));
    for (const item of ['heron-gearbox-oil', 'heron-axle-oil']) expect(window(item)).toMatchObject({ state: 'unknown', likely: null });
    expect(window('heron-gas-hoses')).toMatchObject({ state: 'ahead', likely: addMonths(bought, 96) });
    expect(window('heron-gas-hoses').reason.code).toBe('reason-time-purchase');
    expect(window('heron-belt')).toMatchObject({ state: 'ahead', limb: 'time' });
  });

  test('only what is meant to be late is late', () => {
    const late = due.cars.flatMap((one) => one.windows).filter((one) => one.state === 'late').map((one) => one.item);
    expect(late.sort()).toEqual(['alder-fuel-filter', 'heron-leisure-battery', 'pip-brake-fluid']);
    expect(obligations().filter((one) => one.late)).toEqual([]);
  });

  test('obligations of every kind; some within thirty days', () => {
    const kinds = new Set(obligations().map((one) => one.kind));
    const soon = obligations().filter((one) => one.on <= addDays(sample.today, 30)).map((one) => one.id);
    expect([...kinds].sort()).toEqual(['insurance', 'other', 'printed-expiry', 'road-tax', 'roadworthiness-test', 'warranty-end']);
    expect(soon.sort()).toEqual(['alder-insurance', 'ember-tax']);
  });

  test('recalls open, booked, done and due again, each with its letter and the sheet of what was done', () => {
    const recalls = CARS.flatMap((id) => car(id).recalls);
    expect(recalls.map((one) => [one.recall.id, one.state, one.recall.papers.length])).toEqual([
      ['pip-recall-1140', 'done', 2], ['alder-recall-518', 'again', 2], ['ember-recall-2207', 'open', 1], ['heron-recall-31', 'booked', 1],
    ]);
    expect(due.cars.flatMap((one) => one.recalls.map(({ recall }) => recall.id)).sort()).toEqual(['alder-recall-518', 'ember-recall-2207', 'heron-recall-31']);
    expect(recalls.filter((one) => one.late)).toEqual([]);
    expect(car('pip').papers.map((paper) => paper.name).filter((name) => name.includes('recall P-1140'))).toHaveLength(2);
  });

  test('an insured distance likely passed, one that will be, one that will not; a warranty that ends by distance', () => {
    const [insured, warranty] = ['ember-insured', 'ember-drive-warranty'].map((id) => must(car('ember').allowances.find((one) => one.id === id), id));
    expect(insured).toMatchObject({ state: 'will-pass', unit: 'km', allowed: 12_000, from: addDays(addMonths(sample.today, -5), -9) });
    expect(must(insured, 'insured').passes.likely).not.toBeNull();
    expect(warranty).toMatchObject({ state: 'will-pass', estimated: false, to: addDays(addMonths(sample.today, 19), -10) });
    expect(must(warranty, 'warranty').ends.likely).toBe(must(warranty, 'warranty').passes.likely);
    expect(car('alder').allowances).toMatchObject([{ state: 'probably-passed', left: 0 }]);
    expect(car('wren').allowances).toMatchObject([{ state: 'within', passes: { likely: null }, arrangeFrom: null }]);
  });

  test('first tests are counted from first registration; things with a printed date are arranged in good time', () => {
    const firsts = sample.replies.filter(({ step }) => step.operation === 'first-test.add').map(({ reply }) => (reply as ReplyOf<'first-test.add'>).obligation);
    expect(firsts.map((one) => [one.car, one.lastValidDay]).sort()).toEqual([
      ['ember', addMonths(must(car('ember').car.firstRegistered, 'ember'), 36)],
      ['pip', addMonths(must(car('pip').car.firstRegistered, 'pip'), 36)],
    ]);
    const printed = obligations().filter((one) => one.kind === 'printed-expiry');
    expect(printed.map((one) => one.name).sort()).toEqual(['fire extinguisher', 'first-aid kit', 'first-aid kit', 'tyre sealant bottle']);
    for (const one of printed) expect(one.from).toBe(addDays(one.on, -30));
  });

  test('records entered at once, within a week, later and from memory; one amended', () => {
    const records = CARS.flatMap((id) => car(id).records);
    expect(new Set(records.map((one) => one.written))).toEqual(new Set(['same-day', 'within-a-week', 'later', 'reconstructed']));
    expect(records.filter((one) => one.amended).map((one) => one.record.id)).toEqual(['alder-oil-10']);
    expect(records.find((one) => one.amended)?.totalMinor).toBe(4420 + 2585);
  });

  test('observations stand open, with photographs, and two were closed by the record that settled them', () => {
    const seen = CARS.flatMap((id) => car(id).observations);
    expect(seen.filter((one) => one.closedBy !== null).map((one) => one.closedBy).sort()).toEqual(['alder-tyres-1', 'heron-window-seal']);
    expect(seen.find((one) => one.id === 'alder-front-pads')).toMatchObject({ severity: 'watch', closedBy: null, record: 'alder-oil-11' });
    expect(seen.find((one) => one.id === 'heron-rust')?.papers).toHaveLength(1);
  });

  test('the car shows the papers of its records, of what was seen and of its renewals, each once', () => {
    const names = car('alder').papers.map((paper) => paper.name.slice('2026-06-02 '.length));
    expect(names.filter((name) => name === 'tyre-tread, Alder.png')).toHaveLength(1);
    expect(names.filter((name) => name === 'brake-pad, Alder.png')).toHaveLength(2);
    expect(names.filter((name) => name === 'certificate, Alder.pdf')).toHaveLength(2);
    expect(names).toContain('receipt, Alder.pdf');
    expect(car('pip').papers.filter((paper) => / certificate, /.test(paper.name))).toHaveLength(2);
  });

  test('an earlier slip was set aside and then corrected: both values stand', () => {
    const readings = car('pip').readings.filter((reading) => reading.date === addDays(addMonths(sample.today, -20), 3));
    expect(readings.map((reading) => reading.standing).sort()).toEqual(['accepted', 'dismissed']);
  });

  test('every other reading was taken: nothing but the meant slips is set aside', () => {
    const aside = sample.replies.filter(({ reply }) => JSON.stringify(reply).includes('"set-aside"')).map(({ step }) => step.request);
    expect(aside.map((request) => (request as { car: string }).car)).toEqual(['pip', 'heron']);
  });

  test('every interval says that it is a sample figure', () => {
    const sources = CARS.flatMap((id) => car(id).items.filter(({ item }) => !isOnce(item.interval)).map(({ item }) => item.source));
    expect(sources.length).toBeGreaterThan(40);
    expect(new Set(sources)).toEqual(new Set(['sample figure']));
  });
});

test("without its sleep Wren's grease would be thought due in winter", async () => {
  const sample = await standingSample('2026-11-25');
  const awake = must(sample.ask('due.show', {}).cars.find((one) => one.id === 'wren')?.windows.find((one) => one.item === 'wren-grease'), 'grease');
  expect(sample.household.call('car.change', { id: 'wren', laidUpMonths: [] }, sample.today).ok).toBe(true);
  const blind = must(sample.ask('due.show', {}).cars.find((one) => one.id === 'wren')?.windows.find((one) => one.item === 'wren-grease'), 'grease');
  expect(WINTER).toContain(monthOf(must(blind.likely, 'likely')));
  expect(must(blind.likely, 'likely') < must(awake.likely, 'likely')).toBe(true);
});
