import { assertNever } from '../../shared-core/result/assert.ts';
import type { SampleDrawing } from '../../shared-core/sample/sample-drawing.ts';
import { drawPhotograph } from './sample-photograph.ts';
import { drawSheet } from './sample-sheet.ts';

/**
 * The bytes of an invented paper: a receipt or a certificate as PDF, a photograph as PNG. Every one says that it is a
 * sample; the same description gives the same bytes.
 *
 * @example await drawSamplePaper({ kind: 'photograph', subject: 'brake-pad', wear: 0.7, seed: 1 }) //=> PNG bytes
 */
export async function drawSamplePaper(drawing: SampleDrawing): Promise<Uint8Array> {
  switch (drawing.kind) {
    case 'receipt':
    case 'certificate':
      return drawSheet(drawing);
    case 'photograph':
      return drawPhotograph(drawing);
    default:
      return assertNever(drawing);
  }
}
