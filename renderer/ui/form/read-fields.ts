import type { LocalDate } from '../../../shared-core/calendar/local-date.ts';
import { localDate } from '../../../shared-core/calendar/local-date.ts';
import { refuse, type MessageValues, type Refusal, type Result } from '../../../shared-core/result/result.ts';
import type { DistanceAsTyped, DistanceUnit } from '../../../shared-core/units/distance.ts';
import { amountText, minorDigits, minorFromText } from '../../../shared-core/units/money.ts';

/** Digits with groups set apart by spaces or apostrophes, and one decimal mark. */
const NUMBER = /^-?\d+([.,]\d+)?$/;
const GROUPS = /(?<=\d)[\s\u00a0\u202f'\u2019](?=\d{3}(\D|$))/g;

/**
 * Reads what was typed into a form's fields, and remembers the first that cannot be read, so that a form composes its
 * whole request in one go and then asks once whether it is sound.
 *
 * @example
 * const read = new FieldsRead();
 * const value = read.number('value', '38 250'); //=> 38250
 * read.whole({ value }); //=> { ok: true, value: { value: 38250 } }
 */
export class FieldsRead {
  private fault: Refusal | null = null;

  /** What was composed, or the first fault. */
  whole<Request>(request: Request): Result<Request> {
    return this.fault === null ? { ok: true, value: request } : { ok: false, refusal: this.fault };
  }

  /** Refuses a field by its path. */
  refuse(path: string, code: string, values: MessageValues = {}): void {
    this.fault ??= refuse(code, values, path.split('.')).refusal;
  }

  /** A number; 0 stands in where there is none, for then nothing is sent. */
  number(path: string, text: string, example = '38250'): number {
    const plain = text.trim().replace(GROUPS, '');
    if (NUMBER.test(plain)) return Number(plain.replace(',', '.'));
    this.refuse(path, 'not-a-number', { example });
    return 0;
  }

  /** A number, or null where the field is empty. */
  numberOrNull(path: string, text: string): number | null {
    return text.trim() === '' ? null : this.number(path, text);
  }

  /** A whole number, or null where the field is empty. */
  wholeOrNull(path: string, text: string): number | null {
    const plain = text.trim().replace(GROUPS, '');
    if (plain === '') return null;
    if (/^\d+$/.test(plain)) return Number(plain);
    this.refuse(path, 'not-whole');
    return 0;
  }

  /** A distance with its unit, or null where the field is empty. */
  distanceOrNull(path: string, text: string, unit: DistanceUnit): DistanceAsTyped | null {
    const value = this.numberOrNull(path, text);
    return value === null ? null : { value, unit };
  }

  /** A date; fields of dates give whole dates or nothing. */
  date(path: string, text: string): LocalDate | undefined {
    const date = localDate(text);
    if (date.ok) return date.value;
    this.refuse(path, 'no-date');
    return undefined;
  }

  /** A date, or null where the field is empty. */
  dateOrNull(path: string, text: string): LocalDate | null {
    return text === '' ? null : (this.date(path, text) ?? null);
  }

  /** Minor units of an amount. */
  money(path: string, text: string, currency: string): number {
    const minor = minorFromText(text.trim().replace(GROUPS, ''), currency);
    if (minor === null) this.refuse(path, 'not-an-amount', { currency, example: amountText(minorDigits(currency) === 0 ? 1250 : 125_000, currency) });
    return minor ?? 0;
  }

  /** Minor units of an amount, or null where the field is empty. */
  moneyOrNull(path: string, text: string, currency: string): number | null {
    return text.trim() === '' ? null : this.money(path, text, currency);
  }
}

/** A line of text, or null where it is empty. */
export function textOrNull(text: string): string | null {
  return text.trim() === '' ? null : text;
}
