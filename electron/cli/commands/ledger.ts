import { amountText } from '../../../shared-core/units/money.ts';
import { say, sayNumber } from '../../../shared-core/result/words/say.ts';
import type { LedgerLine, LedgerView } from '../../../shared-core/views/ledger-view-schema.ts';
import { done, refused, wrongUse, type Command } from '../command.ts';

/** What was paid, where it went, and what keeping each car costs; or the lines behind the sums. */
export const ledgerCommand: Command = {
  name: 'ledger',
  does: 'what was paid, for which car, by year, and what keeping each costs',
  usage: ['ledger', 'ledger --lines [--csv] [--car CAR] [--year YEAR]', '', '--lines: what is behind the sums, the latest first; --csv: the same as a table (CSV).'],
  options: { lines: { type: 'boolean' }, csv: { type: 'boolean' }, car: { type: 'string' }, year: { type: 'string' } },
  looks: true,
  run: async (input) => {
    if (input.words.length > 0) return wrongUse('ledger takes no further words.');
    const { lines, csv, car, year } = input.options;
    if (typeof year === 'string' && !/^\d{4}$/.test(year)) return wrongUse('--year takes a year of four digits.');
    if (lines !== true && (csv === true || car !== undefined || year !== undefined)) return wrongUse('--csv, --car and --year go with --lines.');
    const host = await input.host();
    if (lines === true) {
      const reply = await host.call('ledger.lines', { car: typeof car === 'string' ? car : null, year: typeof year === 'string' ? Number(year) : null });
      if (!reply.ok) return refused(reply.refusal);
      const { currency } = reply.value;
      return done(reply.value, csv === true ? reply.value.csv.replace(/\r\n$/, '') : linesText(reply.value.lines, currency, reply.value.totalMinor));
    }
    const reply = await host.call('ledger.show', {});
    return reply.ok ? done(reply.value, ledgerText(reply.value)) : refused(reply.refusal);
  },
};

function linesText(lines: readonly LedgerLine[], currency: string, totalMinor: number): string {
  const row = (one: LedgerLine) => `  ${one.on}  ${amountText(one.minor, currency).padStart(12)}  ${kindWord(one.kind).padEnd(20)}  ${one.carName ?? one.wishName ?? say({ key: 'ledger-no-car', values: {} })}: ${one.text}`;
  return [...lines.map(row), `  in all      ${amountText(totalMinor, currency).padStart(12)} ${currency}`].join('\n');
}

function ledgerText(view: LedgerView): string {
  const money = (minor: number) => `${amountText(minor, view.currency)} ${view.currency}`;
  const { paidMinor, carsMinor, shelfMinor, wishesMinor } = view.paid;
  return [
    `Paid in all: ${money(paidMinor)}. For cars ${money(carsMinor)}, on the shelf and not used by a car ${money(shelfMinor)}, for wishes ${money(wishesMinor)}.`,
    ...view.cars.flatMap((car) => [
      '',
      `${car.name}: ${money(car.totalMinor)}${car.fuelMinor === 0 ? '' : `, and ${money(car.fuelMinor)} for fuel or charging`}${car.keepAYear === null ? '' : `; a whole year costs about ${money(car.keepAYear.minor)} (middle of ${car.keepAYear.years})`}`,
      ...car.years.map((year) => `  ${year.year}${year.whole ? ' ' : '*'} ${amountText(year.totalMinor, view.currency).padStart(12)}${year.distance === null ? '' : `  ${sayNumber(year.distance.value).padStart(7)} ${car.unit}${year.distance.estimated ? ' about' : ''}`}${year.perThousandMinor === null ? '' : `  ${money(year.perThousandMinor)} a thousand`}`),
    ]),
    ...(view.cars.some((car) => car.years.some((year) => !year.whole)) ? ['', '* not a whole year'] : []),
    ...(view.notes.length === 0 ? [] : ['', ...view.notes.map((note) => note.text)]),
  ].join('\n');
}

function kindWord(kind: LedgerLine['kind']): string {
  return say({ key: `cost-kind-${kind}`, values: {} });
}
