import PDFDocument from 'pdfkit';
import { sayDate } from '../../shared-core/result/words/say.ts';
import type { CertificateDrawing, ReceiptDrawing } from '../../shared-core/sample/sample-drawing.ts';
import { amountText } from '../../shared-core/units/money.ts';

/** Two of the fonts that every reader of PDF has: the sample has many sheets, and a font of its own in each would be read and cut anew. */
const PLAIN = 'Helvetica';
const STRONG = 'Helvetica-Bold';

const MARGIN = 40;
const INK = '#1f2a30';
const QUIET = '#5c6a70';
const MARK = 'SAMPLE - proves nothing';

/** Draws an invented receipt or certificate on a sheet of A5, with its date for the file's own and nothing left to chance. */
export async function drawSheet(drawing: ReceiptDrawing | CertificateDrawing): Promise<Uint8Array> {
  const at = new Date(`${drawing.date}T12:00:00Z`);
  const title = `${drawing.kind === 'receipt' ? 'Receipt' : 'Certificate'} ${drawing.number}`;
  const pdf = new PDFDocument({
    size: 'A5', margin: MARGIN, lang: 'en-GB', displayTitle: true, font: PLAIN,
    info: { Title: `${title} (${MARK})`, Author: 'Trunnion sample household', CreationDate: at, ModDate: at },
  });
  const pieces: Buffer[] = [];
  const ended = new Promise<void>((resolve, reject) => {
    pdf.on('data', (piece: Buffer) => pieces.push(piece)).on('end', resolve).on('error', reject);
  });
  drawHead(pdf, drawing, title);
  if (drawing.kind === 'receipt') drawLines(pdf, drawing);
  else drawStatements(pdf, drawing);
  drawMark(pdf);
  pdf.end();
  await ended;
  return Buffer.concat(pieces);
}

function drawHead(pdf: PDFKit.PDFDocument, drawing: ReceiptDrawing | CertificateDrawing, title: string): void {
  pdf.fillColor(INK).font(STRONG).fontSize(16).text(drawing.heading);
  pdf.font(PLAIN).fontSize(9).fillColor(QUIET).text('an invented business').moveDown(1);
  pdf.fillColor(INK).font(STRONG).fontSize(11).text(title);
  pdf.font(PLAIN).fontSize(10).text(`Date: ${drawing.printedDate ?? sayDate(drawing.date)}`).text(`Car: ${drawing.car}`);
  if (drawing.odometer !== null) pdf.text(`Odometer: ${drawing.odometer}`);
  pdf.moveDown(1);
}

function drawLines(pdf: PDFKit.PDFDocument, receipt: ReceiptDrawing): void {
  for (const line of receipt.lines) drawLine(pdf, line.text, amountText(line.amountMinor, receipt.currency));
  pdf.moveDown(0.4);
  const y = pdf.y;
  pdf.moveTo(MARGIN, y).lineTo(pdf.page.width - MARGIN, y).lineWidth(0.6).strokeColor(INK).stroke();
  pdf.moveDown(0.4).font(STRONG);
  drawLine(pdf, `Total, ${receipt.currency}`, amountText(receipt.totalMinor, receipt.currency));
}

/** Text to the left, amount to the right edge, on one line. */
function drawLine(pdf: PDFKit.PDFDocument, text: string, amount: string): void {
  const y = pdf.y;
  pdf.text(text, MARGIN, y, { width: 230 });
  const below = pdf.y;
  pdf.text(amount, pdf.page.width - MARGIN - 80, y, { width: 80, align: 'right' });
  pdf.x = MARGIN;
  pdf.y = below + 3;
}

function drawStatements(pdf: PDFKit.PDFDocument, certificate: CertificateDrawing): void {
  for (const statement of certificate.statements) pdf.text(statement).moveDown(0.4);
}

/** Set across the foot of every sheet. */
function drawMark(pdf: PDFKit.PDFDocument): void {
  const y = pdf.page.height - MARGIN - 28;
  pdf.rect(MARGIN, y, pdf.page.width - 2 * MARGIN, 24).lineWidth(1).strokeColor(QUIET).stroke();
  pdf.font(STRONG).fontSize(12).fillColor(QUIET).text(MARK, MARGIN, y + 5, { width: pdf.page.width - 2 * MARGIN, align: 'center', lineBreak: false });
}
