import { CHECK_NOTE, HISTORY, PUBLIC_KEY, ROWS, SEAL, SCHEMA, SEAL_TEXT, SIGNATURE, SIGNED_CONTENTS } from './pack-files.ts';
import { MANIFEST, TAG_MANIFEST } from './bag.ts';

/** The note that tells how to check a pack with ordinary tools: `data/how-to-check.txt`. */
export function checkNote(sample: boolean): string {
  return `${sample ? SAMPLE_LINE : ''}${NOTE}`;
}

const SAMPLE_LINE = 'This pack shows an invented household. It is a sample and proves nothing.\n\n';

const NOTE = `How to check this pack
======================

In this folder are a car's history, the papers that go with it, and the means to see that nothing was altered
after it was handed over. No special program is needed for the first two checks. Open a terminal in the folder
that holds bagit.txt.

1. Is every file as it was?

    sha512sum -c ${MANIFEST}
    sha512sum -c ${TAG_MANIFEST}

   On a Mac: shasum -a 512 -c ${MANIFEST}. Every line must end in OK. A file that is in data/ and in no line of
   ${MANIFEST} was added later.

2. Did the keeper's key sign this list of files?

    openssl pkeyutl -verify -pubin -inkey ${PUBLIC_KEY} -rawin -in ${SIGNED_CONTENTS} -sigfile ${SIGNATURE}

   It must say "Signature Verified Successfully". ${SIGNED_CONTENTS} holds the SHA-512 of every file, so it must agree
   with ${MANIFEST}.

3. Was each entry in the journal, unchanged, when the journal was sealed?

   ${ROWS} holds each entry of this car ("row"), with its proof and with the value and salt of every field that is
   shown. Anyone can write a program for this from the rules:
   - a shown field is right when SHA-256 of its salt (16 bytes) followed by its value as canonical JSON (RFC 8785) is
     the digest that the row gives for the field; a field named under "withheld" shows its digest only;
   - the row's hash is SHA-256 of a zero byte followed by the row as canonical JSON;
   - the proof leads from that hash to the root by RFC 9162, section 2.1.3.2, with "seq" as index and the seal's
     "treeSize" as size;
   - the seal in ${SEAL} signs (Ed25519) the canonical JSON of
     {"seal":"trunnion-journal-1","treeSize":...,"root":...,"keyFingerprint":...};
   - the fingerprint is SHA-256 of the public key's 32 bytes;
   - each record of ${HISTORY} shows the values of one row, and "entered" is that row's "at".

What the files are
------------------

    data/history.pdf          the history for people
    ${HISTORY}         the same for programs: every entry with its values, the papers, what the PDF was drawn from;
                              "period" is there where not the whole history is shown, and gives its days
    data/tables/*.csv         readings, items, recalls, records and costs as tables (RFC 4180, UTF-8); a cell that a
                              spreadsheet would take for a formula begins with an apostrophe
    data/papers/              the papers, as they were kept; where ${HISTORY} says "blackedOut", a copy that the keeper
                              made with parts blacked out ("redactedFrom" is the digest of the paper it was made from;
                              "namedIn" the rows that name that paper in a field they withhold)
    data/previous/*.zip       the packs of earlier keepers, each whole and checked in the same way
    ${SCHEMA}*.schema.json  the form of each JSON file as JSON Schema (json-schema.org, draft 2020-12)

What this proves, and what it does not
--------------------------------------

It proves that the entries were written down no later than the seal, in this order, and were not altered since. It does not prove
that what was written down is true, nor that nothing was left out: a keeper can leave out whole entries and papers.

Nor does it prove that the PDF and the tables say what the entries say: whoever holds the key made them and signed the list that
they are in. What matters can be looked up in ${ROWS}, where each value is proven.

Whoever has this pack could build another one, with another key, that also passes every check here. That can be told only
against a seal that was given to you before. ${SEAL_TEXT} must be that seal, or a later one with the same fingerprint; let
Trunnion check it with "check PACK --seal TEXT", or read it: behind its first line a seal is base 32 (digits and capital letters
without I, L, O and U, spaces left out) of 6 bytes of tree size, 32 of root, 32 of fingerprint and 64 of signature.

This note is ${CHECK_NOTE} in the pack.
`;
