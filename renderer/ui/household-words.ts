import { amountText, minorDigits } from '../../shared-core/units/money.ts';
import { sayNumber } from '../../shared-core/result/words/say.ts';
import { partsWriter } from '../../shared-core/result/words/write-date.ts';
import { nameOrder, type NameOrder } from './name-order.ts';
import { tell } from './words/tell.ts';

/** How dates, amounts and distances are written in one household: by its locale and its currency. */
export interface HouseholdWords {
  readonly locale: string;
  readonly currency: string;
  /** '25 Nov 2026' */
  date(date: string): string;
  /** '25 Nov', with the year where it is not that of `today`. */
  nearDate(date: string, today: string): string;
  /** 'Wednesday, 25 November 2026' */
  longDate(date: string): string;
  /** 'Wed' */
  weekday(date: string): string;
  /** 'Nov 2026' */
  month(date: string): string;
  /** 'Nov' */
  monthName(date: string): string;
  /** '£12.50' from minor units. */
  money(minor: number): string;
  /** '£12' for whole pounds, beside a line of a chart. */
  roundMoney(minor: number): string;
  /** An amount of an earlier keeper: in that one's currency by its code, or in smallest units where nobody said in which. */
  moneyOf(minor: number, earlier: { readonly currency: string | null } | null): string;
  /** '38 250 mi' */
  distance(value: number, unit: 'km' | 'mi'): string;
  /** Puts names in order: '2 seals' before '10 seals'. */
  readonly byName: NameOrder;
}

/**
 * The ways of writing of a household. Dates are calendar dates: no time zone moves them.
 *
 * @example householdWords('en-GB', 'GBP').date('2026-09-05') //=> '5 Sep 2026'
 * @example householdWords('en-GB', 'GBP').money(123456) //=> '£1,234.56'
 */
export function householdWords(locale: string, currency: string): HouseholdWords {
  const format = dateFormats(locale);
  const digits = minorDigits(currency) ?? 2;
  const options = { style: 'currency', currency, currencyDisplay: 'narrowSymbol', minimumFractionDigits: digits, maximumFractionDigits: digits } as const;
  const [money, round] = [new Intl.NumberFormat(locale, options), new Intl.NumberFormat(locale, { ...options, trailingZeroDisplay: 'stripIfInteger' })];
  return {
    locale,
    currency,
    ...format,
    nearDate: (date, today) => (date.slice(0, 4) === today.slice(0, 4) ? format.dayMonth(date) : format.date(date)),
    // An amount goes in as decimal text: exact, whatever its size.
    money: (minor) => money.format(amountText(minor, currency) as unknown as number),
    roundMoney: (minor) => round.format(amountText(minor, currency) as unknown as number),
    moneyOf: (minor, earlier) => {
      if (earlier === null || earlier.currency === currency) return money.format(amountText(minor, currency) as unknown as number);
      return earlier.currency === null ? tell('earlier.no-currency', { n: minor }) : `${earlier.currency} ${amountText(minor, earlier.currency)}`;
    },
    distance: (value, unit) => `${sayNumber(value)} ${tell(`unit.${unit}`)}`,
    byName: nameOrder(locale),
  };
}

function dateFormats(locale: string) {
  return {
    date: partsWriter(locale, { day: 'numeric', month: 'short', year: 'numeric' }),
    dayMonth: partsWriter(locale, { day: 'numeric', month: 'short' }),
    longDate: partsWriter(locale, { weekday: 'long', day: 'numeric', month: 'long', year: 'numeric' }),
    weekday: partsWriter(locale, { weekday: 'short' }),
    month: partsWriter(locale, { month: 'short', year: 'numeric' }),
    monthName: partsWriter(locale, { month: 'short' }),
  };
}
