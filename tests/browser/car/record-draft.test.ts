import { describe, expect, test } from 'vitest';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { composeRecord, type RecordDraft } from '../../../renderer/car/forms/record-draft.ts';

const CAR = { id: 'pip', unit: 'mi' } as CarView['car'];
const DRAFT: RecordDraft = {
  date: '2026-11-25', reading: '38 250', place: 'home', placeName: 'left over', doneBy: ' ', reference: '',
  lines: [{ item: 'oil', name: 'engine oil and filter', work: 'replace', outcome: 'done' }],
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

  test.each([
    { case: 'no line', change: { lines: [] }, path: ['lines'], code: 'nothing-chosen' },
    { case: 'no amount', change: { costs: [{ kind: 'parts', text: 'oil', amount: 'ten' }] }, path: ['costs', '0', 'amountMinor'], code: 'not-an-amount' },
    { case: 'no date', change: { date: '31/2/2026' }, path: ['date'], code: 'no-date' },
    { case: 'no reading that is a number', change: { reading: '38k' }, path: ['reading'], code: 'not-a-number' },
  ] as const)('is refused before it is sent: $case', ({ change, path, code }) => {
    expect(composeRecord({ ...DRAFT, ...change } as RecordDraft, CAR, 'GBP')).toMatchObject({ ok: false, refusal: { code, path } });
  });
});
