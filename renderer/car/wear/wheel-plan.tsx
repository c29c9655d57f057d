import type { WearSeriesView } from '../../../shared-core/views/wear-view.ts';
import type { WheelView } from '../../../shared-core/views/wheel-view.ts';
import { valueText } from './value-words.ts';
import styles from './wheel-plan.module.css';

interface WheelPlanProps {
  readonly wheels: readonly WheelView[];
  readonly measured: readonly WearSeriesView[];
}

const WIDTH = 280;
const HEIGHT = 190;
/** The corner of the car that each place is, by the middle of its wheel. */
const CORNERS = { 'front-left': { x: 88, y: 48 }, 'front-right': { x: 192, y: 48 }, 'rear-left': { x: 88, y: 142 }, 'rear-right': { x: 192, y: 142 } } as const;
type Corner = keyof typeof CORNERS;

/** The car from above, each wheel at its corner with its mark and its newest tread. The list below says the same in words. */
export function WheelPlan({ wheels, measured }: WheelPlanProps) {
  const corners = Object.keys(CORNERS) as Corner[];
  if (!wheels.some((one) => (corners as string[]).includes(one.place))) return null;
  return (
    <svg className={styles.plan} viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true">
      <path className={styles.body} d="M112 12 Q140 2 168 12 Q180 20 181 48 V146 Q180 178 168 184 H112 Q100 178 99 146 V48 Q100 20 112 12 Z" />
      <path className={styles.glass} d="M108 66 Q140 54 172 66 L166 84 H114 Z M116 148 H164 L169 164 Q140 172 111 164 Z" />
      {corners.map((corner) => <PlanWheel key={corner} corner={corner} wheel={wheels.find((one) => one.place === corner) ?? null} measured={measured} />)}
    </svg>
  );
}

interface PlanWheelProps {
  readonly corner: Corner;
  readonly wheel: WheelView | null;
  readonly measured: readonly WearSeriesView[];
}

function PlanWheel({ corner, wheel, measured }: PlanWheelProps) {
  const { x, y } = CORNERS[corner];
  const left = x < WIDTH / 2;
  const at = { x: left ? x - 14 : x + 14, textAnchor: left ? 'end' as const : 'start' as const };
  const tread = measured.find((one) => one.what === 'tread' && one.wheel !== null && one.wheel.id === wheel?.wheel.id);
  const newest = tread?.points.findLast((point) => point.part === 'counts')?.measurement.typed;
  return (
    <>
      <rect className={wheel === null ? styles.noTyre : styles.tyre} x={x - 8} y={y - 19} width={16} height={38} rx={4} />
      {wheel !== null && <text className={styles.name} {...at} y={y}>{short(wheel.wheel.name)}</text>}
      {newest !== undefined && <text className={styles.tread} {...at} y={y + 16}>{valueText(newest)}</text>}
    </>
  );
}

const LONGEST = 9;

function short(name: string): string {
  return name.length > LONGEST + 1 ? `${name.slice(0, LONGEST)}…` : name;
}
