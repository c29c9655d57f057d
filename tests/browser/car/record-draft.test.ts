import { describe, expect, test } from 'vitest';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { composeRecord, type RecordDraft } from '../../../renderer/car/forms/record-draft.ts';
import { fromWorked, workedChoices, workedOf } from '../../../renderer/car/forms/worked.ts';

const CAR = { id: 'pip', unit: 'mi' } as CarView['car'];
const DRAFT: RecordDraft = {
  date: '2026-11-25', reading: '38 250', place: 'home', placeName: 'left over', doneBy: ' ', reference: '',
  lines: [{ item: 'oil', name: 'engine oil and filter', work: 'replace', outcome: 'done', note: '', recheckOn: '', minutes: '' }],
  approvedBy: '', vouched: '', method: '', lots: [], measured: [], settles: [],
  costs: [{ kind: 'parts', text: 'oil', amount: '32,50' }], printedTotal: '', files: [], note: '', reconstructed: false,
};

/** Source for all: worked by hand from the stated rule. */
describe('the form of a work record', () => {
  test('is read as the record it describes', () => {
    expect(composeRecord(DRAFT, CAR, 'GBP')).toMatchObject({
      ok: true,
      value: { car: 'pip', date: '2026-11-25', reading: { value: 38250, unit: 'mi' }, doneBy: null, placeName: null, costs: [{ kind: 'parts', text: 'oil', amountMinor: 3250 }], printedTotalMinor: null },
    });
  });

  test('names who vouches for it, what was taken off the shelf, measured and put right', () => {
    const sent = composeRecord({ ...DRAFT, approvedBy: 'A. Tester', vouched: 'stamp', method: 'page 4', lots: [{ lot: 'can', quantity: '4,5' }], measured: [{ what: 'pad', name: 'x', place: '', value: '5.5', unit: 'mm', fresh: true }], settles: ['leak'] }, CAR, 'GBP');
    expect(sent).toMatchObject({
      ok: true,
      value: { approvedBy: 'A. Tester', vouched: 'stamp', method: 'page 4', lotsUsed: [{ lot: 'can', quantity: 4.5 }], settles: ['leak'], measured: [{ what: 'pad', name: null, place: null, value: 5.5, unit: 'mm', fresh: true }] },
    });
    expect(composeRecord(DRAFT, CAR, 'GBP')).not.toHaveProperty('value.vouched');
  });

  test('a line to be watched has what was found and the day to look again; no other line has that day', () => {
    const line = { item: 'pads', name: 'brake pads', work: 'check', outcome: 'watch', note: '4 mm', recheckOn: '2027-01-10', minutes: '' } as const;
    const sent = (lines: RecordDraft['lines']) => composeRecord({ ...DRAFT, lines }, CAR, 'GBP');
    expect(sent([line])).toMatchObject({ ok: true, value: { lines: [{ ...line, minutes: null }] } });
    expect(sent([{ ...line, recheckOn: '' }, { ...line, outcome: 'acted' }])).toMatchObject({
      ok: true, value: { lines: [{ item: 'pads', name: 'brake pads', work: 'check', outcome: 'watch', note: '4 mm' }, { outcome: 'acted', note: '4 mm' }] },
    });
    expect(sent([{ ...line, outcome: 'acted' }])).not.toHaveProperty('value.lines.0.recheckOn');
    expect(sent([{ ...line, outcome: 'good' }])).toMatchObject({ ok: true, value: { lines: [{ note: '' }] } });
    expect(sent([DRAFT.lines[0] ?? line, { ...line, recheckOn: 'soon' }])).toMatchObject({ ok: false, refusal: { code: 'no-date', path: ['lines', '1', 'recheckOn'] } });
  });

  test('what was done to a line is one choice, and what was left keeps what it asks for', () => {
    expect(workedChoices('check').map((choice) => choice.value)).toEqual(['check good', 'check watch', 'check acted', 'replace done', 'not-done']);
    expect(workedChoices('replace')[0]?.value).toBe('replace done');
    for (const choice of workedChoices('check')) expect(workedOf(fromWorked(choice.value, 'check'))).toBe(choice.value);
    expect(fromWorked('not-done', 'replace')).toEqual({ work: 'replace', outcome: 'not-done' });
  });

  test.each([
    { case: 'no line', change: { lines: [] }, path: ['lines'], code: 'nothing-chosen' },
    { case: 'no amount', change: { costs: [{ kind: 'parts', text: 'oil', amount: 'ten' }] }, path: ['costs', '0', 'amountMinor'], code: 'not-an-amount' },
    { case: 'no date', change: { date: '31/2/2026' }, path: ['date'], code: 'no-date' },
    { case: 'no minutes that are whole', change: { lines: [{ ...DRAFT.lines[0], minutes: '1.5' }] }, path: ['lines', '0', 'minutes'], code: 'not-whole' },
    { case: 'nothing of a lot', change: { lots: [{ lot: 'can', quantity: '' }] }, path: ['lotsUsed', '0', 'quantity'], code: 'not-a-number' },
    { case: 'no value that is measured', change: { measured: [{ what: 'pad', name: '', place: 'front', value: 'thin', unit: 'mm', fresh: false }] }, path: ['measured', '0', 'value'], code: 'not-a-number' },
    { case: 'no reading that is a number', change: { reading: '38k' }, path: ['reading'], code: 'not-a-number' },
  ] as const)('is refused before it is sent: $case', ({ change, path, code }) => {
    expect(composeRecord({ ...DRAFT, ...change } as RecordDraft, CAR, 'GBP')).toMatchObject({ ok: false, refusal: { code, path } });
  });
});
