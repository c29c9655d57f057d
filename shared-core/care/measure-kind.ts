import { z } from 'zod';
import { PLACES_ON_CAR } from '../fleet/wheel.ts';
import { plainText } from '../result/plain-text.ts';
import { refusedBy } from '../result/refused-by.ts';
import type { Dimension } from '../units/measured-value.ts';

/** What can be measured against a limit. */
export const measureKindSchema = z.enum(
  ['tread', 'pad', 'disc', 'battery-voltage', 'battery-capacity', 'brake-fluid-moisture', 'coolant-protection', 'belt', 'other'],
  refusedBy('unknown-measure'),
);
export type MeasureKind = z.infer<typeof measureKindSchema>;

/** Where on the car it is measured. */
export const measurePlaceSchema = z.enum([...PLACES_ON_CAR, 'spare'], refusedBy('unknown-measure-place'));
export type MeasurePlace = z.infer<typeof measurePlaceSchema>;

/** How something wears: with the distance or with time; whether its value rises towards the limit or falls. */
export const wearWaySchema = z.strictObject({ by: z.enum(['distance', 'time']), rises: z.boolean() });
export type WearWay = z.infer<typeof wearWaySchema>;

/** The keeper's own name of something else that is measured. */
export const measureNameSchema = plainText(60);

/** What is known of a kind before anybody measured. Values in the dimension's canonical unit. */
export interface KindRule {
  readonly dimension: Dimension;
  readonly way: WearWay;
  readonly least: number;
  readonly most: number;
  /**
   * How far two people with ordinary gauges differ, as a standard deviation: ours, no source. It is the least uncertainty
   * of a line through few measurements, for a band from their scatter alone would call two points exact.
   */
  readonly error: number;
}

const falls = (by: WearWay['by']): WearWay => ({ by, rises: false });
const rises = (by: WearWay['by']): WearWay => ({ by, rises: true });

/**
 * Source of the ways: common practice, no source. Battery capacity is in per cent of the rated one, moisture in per cent of
 * the brake fluid, coolant by the temperature down to which it protects (it rises as the coolant ages), belts by our own
 * grades 1 (as new) to 5 (at its end). The bounds are against slips of the hand, no claim of what may occur.
 */
const RULES: Readonly<Record<Exclude<MeasureKind, 'other'>, KindRule>> = {
  tread: { dimension: 'depth', way: falls('distance'), least: 0, most: 30, error: 0.2 },
  pad: { dimension: 'depth', way: falls('distance'), least: 0, most: 40, error: 0.4 },
  disc: { dimension: 'depth', way: falls('distance'), least: 0, most: 60, error: 0.1 },
  'battery-voltage': { dimension: 'voltage', way: falls('time'), least: 0, most: 60, error: 0.05 },
  'battery-capacity': { dimension: 'share', way: falls('time'), least: 0, most: 150, error: 2 },
  'brake-fluid-moisture': { dimension: 'share', way: rises('time'), least: 0, most: 20, error: 0.3 },
  'coolant-protection': { dimension: 'temperature', way: rises('time'), least: -100, most: 60, error: 1 },
  belt: { dimension: 'grade', way: rises('distance'), least: 1, most: 5, error: 0.4 },
};

/** Between which values a kind is usually read, in its canonical unit. Against slips of the hand, ours, no source: what lies outside is asked about, never refused. */
const USUAL: Partial<Readonly<Record<MeasureKind, { readonly low: number; readonly high: number }>>> = {
  tread: { low: 0.5, high: 15 }, pad: { low: 0.5, high: 25 }, disc: { low: 3, high: 50 }, 'battery-voltage': { low: 9, high: 16 }, 'battery-capacity': { low: 20, high: 120 }, 'brake-fluid-moisture': { low: 0, high: 8 }, 'coolant-protection': { low: -60, high: 0 },
};

/** Between which values a kind is usually read; null where nothing can be said. @example usualOf('pad') //=> { low: 0.5, high: 25 } */
export function usualOf(kind: MeasureKind): { readonly low: number; readonly high: number } | null {
  return USUAL[kind] ?? null;
}

/** The rule of a kind; null for `other`, of which nothing is known. @example ruleOf('tread')?.way.by //=> 'distance' */
export function ruleOf(kind: MeasureKind): KindRule | null {
  return kind === 'other' ? null : RULES[kind];
}
