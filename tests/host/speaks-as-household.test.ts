import { afterEach, expect, test } from 'vitest';
import { sayDate } from '../../shared-core/result/words/say.ts';
import { speakAs, spokenLocale } from '../../shared-core/result/words/speaking.ts';
import { day, openTestHost } from './open-test-host.ts';

afterEach(() => speakAs(null));

const dutiesOf = async (host: ReturnType<typeof openTestHost>) => {
  const { cars } = await host.must('due.show', {});
  return cars.flatMap((car) => car.obligations.map((one) => one.name));
};

test('an answer, and what is said after it, is in the household’s locale; a change of it is heard at once, and undone', async () => {
  const host = openTestHost();
  await host.must('household.start', { currency: 'USD', unit: 'mi', locale: 'en-US' });
  expect(spokenLocale()).toBe('en-US');
  await host.must('car.add', { id: 'pip', name: 'Pip', power: 'petrol', unit: 'mi' });
  await host.must('obligation.add', { car: 'pip', kind: 'road-tax', lastValidDay: day('2027-02-28'), months: 12 });
  expect(await dutiesOf(host)).toEqual(['registration fee']);
  const { undo } = await host.must('household.change', { locale: 'en-GB' });
  expect(sayDate('2026-11-25')).toBe('25 Nov 2026');
  expect(await dutiesOf(host)).toEqual(['road tax']);
  await host.must('entry.withdraw', { entries: [...undo] });
  expect(sayDate('2026-11-25')).toBe('Nov 25, 2026');
});

test('of two households in turn, each is answered in its own', async () => {
  const [american, british] = [openTestHost(), openTestHost()];
  for (const [host, locale] of [[american, 'en-US'], [british, 'en-GB']] as const) {
    await host.must('household.start', { currency: 'USD', unit: 'mi', locale });
    await host.must('car.add', { id: 'pip', name: 'Pip', power: 'petrol', unit: 'mi' });
    await host.must('obligation.add', { car: 'pip', kind: 'road-tax', lastValidDay: day('2027-02-28'), months: 12 });
  }
  for (let times = 0; times < 2; times += 1) {
    expect(await dutiesOf(american)).toEqual(['registration fee']);
    expect(await dutiesOf(british)).toEqual(['road tax']);
  }
});

test('a household that is not started speaks British', async () => {
  speakAs('en-US');
  const host = openTestHost();
  await host.must('household.state', {});
  expect(spokenLocale()).toBe('en-GB');
});

test('what becomes the keeper’s own is in the household’s words, and its cautions do not hang on them', async () => {
  const host = openTestHost();
  await host.must('household.start', { currency: 'USD', unit: 'mi', locale: 'en-US' });
  await host.must('car.add', { id: 'pip', name: 'Pip', power: 'petrol', unit: 'mi' });
  const offered = (await host.must('starting-sets.show', { car: 'pip' })).sets.find((set) => set.key === 'petrol');
  expect(offered?.name).toBe('Gasoline car');
  const { items } = await host.must('items.start', { car: 'pip', set: 'petrol' });
  expect(items.map((item) => item.name)).toEqual(offered?.items.map((item) => item.name));
  const tires = items.find((item) => item.name === 'Tire tread, damage and age');
  const discs = items.find((item) => item.name === 'Brake pads and rotors');
  const suggested = async (id: string) => (await host.must('sheets.starting', { item: id })).suggested;
  const [inAmerican, ofBrakes] = [await suggested(tires?.id ?? ''), await suggested(discs?.id ?? '')];
  expect(inAmerican).not.toBeNull();
  expect(ofBrakes).not.toBeNull();
  // The household turns British: names it has stay, and lead to the same sheets.
  await host.must('household.change', { locale: 'en-GB' });
  expect([await suggested(tires?.id ?? ''), await suggested(discs?.id ?? '')]).toEqual([inAmerican, ofBrakes]);
});
