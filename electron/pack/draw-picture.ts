import type { Block } from '../../shared-core/handover/document-value.ts';
import { addTagged, artifact, makeRoom, openTagged, QUIET, REGULAR, RULE, type Drawing } from './paper-page.ts';
import type { PaperPictures } from './paper-pictures.ts';

type Cover = Extract<Block, { kind: 'cover' }>;
type Papers = Extract<Block, { kind: 'papers' }>;

const COVER_HEIGHT = 290;
const COLUMNS = 3;
const GAP = 12;
const SMALL_HEIGHT = 118;
const CAPTION_SIZE = 8;

/** Draws the photograph of the first page over the whole width, as it is, never cut. */
export function drawCover(drawing: Drawing, { caption }: Cover, { cover }: PaperPictures): void {
  if (cover === null) return;
  const { pdf, root, left, width } = drawing;
  makeRoom(drawing, COVER_HEIGHT);
  const top = pdf.y;
  const bbox = [left, top, left + width, top + COVER_HEIGHT] as const;
  addTagged(drawing, root, 'Figure', { alt: `Photograph of ${caption}`, bbox }, () => void pdf.image(cover, left, top, { fit: [width, COVER_HEIGHT], align: 'center' }));
  pdf.y = top + COVER_HEIGHT + 14;
}

/** Draws papers side by side, each small with its name and digest; one that is not here, or cannot be drawn, by its name alone. */
export function drawPapers(drawing: Drawing, { items }: Papers, { small }: PaperPictures): void {
  const list = openTagged(drawing, drawing.root, 'L');
  const drawn = items.filter((item) => item.path !== null && small.has(item.paper));
  for (let at = 0; at < drawn.length; at += COLUMNS) drawRow(drawing, list, drawn.slice(at, at + COLUMNS), small);
  for (const item of items.filter((one) => !drawn.includes(one))) drawName(drawing, list, item);
  list.end();
  drawing.pdf.x = drawing.left;
  drawing.pdf.y += 4;
}

/** How high papers side by side are, where no page ends between them; in points. */
export function papersHeight({ pdf, width }: Drawing, { items }: Papers, { small }: PaperPictures): number {
  pdf.font(REGULAR).fontSize(CAPTION_SIZE);
  const drawn = items.filter((item) => item.path !== null && small.has(item.paper));
  const each = (width - GAP * (COLUMNS - 1)) / COLUMNS;
  let height = 4;
  for (let at = 0; at < drawn.length; at += COLUMNS) height += SMALL_HEIGHT + 14 + Math.max(...drawn.slice(at, at + COLUMNS).map((item) => pdf.heightOfString(captionOf(item), { width: each })));
  for (const item of items.filter((one) => !drawn.includes(one))) height += pdf.heightOfString(nameOf(item), { width }) + 3;
  return height;
}

function drawRow(drawing: Drawing, list: PDFKit.PDFStructureElement, items: Papers['items'], small: PaperPictures['small']): void {
  const { pdf, left, width } = drawing;
  const each = (width - GAP * (COLUMNS - 1)) / COLUMNS;
  pdf.font(REGULAR).fontSize(CAPTION_SIZE);
  const captions = Math.max(...items.map((item) => pdf.heightOfString(captionOf(item), { width: each })));
  makeRoom(drawing, SMALL_HEIGHT + captions + 14);
  const top = pdf.y + 4;
  items.forEach((item, at) => {
    const [x, picture] = [left + at * (each + GAP), small.get(item.paper)];
    if (picture === undefined) return;
    artifact(drawing, () => pdf.rect(x, top, each, SMALL_HEIGHT).lineWidth(0.4).stroke(RULE));
    const one = openTagged(drawing, list, 'LI');
    const bbox = [x, top, x + each, top + SMALL_HEIGHT] as const;
    addTagged(drawing, one, 'Figure', { alt: `First page of the paper ${item.caption}`, bbox }, () => void pdf.image(picture, x + 2, top + 2, { fit: [each - 4, SMALL_HEIGHT - 4], align: 'center', valign: 'center' }));
    addTagged(drawing, one, 'LBody', {}, () => void pdf.font(REGULAR).fontSize(CAPTION_SIZE).fillColor(QUIET).text(captionOf(item), x, top + SMALL_HEIGHT + 3, { width: each }));
    one.end();
  });
  pdf.y = top + SMALL_HEIGHT + captions + 8;
}

function drawName(drawing: Drawing, list: PDFKit.PDFStructureElement, item: Papers['items'][number]): void {
  const { pdf, left, width } = drawing;
  pdf.font(REGULAR).fontSize(CAPTION_SIZE);
  const text = nameOf(item);
  makeRoom(drawing, pdf.heightOfString(text, { width }) + 4);
  const one = openTagged(drawing, list, 'LI');
  addTagged(drawing, one, 'LBody', {}, () => void pdf.font(REGULAR).fontSize(CAPTION_SIZE).fillColor(QUIET).text(text, left, pdf.y, { width }));
  one.end();
  pdf.y += 3;
}

function nameOf(item: Papers['items'][number]): string {
  return item.path === null ? `Paper withheld: ${item.caption}${item.paper === '' ? '' : `, SHA-256 ${item.paper}`}` : captionOf(item);
}

/** The start of the digest is enough to find the paper in the list of papers, where the whole of it stands. */
function captionOf({ caption, paper }: Papers['items'][number]): string {
  return `${caption} (${paper.slice(0, 12)}…)`;
}
