import { describe, expect, test } from 'vitest';
import { composeService, lineOf, serviceDraft, withAllItems, type Service } from '../../../renderer/car/services/service-draft.ts';
import type { CarView } from '../../../shared-core/views/car-view.ts';

type Item = CarView['items'][number]['item'];
const OIL = { id: 'oil', name: 'engine oil', work: 'replace' } as Item;
const PADS = { id: 'pads', name: 'brake pads', work: 'check' } as Item;
const HINGES = { item: null, name: 'hinges greased', work: 'check' } as const;
const FOUR = { id: 'four', car: 'pip', name: 'The four-year service', from: '2026-11-01', to: null, lines: [lineOf(OIL), HINGES] } as unknown as Service;

/** Source for all: worked by hand from the stated rule. */
describe('the form of a service', () => {
  test('opens from today for a new one, and as it stands for a known one', () => {
    expect(serviceDraft(null, '2026-11-25')).toEqual({ name: '', from: '2026-11-25', to: '', lines: [] });
    expect(serviceDraft(FOUR, '2026-11-25')).toEqual({ name: 'The four-year service', from: '2026-11-01', to: '', lines: FOUR.lines });
  });

  test('is read as the service it describes; an empty line of one’s own is none', () => {
    const draft = { ...serviceDraft(FOUR, '2026-11-25'), to: '2026-12-31', lines: [...FOUR.lines, { item: null, name: ' ', work: 'check' } as const] };
    expect(composeService(draft, 'pip', FOUR)).toEqual({ ok: true, value: { id: 'four', car: 'pip', name: 'The four-year service', from: '2026-11-01', to: '2026-12-31', lines: FOUR.lines } });
    expect(composeService(draft, 'pip', null)).not.toHaveProperty('value.id');
  });

  test.each([
    { case: 'no line', change: { lines: [{ item: null, name: '', work: 'check' }] }, path: ['lines'], code: 'nothing-chosen' },
    { case: 'no day to begin', change: { from: '' }, path: ['from'], code: 'no-date' },
    { case: 'no day to end', change: { to: 'soon' }, path: ['to'], code: 'no-date' },
  ] as const)('is refused before it is sent: $case', ({ change, path, code }) => {
    expect(composeService({ ...serviceDraft(FOUR, '2026-11-25'), ...change }, 'pip', FOUR)).toMatchObject({ ok: false, refusal: { code, path } });
  });

  test('all items are ticked at once, each once, and what stands keeps its place', () => {
    expect(withAllItems(FOUR.lines, [PADS, OIL])).toEqual([lineOf(OIL), HINGES, lineOf(PADS)]);
  });
});
