import { expect, test } from 'vitest';
import { nearNames } from '../../../shared-core/care/near-names.ts';

/** Source for all: worked by hand from the stated rule. */
test.each([
  { case: 'the words of the shorter all stand in the longer', offered: 'Engine air filter', there: 'air filter', near: true },
  { case: 'the other way round', offered: 'Brake fluid', there: 'brake fluid, all of it', near: true },
  { case: 'in another order, with another mark', offered: 'Oil & filter', there: 'filter and oil', near: true },
  { case: 'a plural, a letter with a mark', offered: 'Drive belts, rear', there: 'dríve belt', near: true },
  { case: 'the same single word', offered: 'Coolants', there: 'coolant', near: true },
  { case: 'one word in common says little', offered: 'Tyre pressures', there: 'tyres', near: false },
  { case: 'a word that the longer has not', offered: 'Engine air filter', there: 'cabin air filter', near: false },
  { case: 'nothing in common', offered: 'Coolant', there: 'brake fluid', near: false },
  { case: 'no words at all', offered: 'Coolant', there: '---', near: false },
])('a name is near or not: $case', ({ offered, there, near }) => {
  expect([...nearNames([offered], ['horn', there])]).toEqual(near ? [[offered, there]] : []);
});
