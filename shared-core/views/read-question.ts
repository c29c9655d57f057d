import { usualOf } from '../care/measure-kind.ts';
import { torqueQuestion } from '../fleet/torque-question.ts';
import type { Message } from '../result/result.ts';
import { canonicalUnit, canonicalValue, dimensionOf } from '../units/measured-value.ts';
import { torqueFromTyped, type TorqueAsTyped } from '../units/torque.ts';
import { unitText } from '../units/unit-text.ts';
import type { StepValue } from '../work/doing.ts';
import type { JobTorque } from './job-sheet-view-schema.ts';

type Read = StepValue['read'];

/** Below and above these shares of what the sheet says a torque is asked about: those of the usual bands (ours). */
const LEAST_SHARE = 0.6;
const MOST_SHARE = 1.5;

/** Thousandths of a newton metre above which a torque of an unknown joint is asked about: ours, no source, above the hub nuts of cars. */
const MUCH = 500_000;

/** What to ask about a value that was read at a step; it stands as it was written, whatever is answered. Null where there is nothing to ask. */
export function askedOf(read: Read, torques: readonly JobTorque[]): Message | null {
  return read.kind === 'torque' ? askedOfTorque(read.typed, torques.find((one) => one.name === read.name) ?? null) : askedOfMeasured(read);
}

function askedOfTorque(typed: TorqueAsTyped, of: JobTorque | null): Message | null {
  const torque = torqueFromTyped(typed);
  if (!torque.ok) return null;
  const asked = sheetTorque(of);
  const values = { value: typed.value, unit: unitText(typed.unit), asked: of?.text ?? null };
  if (asked !== null) return torque.value < LEAST_SHARE * asked ? { key: 'read-torque-low', values } : torque.value > MOST_SHARE * asked ? { key: 'read-torque-high', values } : null;
  const usual = of?.on == null ? null : torqueQuestion(typed, of.on);
  return usual ?? (torque.value > MUCH ? { key: 'read-torque-much', values } : null);
}

/** What the sheet or the data card says, in thousandths of a newton metre. */
function sheetTorque(of: JobTorque | null): number | null {
  const typed = of?.inUnits.find((one) => one.unit === of.typedUnit);
  const torque = typed === undefined ? null : torqueFromTyped(typed);
  return torque?.ok === true ? torque.value : null;
}

function askedOfMeasured({ what, typed }: Extract<Read, { kind: 'measured' }>): Message | null {
  const [usual, value] = [usualOf(what), canonicalValue(typed)];
  if (usual === null || !value.ok || (value.value >= usual.low && value.value <= usual.high)) return null;
  return { key: 'read-measured-unusual', values: { value: typed.value, unit: measuredUnit(typed.unit), ...usual, in: measuredUnit(canonicalUnit(dimensionOf(typed.unit))) } };
}

function measuredUnit(unit: Extract<Read, { kind: 'measured' }>['typed']['unit']): string {
  switch (unit) {
    case 'mm': case 'in': case '32nds': return unitText(unit);
    case 'C': case 'F': return `°${unit}`;
    case 'grade': case '1': return '';
    default: return unit;
  }
}
