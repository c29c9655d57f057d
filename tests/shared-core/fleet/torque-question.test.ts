import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { JointData } from '../../../shared-core/fleet/card-figure.ts';
import { diameterOf, torqueBand, torqueQuestion } from '../../../shared-core/fleet/torque-question.ts';
import { say } from '../../../shared-core/result/words/say.ts';
import { MILLINEWTON_METRES_IN, torqueUnitSchema } from '../../../shared-core/units/torque.ts';

const bolt = (thread: string | null, strength: JointData['strength'] = '8.8'): JointData => ({ joint: 'bolt', thread, strength, seat: null });
const plug = (thread: string, seat: JointData['seat'] = 'flat'): JointData => ({ joint: 'spark-plug', thread, strength: null, seat });
const newtonMetres = (on: JointData) => {
  const band = torqueBand(on);
  return band === null ? null : [band.low / 1000, band.high / 1000].map((value) => Math.round(value * 10) / 10);
};

describe('bands', () => {
  // Source: reference section 5c, lowest and highest of its tables for the size and class (seen).
  test.each([
    { thread: 'M5', strength: '8.8', band: [5.9, 5.9] }, { thread: 'M6', strength: '8.8', band: [9, 12] }, { thread: 'M8x1.25', strength: '8.8', band: [21, 28] },
    { thread: 'M10', strength: '8.8', band: [42, 57] }, { thread: 'M12x1.5', strength: '8.8', band: [74, 103] }, { thread: 'M14x1.5', strength: '8.8', band: [115, 157] },
    { thread: 'M6', strength: '10.9', band: [12, 17] }, { thread: 'M8', strength: '10.9', band: [31, 40] }, { thread: 'M10', strength: '10.9', band: [60, 80] },
    { thread: 'M12', strength: '10.9', band: [100, 140] }, { thread: 'M14', strength: '10.9', band: [160, 225] },
    { thread: 'M12', strength: null, band: [74, 140] }, { thread: 'M16', strength: '8.8', band: null }, { thread: null, strength: '8.8', band: null },
  ] as const)('$thread of $strength: $band', ({ thread, strength, band }) => {
    expect(newtonMetres(bolt(thread, strength))).toEqual(band);
  });

  // Source: reference section 5d, a plug maker's table (seen), N m computed there.
  test.each([
    { thread: 'M14', seat: 'flat', band: [24.4, 34.3] }, { thread: 'M12', seat: 'flat', band: [14.6, 24.4] }, { thread: 'M10', seat: 'flat', band: [9.8, 14.6] },
    { thread: 'M8', seat: 'flat', band: [7.9, 9.8] }, { thread: 'M18', seat: 'conical', band: [19.7, 29.3] }, { thread: 'M14', seat: 'conical', band: [9.8, 24.4] },
    { thread: 'M14', seat: null, band: [9.8, 34.3] }, { thread: 'M12', seat: 'conical', band: null },
  ] as const)('spark plug $thread, $seat: $band', ({ thread, seat, band }) => {
    expect(newtonMetres(plug(thread, seat))).toEqual(band);
  });

  test('something soft has no lower end', () => {
    expect(newtonMetres({ joint: 'soft', thread: 'M14', strength: '8.8', seat: null })).toEqual([0, 157]);
  });

  test.each([['M6', 6], ['M12x1.25', 12], ['M24x2', 24], [null, null]])('%s: %s mm', (thread, mm) => {
    expect(diameterOf(thread)).toBe(mm);
  });
});

describe('a torque', () => {
  // By hand: 0.6 x 74 = 44.4 N m, 1.5 x 103 = 154.5 N m.
  test.each([
    { case: 'just under 0.6 of the band', value: 44.39, unit: 'Nm', on: bolt('M12'), key: 'torque-low' },
    { case: 'at 0.6 of the band', value: 44.4, unit: 'Nm', on: bolt('M12'), key: null },
    { case: 'at 1.5 of the band', value: 154.5, unit: 'Nm', on: bolt('M12'), key: null },
    { case: 'just over 1.5 of the band', value: 154.51, unit: 'Nm', on: bolt('M12'), key: 'torque-high' },
    { case: 'of a handbook for wheel bolts (90 N m, seen)', value: 90, unit: 'Nm', on: bolt('M12x1.25', null), key: null },
    { case: 'of a handbook for alloy wheels (100 N m, seen)', value: 100, unit: 'Nm', on: bolt('M12x1.25', null), key: null },
    { case: '10 N m typed in lbf in', value: 88, unit: 'Nm', on: bolt('M6'), key: 'torque-high-in', meant: 'lbf·in' },
    { case: 'kgf m typed as N m', value: 10, unit: 'Nm', on: bolt('M12'), key: 'torque-low-in', meant: 'kgf·m' },
    { case: 'N m typed as lbf ft', value: 150, unit: 'lbf-ft', on: bolt('M14'), key: null },
    { case: 'N m typed as kgf m', value: 120, unit: 'kgf-m', on: bolt('M14'), key: 'torque-high-in', meant: 'N·m' },
    { case: 'a drain plug far below a bolt of steel (30 N m, common practice, no source)', value: 30, unit: 'Nm', on: { joint: 'soft', thread: 'M14', strength: '8.8', seat: null }, key: null },
    { case: 'a drain plug above any bolt', value: 250, unit: 'Nm', on: { joint: 'soft', thread: 'M14', strength: '8.8', seat: null }, key: 'torque-high-soft' },
    { case: 'a drain plug in another unit, which nothing tells from a slip', value: 1500, unit: 'Nm', on: { joint: 'soft', thread: 'M14', strength: '8.8', seat: null }, key: 'torque-high-soft' },
    { case: 'on a spark plug as on a bolt', value: 85, unit: 'Nm', on: plug('M12'), key: 'torque-high' },
    { case: 'of the plug maker', value: 12, unit: 'lbf-ft', on: plug('M12'), key: null },
    { case: 'of a thread that no table has', value: 900, unit: 'Nm', on: bolt('M20'), key: null },
    { case: 'of no thread', value: 900, unit: 'Nm', on: bolt(null), key: null },
  ] as const)('$case: $key', (row) => {
    const question = torqueQuestion({ value: row.value, unit: row.unit }, row.on);
    expect(question?.key ?? null).toBe(row.key);
    expect(question?.values['meant'] ?? null).toBe('meant' in row ? row.meant : null);
    if (question !== null) expect(say(question)).not.toContain('{');
  });

  test('the band is said in the unit typed', () => {
    // By hand: 74 / 1.3558 = 54.6, 103 / 1.3558 = 76.0.
    expect(torqueQuestion({ value: 20, unit: 'lbf-ft' }, bolt('M12x1.5'))?.values).toMatchObject({ value: 20, unit: 'lbf·ft', thread: 'M12x1.5', low: 54.6, high: 76 });
  });

  test('is asked about the same in every unit, but for the unit that may have been meant', () => {
    fc.assert(fc.property(fc.double({ min: 1, max: 900, noNaN: true }), fc.constantFrom(...torqueUnitSchema.options), fc.constantFrom('M5', 'M6', 'M8', 'M10', 'M12', 'M14'), (newtons, unit, thread) => {
      // Away from the edges, where the last thousandth decides.
      const [low = 0, high = 0] = newtonMetres(bolt(thread)) ?? [];
      fc.pre([0.6 * low, 1.5 * high].every((edge) => Math.abs(newtons - edge) > 0.1));
      const value = (newtons * 1000) / MILLINEWTON_METRES_IN[unit];
      const side = (key: string | undefined) => key?.split('-')[1];
      expect(side(torqueQuestion({ value, unit }, bolt(thread))?.key)).toBe(side(torqueQuestion({ value: newtons, unit: 'Nm' }, bolt(thread))?.key));
    }));
  });
});
