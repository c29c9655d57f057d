import type { Block } from '../../shared-core/handover/document-value.ts';
import { addTagged, makeRoom, QUIET, REGULAR, type Drawing } from './paper-page.ts';

type Picture = Extract<Block, { kind: 'picture' }>;

/** The bytes of a paper by its digest, in a form that can be put on a page (JPEG or PNG); null where it cannot. */
export type FindPicture = (sha256: string) => Uint8Array | null;

const LARGEST = { width: 220, height: 150 };

/** Draws a photograph with its name; one that cannot be drawn is named in its place. */
export function drawPicture(drawing: Drawing, block: Picture, find: FindPicture): void {
  const { pdf, root, left, width } = drawing;
  const bytes = find(block.paper);
  makeRoom(drawing, bytes === null ? 20 : LARGEST.height + 24);
  const top = pdf.y;
  if (bytes !== null) {
    const bbox = [left, top, left + LARGEST.width, top + LARGEST.height] as const;
    addTagged(drawing, root, 'Figure', { alt: `Photograph: ${block.caption}`, bbox }, () => void pdf.image(Buffer.from(bytes), left, top, { fit: [LARGEST.width, LARGEST.height] }));
    pdf.y = top + LARGEST.height + 4;
  }
  addTagged(drawing, root, 'P', {}, () => void pdf.font(REGULAR).fontSize(8.5).fillColor(QUIET).text(`Paper: ${block.caption}, SHA-256 ${block.paper}`, left, pdf.y, { width }));
  pdf.y += 6;
}
