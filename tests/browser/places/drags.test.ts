import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { PROJECT } from '../../../electron/start/bundle.ts';

interface Drag {
  /** What does the same with a press or a key. */
  readonly instead: string;
  /** A spec that does it so, and a line of it. */
  readonly spec: string;
  readonly line: string;
}

/** Every file in which something is drawn along, held down, turned or dropped, and the way round it. */
const DRAGS: Readonly<Record<string, Drag>> = {
  'yard/use-post-drag.ts': { instead: 'M lifts the session, the arrows move it; Move it in its sheet takes a day', spec: 'plan-on-yard.test.ts', line: "keyboard.press('m')" },
  'yard/use-sight-wheel.ts': { instead: 'plus and minus, the arrows with Shift, T, and their buttons', spec: 'yard-axis.test.ts', line: "name: 'Further ahead' }).click()" },
  'papers/mark-layer.tsx': { instead: 'Add a part, and the arrow keys on it', spec: 'redact-paper.test.ts', line: "name: 'Add a part' }).press('Enter')" },
  'papers/drop-place.tsx': { instead: 'Keep files, Keep a folder', spec: 'papers-screen.test.ts', line: "name: 'Keep a folder' }).click()" },
  'ui/use-file-drop.ts': { instead: 'the button of each place that takes files', spec: 'import-table.test.ts', line: 'setInputFiles' },
};
/** Takes a drop only to refuse it. */
const REFUSES = ['app/refuse-stray-drops.ts'];
const HANDLES = /addEventListener\('(?:pointermove|mousemove|touchmove|drag\w*|drop|wheel)'|\bon(?:PointerDown|PointerMove|MouseDown|MouseMove|TouchMove|DragOver|DragStart|Drop|Wheel)(?:Capture)?=|onDragOver:/;
/** Hands the press on to one of those above. */
const HANDS_ON = ['yard/lane-posts.tsx', 'yard/post-band.tsx'];

const renderer = path.join(PROJECT, 'renderer');
const found = readdirSync(renderer, { recursive: true, encoding: 'utf8' }).filter((file) => /\.tsx?$/.test(file) && HANDLES.test(readFileSync(path.join(renderer, file), 'utf8')));

/** Source: WCAG 2.2, 2.5.7 (seen). */
test('each drag has a way without one, and no drag is forgotten here', () => {
  expect(found.filter((file) => !REFUSES.includes(file) && !HANDS_ON.includes(file)).sort()).toEqual(Object.keys(DRAGS).sort());
});

test.each(Object.entries(DRAGS))('%s: the other way is walked', (_file, { spec, line }) => {
  expect(readFileSync(path.join(PROJECT, 'tests', 'browser', spec), 'utf8')).toContain(line);
});
