import type { FigureValue } from '../fleet/card-figure.ts';
import { MICROLITRES_IN, type VolumeUnit } from '../units/volume.ts';
import { MILLINEWTON_METRES_IN, type TorqueUnit } from '../units/torque.ts';
import { NANOMETRES_IN, type DepthUnit } from '../units/depth.ts';
import { PASCALS_IN, type PressureUnit } from '../units/pressure.ts';
import { readableNumber } from '../units/readable-number.ts';
import { unitText } from '../units/unit-text.ts';

/** A figure as it was typed. @example valueText({ kind: 'pressure', typed: { value: 2.2, unit: 'bar' }, pascals: 220_000 }) //=> '2.2 bar' */
export function valueText(value: FigureValue): string {
  if (value.kind === 'text') return value.text;
  const thread = value.kind === 'torque' && value.on.thread !== null ? ` (${value.on.thread})` : '';
  return `${value.typed.value} ${unitText(value.typed.unit)}${thread}`;
}

const VOLUMES: readonly VolumeUnit[] = ['l', 'us-qt', 'imp-pt'];
const TORQUES: readonly TorqueUnit[] = ['Nm', 'lbf-ft'];
const PRESSURES: readonly PressureUnit[] = ['bar', 'psi', 'kPa'];
const DEPTHS: readonly DepthUnit[] = ['mm', 'in'];

/**
 * The same in the other units that gauges and bottles have, to as many figures as a person reads.
 *
 * @example otherUnits({ kind: 'pressure', typed: { value: 2.2, unit: 'bar' }, pascals: 220_000 }) //=> ['31.9 psi', '220 kPa']
 */
export function otherUnits(value: FigureValue): readonly string[] {
  switch (value.kind) {
    case 'text':
      return [];
    case 'volume':
      return VOLUMES.filter((unit) => unit !== value.typed.unit).map((unit) => `${readableNumber(value.microlitres / MICROLITRES_IN[unit])} ${unitText(unit)}`);
    case 'torque':
      return TORQUES.filter((unit) => unit !== value.typed.unit).map((unit) => `${readableNumber(value.millinewtonMetres / MILLINEWTON_METRES_IN[unit])} ${unitText(unit)}`);
    case 'pressure':
      return PRESSURES.filter((unit) => unit !== value.typed.unit).map((unit) => `${readableNumber(value.pascals / PASCALS_IN[unit])} ${unitText(unit)}`);
    case 'depth':
      return DEPTHS.filter((unit) => unit !== value.typed.unit).map((unit) => `${readableNumber(value.nanometres / NANOMETRES_IN[unit])} ${unitText(unit)}`);
  }
}
