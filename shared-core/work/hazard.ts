import { z } from 'zod';
import { refusedBy } from '../result/refused-by.ts';

/** What can hurt in a piece of work, the gravest first: the order in which cautions are read. */
export const hazardSchema = z.enum(
  [
    'high-voltage', 'airbag', 'lifting', 'gas', 'fuel', 'fuel-pressure', 'brakes', 'old-linings', 'refrigerant', 'springs', 'running-engine', 'hot', 'battery', 'ignition',
    'brake-fluid', 'coolant', 'used-oil', 'timing', 'heavy', 'sealant',
  ],
  refusedBy('unknown-hazard'),
);
export type Hazard = z.infer<typeof hazardSchema>;

/** Who should do it: a person whom the law or a trade body licenses; one who has learned it; anyone. */
export type WhoMay = 'licensed' | 'skilled' | 'anyone';

/**
 * Work that is not for everyone. What must be licensed differs by country: the sentences say so and name the person.
 *
 * Source: from memory, none seen: European rules on certified persons for refrigerants in cars (directive 2006/40/EC with
 * regulation (EU) 2024/573), national training rules for high-voltage cars and for pyrotechnic restraints, gas fitters' registers.
 */
const NOT_FOR_EVERYONE: Partial<Readonly<Record<Hazard, WhoMay>>> = {
  'high-voltage': 'licensed', airbag: 'licensed', gas: 'licensed', refrigerant: 'licensed', brakes: 'skilled', 'old-linings': 'skilled', 'fuel-pressure': 'skilled', timing: 'skilled',
};

/** Who should do work with a hazard. @example whoMay('refrigerant') //=> 'licensed' */
export function whoMay(hazard: Hazard): WhoMay {
  return NOT_FOR_EVERYONE[hazard] ?? 'anyone';
}

/** Hazards once each, the gravest first. @example inOrder(['used-oil', 'lifting', 'used-oil']) //=> ['lifting', 'used-oil'] */
export function inOrder(hazards: Iterable<Hazard>): readonly Hazard[] {
  const wanted = new Set(hazards);
  return hazardSchema.options.filter((one) => wanted.has(one));
}
