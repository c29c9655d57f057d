import { z } from 'zod';
import type { Message } from '../result/result.ts';
import { MILLINEWTON_METRES_IN, torqueFromTyped, torqueUnitSchema, type TorqueAsTyped, type TorqueUnit } from '../units/torque.ts';
import { unitText } from '../units/unit-text.ts';
import type { JointData } from './card-figure.ts';
import file from './torque-bands.json' with { type: 'json' };

/** Torques that are usual for something, in thousandths of a newton metre. */
interface Band {
  readonly low: number;
  readonly high: number;
}

const bolts = z.array(z.strictObject({ thread: z.int(), strength: z.enum(['8.8', '10.9']), low: z.number(), high: z.number() })).parse(file.bolts);
const sparkPlugs = z.array(z.strictObject({ thread: z.int(), seat: z.enum(['flat', 'conical']), lowLbfFt: z.number(), highLbfFt: z.number() })).parse(file.sparkPlugs);

/** Below this share of the band's lower end, or above that of its upper end, a torque is asked about. */
const LEAST_SHARE = 0.6;
const MOST_SHARE = 1.5;

/**
 * The usual torques for a thread and its class or seat, the widest of several tables; null where no table has it. What is not
 * said of the class or the seat widens the band to all of them. Something soft has no lower end: its makers ask for far less.
 *
 * Source: reference section 5c for steel bolts, 0.14 to 0.12 friction, oiled and dry, with and without flange (all seen);
 * section 5d for spark plugs, cast-iron and aluminium heads together (seen). The handbook always goes before them.
 * @example torqueBand({ joint: 'bolt', thread: 'M12x1.5', strength: '8.8', seat: null }) //=> { low: 74_000, high: 103_000 }
 */
export function torqueBand(on: JointData): Band | null {
  const diameter = diameterOf(on.thread);
  const rows = on.joint === 'spark-plug'
    ? sparkPlugs.filter((row) => row.thread === diameter && (on.seat === null || row.seat === on.seat)).map((row) => ({ low: inThousandths(row.lowLbfFt), high: inThousandths(row.highLbfFt) }))
    : bolts.filter((row) => row.thread === diameter && (on.strength === null || row.strength === on.strength)).map(({ low, high }) => ({ low: low * MILLINEWTON_METRES_IN.Nm, high: high * MILLINEWTON_METRES_IN.Nm }));
  if (rows.length === 0) return null;
  const low = on.joint === 'soft' ? 0 : Math.min(...rows.map((row) => row.low));
  return { low, high: Math.max(...rows.map((row) => row.high)) };
}

/** The diameter of a thread in whole millimetres. @example diameterOf('M12x1.25') //=> 12 */
export function diameterOf(thread: string | null): number | null {
  return thread === null ? null : Number(/^M(\d+)/.exec(thread)?.[1] ?? Number.NaN);
}

function inThousandths(lbfFt: number): number {
  return Math.round(lbfFt * MILLINEWTON_METRES_IN['lbf-ft']);
}

/**
 * What to ask about a torque that is unlike those usual for its thread: never a refusal, and the maker's figure wins. Where
 * the same number would be usual in another unit, that unit is named. Null where there is nothing to ask.
 *
 * @example torqueQuestion({ value: 10, unit: 'Nm' }, { joint: 'bolt', thread: 'M12', strength: '8.8', seat: null })?.key //=> 'torque-low'
 */
export function torqueQuestion(typed: TorqueAsTyped, on: JointData): Message | null {
  const band = torqueBand(on);
  const torque = torqueFromTyped(typed);
  if (band === null || !torque.ok) return null;
  const side = sideOf(torque.value, band);
  if (side === null) return null;
  const values = { value: typed.value, unit: unitText(typed.unit), thread: on.thread, low: rounded(band.low, typed.unit), high: rounded(band.high, typed.unit) };
  const meant = unitMeant(typed, band);
  const key = side === 'low' ? 'torque-low' : on.joint === 'soft' ? 'torque-high-soft' : 'torque-high';
  return meant === null ? { key, values } : { key: `${key}-in`, values: { ...values, meant: unitText(meant) } };
}

function sideOf(torque: number, band: Band): 'low' | 'high' | null {
  if (torque < LEAST_SHARE * band.low) return 'low';
  return torque > MOST_SHARE * band.high ? 'high' : null;
}

/** The one unit in which the number lies within the band itself; none where several would do. */
function unitMeant(typed: TorqueAsTyped, band: Band): TorqueUnit | null {
  if (band.low === 0) return null;
  const fitting = torqueUnitSchema.options.filter((unit) => {
    const torque = torqueFromTyped({ value: typed.value, unit });
    return torque.ok && torque.value >= band.low && torque.value <= band.high;
  });
  return fitting.length === 1 ? (fitting[0] ?? null) : null;
}

function rounded(thousandths: number, unit: TorqueUnit): number {
  return Math.round((thousandths / MILLINEWTON_METRES_IN[unit]) * 10) / 10;
}
