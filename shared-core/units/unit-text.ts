import type { DepthUnit } from './depth.ts';
import type { PressureUnit } from './pressure.ts';
import type { TorqueUnit } from './torque.ts';
import type { VolumeUnit } from './volume.ts';

const TEXT: Readonly<Record<VolumeUnit | TorqueUnit | PressureUnit | DepthUnit, string>> = {
  'l': 'L', 'ml': 'mL', 'us-qt': 'US qt', 'us-pt': 'US pt', 'us-fl-oz': 'US fl oz', 'us-gal': 'US gal', 'imp-qt': 'imp qt', 'imp-pt': 'imp pt', 'imp-fl-oz': 'imp fl oz', 'imp-gal': 'imp gal',
  'Nm': 'N·m', 'lbf-ft': 'lbf·ft', 'lbf-in': 'lbf·in', 'kgf-m': 'kgf·m', 'kgf-cm': 'kgf·cm',
  'bar': 'bar', 'kPa': 'kPa', 'psi': 'psi', 'kgf-cm2': 'kgf/cm²',
  'mm': 'mm', 'in': 'in', '32nds': '/32 in',
};

/** A unit as it is written beside a number. @example unitText('lbf-ft') //=> 'lbf·ft' */
export function unitText(unit: VolumeUnit | TorqueUnit | PressureUnit | DepthUnit): string {
  return TEXT[unit];
}
