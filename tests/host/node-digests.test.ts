import { describe, expect, test } from 'vitest';
import { sha256, sha512 } from '../../electron/host/node-digests.ts';
import { hexText } from '../../shared-core/journal/hex-text.ts';

const MILLION_A = 'a'.repeat(1_000_000);

describe('FIPS 180-4 vectors through the host', () => {
  // Source: FIPS 180-4 example messages ("abc", 448 bits and a million a: seen; the rest from memory; all recomputed).
  test.each([
    { case: 'nothing', text: '', digest: 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855' },
    { case: 'abc', text: 'abc', digest: 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad' },
    { case: '448 bits', text: 'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq', digest: '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1' },
    { case: 'a million a', text: MILLION_A, digest: 'cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0' },
  ])('SHA-256 of $case', ({ text, digest }) => {
    expect(hexText(sha256(Buffer.from(text)))).toBe(digest);
  });

  test.each([
    { case: 'nothing', text: '', digest: 'cf83e1357eefb8bdf1542850d66d8007d620e4050b5715dc83f4a921d36ce9ce47d0d13c5d85f2b0ff8318d2877eec2f63b931bd47417a81a538327af927da3e' },
    { case: 'abc', text: 'abc', digest: 'ddaf35a193617abacc417349ae20413112e6fa4e89a97ea20a9eeee64b55d39a2192992a274fc1a836ba3c23a3feebbd454d4423643ce80e2a9ac94fa54ca49f' },
    { case: '896 bits', text: 'abcdefghbcdefghicdefghijdefghijkefghijklfghijklmghijklmnhijklmnoijklmnopjklmnopqklmnopqrlmnopqrsmnopqrstnopqrstu', digest: '8e959b75dae313da8cf4f72814fc143f8f7779c6eb9f7fa17299aeadb6889018501d289e4900f7e4331b99dec4b5433ac7d329eeb6dd26545e96e55b874be909' },
  ])('SHA-512 of $case', ({ text, digest }) => {
    expect(hexText(sha512(Buffer.from(text)))).toBe(digest);
  });
});
