import { expect, test } from 'vitest';
import { cars } from '../../../shared-core/fleet/car.ts';
import type { Facts } from '../../../shared-core/journal/facts.ts';
import { rememberedFacts } from '../../../shared-core/journal/remembered-facts.ts';
import { parts } from '../../../shared-core/parts/part.ts';
import { partsHousehold } from '../parts/parts-household.ts';

test('answers what stands, and reads each family once', () => {
  const standing = partsHousehold().facts();
  const read: string[] = [];
  const counted: Facts = { get: (family, id) => { read.push(`one ${family.name}`); return standing.get(family, id); }, all: (family) => { read.push(family.name); return standing.all(family); }, ofCar: (family, car) => standing.ofCar(family, car), stamps: (family, car) => standing.stamps(family, car) };
  const facts = rememberedFacts(counted);
  for (const part of [...standing.all(parts)]) expect(facts.get(parts, part.id)).toEqual(part);
  expect([facts.get(parts, 'none'), facts.all(parts), facts.all(cars), facts.ofCar(parts, 'pip')]).toEqual([null, standing.all(parts), standing.all(cars), standing.ofCar(parts, 'pip')]);
  expect(read).toEqual(['part', 'car']);
});
