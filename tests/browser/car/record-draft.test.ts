import { describe, expect, test } from 'vitest';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { composeRecord, type RecordDraft } from '../../../renderer/car/forms/record-draft.ts';
import { fromWorked, workedChoices, workedOf } from '../../../renderer/car/forms/worked.ts';

const CAR = { id: 'pip', unit: 'mi' } as CarView['car'];
const DRAFT: RecordDraft = {
  date: '2026-11-25', reading: '38 250', place: 'home', placeName: 'left over', doneBy: ' ', reference: '',
  lines: [{ item: 'oil', name: 'engine oil and filter', work: 'replace', outcome: 'done', note: '', recheckOn: '' }],
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

  test('a line to be watched has what was found and the day to look again; no other line has that day', () => {
    const line = { item: 'pads', name: 'brake pads', work: 'check', outcome: 'watch', note: '4 mm', recheckOn: '2027-01-10' } as const;
    const sent = (lines: RecordDraft['lines']) => composeRecord({ ...DRAFT, lines }, CAR, 'GBP');
    expect(sent([line])).toMatchObject({ ok: true, value: { lines: [line] } });
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
    { case: 'no reading that is a number', change: { reading: '38k' }, path: ['reading'], code: 'not-a-number' },
  ] as const)('is refused before it is sent: $case', ({ change, path, code }) => {
    expect(composeRecord({ ...DRAFT, ...change } as RecordDraft, CAR, 'GBP')).toMatchObject({ ok: false, refusal: { code, path } });
  });
});
