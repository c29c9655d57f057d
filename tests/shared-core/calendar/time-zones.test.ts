import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, test } from 'vitest';
import { datesPrinted } from './dates-printed.ts';
import vectors from './months.json' with { type: 'json' };

const script = fileURLToPath(new URL('dates-printed.ts', import.meta.url));

function printedIn(zone: string): string {
  return execFileSync(process.execPath, [script, '--print'], { encoding: 'utf8', env: { ...process.env, TZ: zone } });
}

describe('dates do not depend on the machine', () => {
  // Apia skipped 30 December 2011 whole, Kwajalein 21 August 1993, Kiritimati 1 January 1995; Sao Paulo had days without a midnight.
  test.each(['Pacific/Apia', 'Pacific/Kwajalein', 'Pacific/Kiritimati', 'America/Sao_Paulo', 'Europe/London'])('in %s', (zone) => {
    expect(printedIn(zone)).toBe(datesPrinted());
  });

  test('the zones are known here, so that the rows above can fail', () => {
    const skipped = execFileSync(process.execPath, ['-p', 'new Date(2011, 11, 30, 12).getDate()'], { encoding: 'utf8', env: { ...process.env, TZ: 'Pacific/Apia' } });
    expect(skipped.trim()).toBe('31');
  });

  test('what is printed is what Temporal says, which knows no zone', () => {
    const lines = datesPrinted().split('\n');
    const months = vectors.add.map((one) => `${one.from} ${one.months} ${Temporal.PlainDate.from(one.from).add({ months: one.months }).toString()}`);
    expect(lines.slice(0, months.length)).toEqual(months);
  });
});
