import { ROW_HEIGHT } from './lane-height.ts';
import type { PlacedMark } from './lane-layout.ts';
import type { Stretch, TimeScale } from './time-scale.ts';
import type { YardPost } from './yard-post.ts';

/** A post is so wide; its label hangs on it, and every row of labels is as high as what one presses must be. */
export const POST_WIDTH = 8;
export const LABEL_ROW = 30;
/** Posts of neighbouring days are drawn so far apart, that each is seen by itself; the label says the day. */
const APART = 11;
const LABEL_GAP = 8;
/** Padding and outline of a label. */
const LABEL_EDGES = 20;
/** What is left between marks is drawn from this height on: less says nothing. */
const LEAST_SEGMENT = 10;
/** Between a post and what stands in a row. */
const CLEAR = 3;

/** A post with its place on the paper and its label's in the band, in pixels. */
export interface PlacedPost {
  readonly post: YardPost;
  readonly x: number;
  readonly row: number;
  readonly labelLeft: number;
  readonly labelWidth: number;
}

export interface PostLayout {
  /** From left to right, as the arrow keys go. */
  readonly placed: readonly PlacedPost[];
  /** What lies before the paper, while one looks further ahead. */
  readonly before: readonly YardPost[];
  /** What lies past the paper. */
  readonly later: readonly YardPost[];
  readonly rows: number;
}

/** Lays the posts, by day, on the paper: none upon another, each label right of its post where there is room. */
export function layPosts(posts: readonly YardPost[], scale: TimeScale, measure: (text: string) => number): PostLayout {
  const later = posts.filter((one) => scale.x(one.day) > scale.width - POST_WIDTH / 2);
  // What is passed stands at the edge as long as today is on the paper.
  const before = scale.todayX < 0 ? posts.filter((one) => scale.x(one.day) < POST_WIDTH / 2) : [];
  const on = posts.filter((one) => !later.includes(one) && !before.includes(one));
  const stood = spread(on.map((post) => ({ post, x: Math.max(POST_WIDTH / 2, scale.x(post.day)) })));
  const labelled = stood.map(({ post, x }) => {
    const labelWidth = Math.min(scale.width, Math.ceil(measure(post.label) + measure(post.rest)) + LABEL_EDGES);
    return { post, x, labelWidth, labelLeft: Math.max(0, Math.min(x - POST_WIDTH, scale.width - labelWidth)) };
  });
  const taken: Stretch[][] = [];
  const placed = [...labelled].sort((a, b) => pulledBack(a) - pulledBack(b) || b.x - a.x).map((one) => {
    const row = freeRow(taken, { from: one.labelLeft, to: one.labelLeft + one.labelWidth });
    taken[row] = [...(taken[row] ?? []), { from: one.labelLeft, to: one.labelLeft + one.labelWidth }];
    return { ...one, row };
  });
  return { placed: placed.sort((a, b) => a.x - b.x), before, later, rows: taken.length };
}

/** From the right, so that a post goes down beside the labels of later ones and not through them; a label that reaches back over earlier posts goes below theirs. */
function pulledBack({ x, labelLeft }: Pick<PlacedPost, 'x' | 'labelLeft'>): number {
  return labelLeft < x - POST_WIDTH ? 1 : 0;
}

type Stood = Pick<PlacedPost, 'post' | 'x'>;

function spread(stood: readonly Stood[]): readonly Stood[] {
  const apart: Stood[] = [];
  for (const { post, x } of stood) apart.push({ post, x: Math.max(x, (apart.at(-1)?.x ?? -APART) + APART) });
  return apart;
}

function freeRow(rows: readonly (readonly Stretch[])[], label: Stretch): number {
  const row = rows.findIndex((taken) => taken.every((one) => one.to + LABEL_GAP <= label.from || label.to + LABEL_GAP <= one.from));
  return row < 0 ? rows.length : row;
}

/** So much a lane grows at its foot, where a post of its car would else not be seen. */
export const POST_FOOT = 16;

/** Where the marks of a lane begin, and how high it is: the height its rows want, and a foot for posts that no gap between the marks shows. */
export function laneWithPosts(posts: readonly PlacedPost[], car: string, layout: { readonly placed: Parameters<typeof postSegments>[0]; readonly rows: number }, height: number): { readonly height: number; readonly above: number } {
  const above = Math.max(0, (height - layout.rows * ROW_HEIGHT) / 2);
  const hidden = posts.some(({ post, x }) => post.session.cars.includes(car) && postSegments(layout.placed, x, { height, above }).length === 0);
  return { height: height + (hidden ? POST_FOOT : 0), above };
}

/**
 * What is seen of a post in a lane: the stretches, from above, that no mark or its words take up at that place. Marks are drawn from `above`
 * on, row by row.
 */
export function postSegments(placed: readonly Pick<PlacedMark, 'row' | 'left' | 'right' | 'labelLeft' | 'labelWidth'>[], x: number, { height, above }: { readonly height: number; readonly above: number }): readonly Stretch[] {
  const [from, to] = [x - POST_WIDTH / 2 - CLEAR, x + POST_WIDTH / 2 + CLEAR];
  const rows = placed.filter((one) => Math.min(one.left, one.labelLeft) < to && Math.max(one.right, one.labelLeft + one.labelWidth) > from).map((one) => one.row);
  const segments: Stretch[] = [];
  let top = 1;
  for (const row of [...new Set(rows)].sort((a, b) => a - b)) {
    segments.push({ from: top, to: above + row * ROW_HEIGHT });
    top = above + (row + 1) * ROW_HEIGHT;
  }
  segments.push({ from: top, to: height - 1 });
  return segments.filter((one) => one.to - one.from >= LEAST_SEGMENT);
}
