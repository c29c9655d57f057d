import { describe, expect, test } from 'vitest';
import { paperHeaders } from '../../electron/loopback/paper-answer.ts';
import { paperInPath } from '../../electron/loopback/paper-path.ts';

const DIGEST = '0123456789abcdef'.repeat(4);

describe('the address of a paper', () => {
  test('names one by its whole digest', () => {
    expect(paperInPath(`/papers/${DIGEST}`)).toEqual({ sha256: DIGEST, part: 'whole' });
  });

  test('names its thumbnail and its pages below it', () => {
    expect(paperInPath(`/papers/${DIGEST}/thumbnail`)).toEqual({ sha256: DIGEST, part: 'thumbnail' });
    expect(paperInPath(`/papers/${DIGEST}/pages/12`)).toEqual({ sha256: DIGEST, part: { page: 12, of: 'paper' } });
    expect(paperInPath(`/papers/${DIGEST}/copy/2`)).toEqual({ sha256: DIGEST, part: { page: 2, of: 'copy' } });
  });

  test.each(['/thumbnail/', '/thumbnails', '/pages', '/pages/', '/pages/0', '/pages/-1', '/pages/1.5', '/pages/01', '/pages/123456', '/pages/1/2', '/copy', '/copy/', '/copy/0', '/copies/1', '/thumbnail/1', '/pages/1\n', '/thumbnail\n', '/../thumbnail'])(
    'with %j behind it names none',
    (behind) => {
      expect(paperInPath(`/papers/${DIGEST}${behind}`)).toBeNull();
    },
  );

  test.each(['/papers/', `/papers/${DIGEST.slice(1)}`, `/papers/${DIGEST}0`, `/papers/${DIGEST.toUpperCase()}`, `/papers/${DIGEST}/`, `/papers/../${DIGEST}`, `/x/papers/${DIGEST}`, `/papers/${DIGEST}\n`])(
    '%j names none',
    (path) => {
      expect(paperInPath(path)).toBeNull();
    },
  );
});

// Source: ours; nothing that a browser could run or that could reach out of its sandbox is shown in place.
describe('how a paper goes out', () => {
  test.each([
    { kind: 'image/jpeg', type: 'image/jpeg', how: 'inline', ending: 'jpg' },
    { kind: 'image/png', type: 'image/png', how: 'inline', ending: 'png' },
    { kind: 'image/webp', type: 'image/webp', how: 'inline', ending: 'webp' },
    { kind: 'application/pdf', type: 'application/pdf', how: 'attachment', ending: 'pdf' },
    { kind: 'text/html', type: 'application/octet-stream', how: 'attachment', ending: 'bin' },
    { kind: 'image/svg+xml', type: 'application/octet-stream', how: 'attachment', ending: 'bin' },
    { kind: 'constructor', type: 'application/octet-stream', how: 'attachment', ending: 'bin' },
    { kind: 'image/png\r\nx: y', type: 'application/octet-stream', how: 'attachment', ending: 'bin' },
  ])('$kind: $how', ({ kind, type, how, ending }) => {
    expect(paperHeaders(DIGEST, kind)).toMatchObject({ 'content-type': type, 'content-disposition': `${how}; filename="paper-0123456789ab.${ending}"`, 'x-content-type-options': 'nosniff' });
  });
});
