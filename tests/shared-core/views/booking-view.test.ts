import { beforeAll, describe, expect, test } from 'vitest';
import { must } from '../../../shared-core/result/assert.ts';
import { standingSample, type StandingSample } from '../sample/sample-household.ts';
import { ASKED, withAsked, withVisit } from '../work/booking-examples.ts';

const day = (text: string) => text as never;

describe('what is proposed to be asked', () => {
  test('the session\'s tasks in plain words, a sheet for each car, asked by the day that the garage\'s notice leaves', () => {
    const view = withVisit().must('booking.show', { session: 'visit' });
    // By hand: 16 December less 10 days.
    expect([view.state, view.askBy, view.said.text]).toEqual(['not-asked', { day: '2026-12-06', noticeDays: 10, past: false }, 'not asked yet, ask by 6 Dec 2026']);
    expect(view.cars.map((car) => [car.carName, car.wanted.map((one) => one.text)])).toEqual([['Moss', ['Timing belt']], ['Pip', ['Brake fluid', 'Brake pads and discs']]]);
    const pip = must(view.cars[1], 'Pip');
    expect(pip.offersUnwanted.map((one) => [one.text, one.why.text])).toEqual(expect.arrayContaining([['Wiper blades', 'done at home'], ['Engine oil and filter', 'done at home']]));
    expect(pip.offersUnwanted.map((one) => one.text)).not.toContain('Brake fluid');
    expect(pip.text).toContain('Registration: AB 12');
  });

  test('after that day it is to be asked now', () => {
    const household = withVisit();
    expect(household.on('2026-12-06').must('booking.show', { session: 'visit' }).askBy?.past).toBe(false);
    const late = household.on('2026-12-07').must('booking.show', { session: 'visit' });
    expect([late.askBy?.past, late.said.text]).toEqual([true, 'not asked yet, ask now: the garage wants to know by 6 Dec 2026']);
  });

  test('the sessions say the same of each garage session, and nothing of those at home', () => {
    const household = withVisit();
    household.must('session.keep', { sessions: [{ id: 'drive', day: day('2026-12-01'), place: 'home', tasks: [{ kind: 'item', id: 'oil' }] }] });
    const by = () => Object.fromEntries(household.must('sessions.show', {}).sessions.map((one) => [one.id, one.booking]));
    expect(by()).toMatchObject({ drive: null, visit: { state: 'not-asked', askBy: '2026-12-06', askByPast: false, said: { text: 'not asked yet, ask by 6 Dec 2026' } } });
    household.must('booking.ask', ASKED);
    expect(by()).toMatchObject({ drive: null, visit: { state: 'asked', askBy: null, said: { text: 'asked on 25 Nov 2026, no answer yet' } } });
  });

  test('of the parts what the shelf holds beside what work at home takes, and what is on the way; none is brought unless it is chosen', () => {
    const household = withVisit();
    household.must('specification.set', { id: 'dot', name: 'brake fluid, as asked', unit: 'litre' });
    household.must('part.set', { id: 'can', name: 'Fern brake fluid', meets: ['dot'] });
    household.must('lot.set', { id: 'lot', part: 'can', quantity: 1, receivedOn: day('2026-11-01'), where: 'cellar' });
    household.must('item.change', { id: 'fluid', needs: [{ specification: 'dot', quantity: 0.75 }] });
    const pip = () => must(household.must('booking.show', { session: 'visit' }).cars.find((one) => one.car === 'pip'), 'Pip');
    expect(pip().offersBring).toMatchObject([{ lot: 'lot', part: 'can', text: 'Fern brake fluid', quantity: 0.75, unit: 'litre', why: { text: 'on the shelf, cellar' } }]);
    expect(pip().bring).toEqual([]);
    // Another session at home takes half a litre first: 1 - 0.5 = 0.5 is left.
    household.must('item.change', { id: 'oil', needs: [{ specification: 'dot', quantity: 0.5 }] });
    household.must('session.keep', { sessions: [{ id: 'drive', day: day('2026-12-01'), place: 'home', tasks: [{ kind: 'item', id: 'oil' }] }] });
    expect(pip().offersBring).toMatchObject([{ lot: 'lot', quantity: 0.5 }]);
  });

  test('of the data card what the work asks for, with its source and no torque; what is not entered is named on the screen and not on the sheet', () => {
    const household = withVisit();
    household.must('card.set', { car: 'pip', key: 'brake-fluid-specification', value: 'grade 4', source: 'handbook, page 9' });
    const pip = must(household.must('booking.show', { session: 'visit' }).cars.find((one) => one.car === 'pip'), 'Pip');
    expect(pip.figures.map((one) => [one.figure, one.entered])).toEqual(expect.arrayContaining([['brake-fluid-specification', true], ['brake-fluid-quantity', false]]));
    expect(pip.figures.map((one) => one.figure)).not.toContain('wheel-torque');
    expect(pip.text).toContain('- Brake fluid specification: grade 4 (handbook, page 9)');
    expect(pip.text).not.toContain('Brake fluid for a change');
  });
});

test('the text of a request has what is wanted, what is not, what we bring, and nothing that nobody said', () => {
  const household = withVisit();
  household.must('booking.ask', { ...ASKED, bring: [{ car: 'pip', text: 'pads', quantity: 1, unit: 'set' }], note: 'Key in the box.', contact: 'after four' });
  const pip = must(household.must('booking.show', { session: 'visit' }).cars.find((one) => one.car === 'pip'), 'Pip');
  expect([pip.subject, pip.text]).toEqual(['Request for 16 Dec 2026: AB 12', `Request to the corner garage
Day wanted: 16 Dec 2026
Car: Pip, small hatch
Registration: AB 12

Please do:
- brake fluid
- pads looked at

Please do not do:
- no flush

Parts we bring:
- pads, 1 set

Please enter the work in the car’s digital service record.
Please name a price before the work, line by line, and ask us before you do anything else.

Note: Key in the box.

Please answer to: after four`]);
});

describe('what came back', () => {
  test('is told line by line, and a difference only for the same work', () => {
    const household = withAsked();
    household.must('booking.quote', { session: 'visit', quote: { on: day('2026-11-25'), lines: [{ text: 'brakes', covers: ['wanted-1', 'wanted-2'], amountMinor: 12000 }, { text: 'belt', covers: ['wanted-3'], amountMinor: 40000 }] } });
    household.must('booking.book', { session: 'visit', day: day('2026-12-16'), quote: 'quote-1' });
    household.on('2026-12-17').must('booking.came-back', {
      session: 'visit', doneOn: day('2026-12-16'),
      lines: [{ wanted: 'wanted-1', as: 'done', chargedMinor: 7000 }, { wanted: 'wanted-2', as: 'not-done' }, { wanted: 'wanted-3', as: 'done', chargedMinor: 43000 }, { unwanted: 'unwanted-1', as: 'not-wanted-done', chargedMinor: 2500 }, { as: 'done-unasked', text: 'wash', chargedMinor: 900 }],
    });
    const view = household.must('booking.show', { session: 'visit' });
    const outcome = must(view.outcome, 'outcome');
    expect([outcome.done.length, outcome.notDone.map((one) => one.text), outcome.against.map((one) => one.text), outcome.unasked.map((one) => one.text), outcome.unsaid]).toEqual([2, ['pads looked at'], ['no flush'], ['wash'], []]);
    // By hand: 70 + 430 + 25 + 9 = 534 charged, 120 + 400 = 520 quoted; only the belt is the same on both sides: 430 - 400 = 30 more.
    expect(outcome.summary.map((one) => one.text)).toEqual([
      '1 line that was asked for was not done.', '1 thing was done though it was not wanted.', '1 thing was done unasked.',
      '534.00 GBP was charged and 520.00 GBP was quoted, but not for the same work: the difference says nothing.',
      'Where they are for the same lines, 430.00 GBP was charged for 400.00 GBP quoted: 30.00 GBP more.',
    ]);
    expect(outcome.groups.map((one) => [one.covers, one.quotedMinor, one.chargedMinor, one.why?.code ?? null])).toEqual([[['brake fluid', 'pads looked at'], 12000, 7000, 'outcome-why-not-done'], [['timing belt'], 40000, 43000, null]]);
    // Done by the garage, and in no record.
    expect(view.notes.map((one) => [one.code, one.values['text']])).toEqual([['booking-note-left-undone', 'pads looked at'], ['booking-note-not-recorded', 'brake fluid'], ['booking-note-not-recorded', 'timing belt']]);
    household.must('record.add', { car: 'moss', date: day('2026-12-16'), lines: [{ item: 'belt' }] } as never);
    expect(household.must('booking.show', { session: 'visit' }).notes.map((one) => one.values['text'])).toEqual(['pads looked at', 'brake fluid']);
  });

  test('the same work for less is less, and as asked is as asked', () => {
    const household = withAsked();
    household.must('booking.quote', { session: 'visit', quote: { on: day('2026-11-25'), lines: [{ text: 'all', covers: ['wanted-1', 'wanted-2', 'wanted-3'] }], totalMinor: 52000 } });
    const said = (chargedMinor: number) => {
      household.must('booking.came-back', { session: 'visit', doneOn: day('2026-11-25'), chargedMinor, lines: ['wanted-1', 'wanted-2', 'wanted-3'].map((wanted) => ({ wanted, as: 'done' as const })) });
      return must(household.must('booking.show', { session: 'visit' }).outcome, 'outcome').summary.map((one) => one.text);
    };
    expect(said(50000)).toEqual(['All that was asked was done, and nothing else.', '500.00 GBP was charged, 20.00 GBP less than the 520.00 GBP quoted for the same work.']);
    expect(said(52000)[1]).toBe('520.00 GBP was charged, just as it was quoted.');
  });

  test('a quote says when it is over, what it leaves out, and that its lines make another sum', () => {
    const household = withAsked();
    household.must('booking.quote', { session: 'visit', quote: { on: day('2026-11-25'), validUntil: day('2026-12-01'), totalMinor: 9000, lines: [{ text: 'a', covers: ['wanted-1'], amountMinor: 8000 }] } });
    const [quote] = household.on('2026-12-02').must('booking.show', { session: 'visit' }).quotes;
    expect(quote?.notes.map((one) => one.text)).toEqual(['The lines add up to 80.00 GBP, the quote says 90.00 GBP. The sum as it was named counts.', 'It was valid until 1 Dec 2026.', 'No price covers: pads looked at; timing belt.']);
    expect(quote).toMatchObject({ byName: 'the corner garage', sumMinor: 9000, over: true });
  });
});

describe('in the sample', () => {
  let sample: StandingSample;
  beforeAll(async () => {
    sample = await standingSample('2026-11-25');
  });

  test('a garage has left one line undone and done another unasked: less than quoted is called no saving', () => {
    const { outcome, state } = sample.ask('booking.show', { session: 'pip-brakes' });
    expect([state, outcome?.notDone.length, outcome?.unasked.length]).toEqual(['done', 1, 1]);
    expect(outcome?.summary.map((one) => one.text).at(-1)).toBe('32.40 GBP was charged and 48.00 GBP was quoted, but not for the same work: the difference says nothing.');
    expect(outcome?.groups[0]?.why?.text).toBe('The price also covers what was not done: no difference.');
  });

  test('a visit is booked by one of two quotes', () => {
    const view = sample.ask('booking.show', { session: 'heron-winter' });
    expect([view.state, view.said.text, view.quotes.map((one) => [one.byName, one.sumMinor, one.booked])]).toEqual(['booked', 'booked for 09:00', [['the van workshop on the hill', 18700, true], ['the camper yard by the harbour', null, false]]]);
  });
});
