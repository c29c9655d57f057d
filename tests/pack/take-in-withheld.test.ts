import { expect, test } from 'vitest';
import { must } from '../../shared-core/result/assert.ts';
import { day } from '../host/open-test-host.ts';
import { handedOver, keeper, nextKeeper, readPack } from './keepers.ts';

/** A car with its number and a record that says who did it and who vouches for it; none of that is shown. */
async function withheld(fields: readonly ('doneBy' | 'placeName' | 'approvedBy' | 'reference' | 'vin' | 'costs' | 'text' | 'note')[]): Promise<string> {
  const host = await keeper('2026-03-02');
  await host.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: day('2020-11-25'), keptSince: day('2020-11-25'), vin: '1M8GDM9AXKP042788' });
  await host.must('record.add', { car: 'pip', date: day('2026-03-01'), place: 'garage', placeName: 'SECRETPLACE', title: 'First', doneBy: 'SECRETPERSON', approvedBy: 'SECRETSTAMP', lines: [{ name: 'oil' }], costs: [{ kind: 'labour', text: 'work', amountMinor: 4200 }] });
  await host.must('observation.note', { car: 'pip', text: 'SECRETFIND' });
  return handedOver(host, { withhold: [...fields] });
}

const FIELDS = ['doneBy', 'placeName', 'approvedBy', 'reference', 'vin', 'costs', 'text'] as const;

test('what an earlier keeper withheld is told as withheld, on the car’s page and on the record’s', async () => {
  const { host, car } = await nextKeeper(await withheld(FIELDS), '2026-06-01');
  const view = await host.must('car.show', { car });
  const record = must(view.records[0], 'record');
  expect(record.earlier?.withheld).toEqual(['approvedBy', 'costs', 'doneBy', 'placeName', 'reference']);
  expect(view.earlier.find((one) => one.id === car)?.withheld).toEqual(['vin']);
  expect(view.earlier.find((one) => one.id === view.observations[0]?.id)?.withheld).toEqual(['text']);
  const page = await host.must('record.show', { record: record.record.id });
  expect(page.elements).toMatchObject([{ element: 'what', held: true, withheld: false }, { element: 'when', held: true, withheld: false }, { element: 'who', held: false, withheld: true }, { element: 'approved', held: false, withheld: true }]);
});

test('and in the next pack, never as missing or not entered; a third keeper is told the same', async () => {
  const second = await nextKeeper(await withheld(FIELDS), '2026-06-01');
  const path = await handedOver(second.host);
  for (const { said } of [readPack(path), readPack(await handedOver((await nextKeeper(path, '2026-09-01')).host))]) {
    expect(said).toContain('["Vehicle identification number","withheld by the earlier keeper"]');
    expect(said).toContain('2 of 4; withheld by the earlier keeper: who did it, who approved it');
    expect(said).toContain('["Withheld by the earlier keeper","who approved it, cost lines, who did the work, names of garages, references"]');
    expect(said).not.toContain('missing: who');
  }
});

test('what nobody withheld and nobody entered is still missing', async () => {
  const host = await keeper('2026-03-02');
  await host.must('car.add', { id: 'pip', name: 'Pip' });
  await host.must('record.add', { car: 'pip', date: day('2026-03-01'), place: 'home', title: 'First', lines: [{ name: 'oil' }] });
  const next = await nextKeeper(await handedOver(host, { withhold: ['costs'] }), '2026-06-01');
  const { said } = readPack(await handedOver(next.host));
  expect(said).toContain('missing: who did it, who approved it');
  expect(said).toContain('["Vehicle identification number","not entered"]');
});
