import { localDate } from '../../shared-core/calendar/local-date.ts';
import { indexThings } from '../../shared-core/views/search-index.ts';
import { amountField, dayField, textField, type SearchThing } from '../../shared-core/views/search-thing.ts';
import { searchRequestSchema, searchView } from '../../shared-core/views/search-view.ts';

/**
 * How long a search takes in a household of 15 cars and 20 years: `npm run bench`. Prints milliseconds, and parts of a plain scan of the same
 * texts with `String.includes`, once for each word; it judges nothing.
 */
const TIMES = 20;
const WORDS = ['brake', 'fluid', 'oil', 'filter', 'coolant', 'front', 'rear', 'bearing', 'gasket', 'belt', 'pump', 'seal', 'torque', 'washer', 'thermostat', 'hose', 'clip', 'plug', 'lamp', '5W-30'];

let state = 7;
const random = (below: number) => (state = (Math.imul(state, 1_103_515_245) + 12_345) & 0x7fffffff) % below;
const words = (count: number) => Array.from({ length: count }, () => WORDS[random(WORDS.length)] ?? '').join(' ');
const dateOf = (n: number) => {
  const date = localDate(`${2006 + (n % 20)}-${String(1 + (n % 12)).padStart(2, '0')}-${String(1 + (n % 28)).padStart(2, '0')}`);
  if (!date.ok) throw new Error('not a date');
  return date.value;
};

/** Six records a year for each car with four lines, a receipt of 1 500 letters for each, and the parts. */
function household(): readonly SearchThing[] {
  const things: SearchThing[] = [];
  for (let n = 0; n < 15 * 20 * 6; n += 1) {
    const car = `car-${n % 15}`;
    things.push({ kind: 'record', id: `record-${n}`, name: words(3), car, date: dateOf(n), href: '/', fields: [...textField('title', 'name', words(3)), ...textField('line', 'detail', words(3), words(3), words(3), words(3)), ...textField('note', 'note', words(20)), ...textField('reference', 'number', `RX ${n}`), ...dayField('day', dateOf(n)), ...amountField('amount', random(50_000), random(50_000))] });
    things.push({ kind: 'paper', id: `paper-${n}`, name: `receipt ${n}.pdf`, car, date: dateOf(n), href: '/', fields: [...textField('name', 'name', `receipt ${n}.pdf`), ...textField('read-from-it', 'note', words(220)), ...dayField('day', dateOf(n))] });
  }
  for (let n = 0; n < 2000; n += 1) things.push({ kind: 'offer', id: `offer-${n}`, name: words(2), car: null, date: dateOf(n), href: '/', fields: [...textField('name', 'name', words(2)), ...textField('number', 'number', `OV ${n}`), ...amountField('price', random(9000))] });
  return things;
}

const things = household();
const texts = things.flatMap((thing) => thing.fields.map((field) => field.text.toLowerCase()));
const made = timeOf(1, () => indexThings(things, { currency: 'GBP', order: 'day-first' }, []));
const index = indexThings(things, { currency: 'GBP', order: 'day-first' }, []);
console.log(`${things.length} things, ${(texts.join('').length / 1e6).toFixed(1)} million letters; made ready once in ${made.toFixed(0)} ms`);
for (const query of ['brake', 'brake fluid', '5w-30', '5w30 gasket', 'brkae', '12 Nov 2018', '123.45', 'nothing of it', 'b']) {
  const count = query.split(' ').length;
  const scan = timeOf(TIMES, () => Array.from({ length: count }, () => texts.filter((text) => text.includes(query.toLowerCase())).length));
  const search = timeOf(TIMES, () => searchView(index, searchRequestSchema.parse({ query })));
  console.log(`${query.padEnd(14)} ${search.toFixed(1).padStart(7)} ms, ${(search / scan).toFixed(1).padStart(6)} times the scan of ${scan.toFixed(2)} ms`);
}

/** The middle of so many runs, in milliseconds. */
function timeOf(times: number, run: () => unknown): number {
  const taken = Array.from({ length: times }, () => {
    const started = performance.now();
    run();
    return performance.now() - started;
  });
  return taken.sort((a, b) => a - b)[Math.floor(times / 2)] ?? 0;
}
