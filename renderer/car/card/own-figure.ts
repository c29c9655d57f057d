import type { FigureView } from '../../../shared-core/views/card-view.ts';

const BYTES = 6;

/** A figure of the keeper's own that is yet to be entered, under a key that no other has. */
export function newOwnFigure(): FigureView {
  const key = [...crypto.getRandomValues(new Uint8Array(BYTES))].map((byte) => byte.toString(16).padStart(2, '0')).join('');
  return { key: `own-${key}`, name: '', kind: 'text', own: true, entered: false, text: '', value: null, otherUnits: [], source: null, paper: null, note: '', sure: false, question: null, missed: [], items: [] };
}

/** Whether a figure of the keeper's own is being added, so that it has no row of its own yet. */
export function isAdded({ own, entered, name }: FigureView): boolean {
  return own && !entered && name === '';
}
