import type { Block } from '../../shared-core/handover/document-value.ts';
import { sayNumber } from '../../shared-core/result/words/say.ts';
import { addTagged, INK, LATE, makeRoom, QUIET, REGULAR, RULE, type Drawing } from './paper-page.ts';

type Chart = Extract<Block, { kind: 'chart' }>;

const HEIGHT = 190;
const GUTTER = 58;
const LABEL_ROOM = 32;
/** How high a line of the sources is. */
const KEY_LINE = 14;
const STEPS = [1, 2, 5];

/** Draws readings against time as one figure with a text in its place; the numbers stand in the table after it. */
export function drawChart(drawing: Drawing, chart: Chart): void {
  const { pdf, root, left, width } = drawing;
  const key = keyOf(drawing, chart);
  const height = 16 + HEIGHT + 16 + key.lines * KEY_LINE;
  makeRoom(drawing, height + 14);
  const first = chart.points[0];
  const last = chart.points.at(-1);
  const alt = `${chart.caption}: from ${first?.value ?? 0} ${chart.unit} on ${first?.date ?? ''} to ${last?.value ?? 0} ${chart.unit} on ${last?.date ?? ''}, ${chart.points.length} readings.`;
  const top = pdf.y;
  addTagged(drawing, root, 'Figure', { alt, bbox: [left, top, left + width, top + height] }, () => {
    pdf.font(REGULAR).fontSize(8.5).fillColor(QUIET).text(`${chart.caption} (${chart.unit})`, left, top, { width });
    drawPlot(drawing, chart, top + 16);
    drawSources(drawing, key, top + 16 + HEIGHT + 16);
  });
  pdf.x = left;
  pdf.y = top + height + 6;
}

function drawPlot({ pdf, left, width }: Drawing, chart: Chart, top: number): void {
  const days = chart.points.map((point) => Date.parse(`${point.date}T00:00:00Z`) / 86_400_000);
  const [from, to] = [Math.min(...days), Math.max(...days)];
  const values = chart.points.map((point) => point.value);
  const step = niceStep((Math.max(...values) - Math.min(...values)) / 4);
  const low = Math.floor(Math.min(...values) / step) * step;
  const high = Math.max(low + step, Math.ceil(Math.max(...values) / step) * step);
  const x = (day: number) => left + GUTTER + ((day - from) / Math.max(1, to - from)) * (width - GUTTER - 8);
  const y = (value: number) => top + HEIGHT - ((value - low) / (high - low)) * HEIGHT;
  pdf.font(REGULAR).fontSize(8).lineWidth(0.4);
  for (let value = low; value <= high; value += step) {
    pdf.moveTo(left + GUTTER, y(value)).lineTo(left + width, y(value)).stroke(RULE);
    pdf.fillColor(QUIET).text(sayNumber(value), left, y(value) - 5, { width: GUTTER - 6, align: 'right', lineBreak: false });
  }
  drawYears(pdf, from, to, x, top);
  chart.points.forEach((point, at) => {
    if (at === 0) pdf.moveTo(x(days[at] ?? from), y(point.value));
    else pdf.lineTo(x(days[at] ?? from), y(point.value));
  });
  pdf.lineWidth(0.8).stroke(QUIET);
  const sources = sourcesOf(chart);
  chart.points.forEach((point, at) => drawMark(pdf, sources.indexOf(point.source), x(days[at] ?? from), y(point.value)));
}

/** The sources of the readings, each once, as they come. */
function sourcesOf(chart: Chart): readonly string[] {
  return [...new Set(chart.points.map((point) => point.source))];
}

/** One mark for each source, told apart by form as well as by colour. */
function drawMark(pdf: PDFKit.PDFDocument, which: number, x: number, y: number): void {
  const forms = [
    () => pdf.circle(x, y, 2.2).fill(INK),
    () => pdf.rect(x - 2.2, y - 2.2, 4.4, 4.4).fill(LATE),
    () => pdf.polygon([x, y - 3], [x + 2.8, y + 2.2], [x - 2.8, y + 2.2]).fill(INK),
    () => pdf.polygon([x, y - 3], [x + 3, y], [x, y + 3], [x - 3, y]).fill(LATE),
    () => pdf.circle(x, y, 2.2).lineWidth(0.9).fillAndStroke('#ffffff', INK),
    () => pdf.rect(x - 2.2, y - 2.2, 4.4, 4.4).lineWidth(0.9).fillAndStroke('#ffffff', LATE),
  ];
  forms[which % forms.length]?.();
}

/** Where each source stands below the years. */
interface Key {
  readonly places: readonly { readonly source: string; readonly line: number; readonly x: number }[];
  readonly lines: number;
}

/** The sources one after another, on as many lines as they need. */
function keyOf({ pdf, left, width }: Drawing, chart: Chart): Key {
  pdf.font(REGULAR).fontSize(8);
  const [from, to] = [left + GUTTER, left + width];
  let [line, x] = [0, from];
  const places = sourcesOf(chart).map((source) => {
    const needed = pdf.widthOfString(source) + 24;
    if (x > from && x + needed > to) [line, x] = [line + 1, from];
    const place = { source, line, x };
    x += needed;
    return place;
  });
  return { places, lines: line + 1 };
}

/** What each mark stands for, below the years. */
function drawSources({ pdf }: Drawing, { places }: Key, top: number): void {
  pdf.font(REGULAR).fontSize(8);
  places.forEach(({ source, line, x }, which) => {
    const y = top + line * KEY_LINE;
    drawMark(pdf, which, x + 4, y + 5);
    pdf.fillColor(QUIET).text(source, x + 11, y, { lineBreak: false });
  });
}

/** A line for each New Year; its label only where the labels have room. */
function drawYears(pdf: PDFKit.PDFDocument, from: number, to: number, x: (day: number) => number, top: number): void {
  const year = (day: number) => new Date(day * 86_400_000).getUTCFullYear();
  let free = x(from);
  for (let at = year(from) + 1; at <= year(to); at += 1) {
    const middle = x(Date.UTC(at, 0, 1) / 86_400_000);
    if (middle < free) continue;
    pdf.lineWidth(0.4).moveTo(middle, top).lineTo(middle, top + HEIGHT).stroke(RULE);
    pdf.fillColor(QUIET).text(String(at), middle - 15, top + HEIGHT + 4, { width: 30, align: 'center', lineBreak: false });
    free = middle + LABEL_ROOM;
  }
}

/** The next of 1, 2, 5, 10, 20, 50 ... at or above a length. */
function niceStep(least: number): number {
  const power = 10 ** Math.floor(Math.log10(Math.max(1, least)));
  return (STEPS.find((step) => step * power >= least) ?? 10) * power;
}
