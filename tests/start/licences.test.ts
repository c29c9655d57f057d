import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import allowed from '../../electron/start/packaging/allowed-licences.json' with { type: 'json' };
import { bundleWindow, PROJECT } from '../../electron/start/bundle.ts';
import { gatherLicences, licencesOfPage, licencesText } from '../../electron/start/packaging/gather-licences.ts';
import { isAllowed, type Licence } from '../../electron/start/packaging/licence.ts';
import { licenceOfFolder } from '../../electron/start/packaging/own-licence.ts';
import { packagesAskedFor, withTheirNeeds, type ShippedPackage } from '../../electron/start/packaging/shipped-packages.ts';

const folder = mkdtempSync(path.join(os.tmpdir(), 'licences-'));
let asked: string[] = [];
let packages: ShippedPackage[] = [];
let page: Licence[] = [];
let all: Licence[] = [];

beforeAll(async () => {
  await bundleWindow(path.join(folder, 'dist'));
  asked = packagesAskedFor(path.join(folder, 'dist', 'main'));
  packages = withTheirNeeds(PROJECT, asked);
  page = await licencesOfPage(PROJECT);
  all = gatherLicences(PROJECT, packages, page);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** What may not go out: without a text, or under a licence that nobody has agreed to. */
const faults = (licences: readonly Licence[]) => licences.filter(({ licence, texts }) => texts.join('').length < 200 || !isAllowed(licence, allowed)).map(({ name, licence }) => `${name}: ${licence}`);

describe('every part that goes out', () => {
  test('has its text, under a licence of the list', () => {
    expect(all.length).toBeGreaterThan(60);
    expect(faults(all)).toEqual([]);
  });

  test('is there once: code of the main program and of the page, fonts, and what is built in', () => {
    const names = all.map(({ name }) => name);
    expect(names).toEqual(expect.arrayContaining(['better-sqlite3', 'SQLite', 'highs', 'HiGHS', '@hyzyla/pdfium', 'PDFium', 'sharp', 'libvips and the libraries built with it', 'react', '@mantine/core', '@fontsource/source-sans-3', '@fontsource/source-serif-4', '@expo-google-fonts/source-sans-3', 'qrcode']));
    for (const left of ['vite', 'vitest', 'electron-builder', 'node', 'yargs', 'node-addon-api']) expect(names).not.toContain(left);
    expect(new Set(all.map(({ name, version, within }) => `${name} ${version} ${within}`)).size).toBe(all.length);
  });

  test('whatever package.json names for running goes out, but for the Node that runs tests and commands', () => {
    const { dependencies } = JSON.parse(readFileSync(path.join(PROJECT, 'package.json'), 'utf8')) as { dependencies: Record<string, string> };
    const out = new Set([...asked, ...page.map(({ name }) => name)]);
    expect(Object.keys(dependencies).filter((name) => !out.has(name))).toEqual(['node']);
  });

  test('fonts come with the Open Font License, libvips with the LGPL and the GPL', () => {
    const text = (name: string) => all.find((one) => one.name === name)?.texts.join('\n') ?? '';
    for (const font of ['@fontsource/source-sans-3', '@fontsource/source-serif-4', '@expo-google-fonts/source-sans-3']) expect(text(font)).toMatch(/SIL OPEN FONT LICENSE/i);
    expect(text('libvips and the libraries built with it')).toMatch(/GNU LESSER GENERAL PUBLIC LICENSE[\s\S]*GNU GENERAL PUBLIC LICENSE/);
    expect(text('PDFium')).toMatch(/Copyright 2014 The PDFium Authors[\s\S]*Redistribution and use[\s\S]*Apache License/);
    expect(text('SQLite')).toMatch(/public domain[\s\S]*May you do good and not evil/i);
  });
});

test('Vite and we read the same text of a package that lies whole and in the page', () => {
  const both = packages.flatMap(({ name, version, folder: place }) => page.filter((one) => one.name === name && one.version === version).map((one) => [one.texts[0], licenceOfFolder(path.join(PROJECT, place)).texts] as const));
  expect(both.length).toBeGreaterThan(0);
  for (const [seen, own] of both) expect(own).toContain(seen);
});

test('the same parts give the same bytes, in whatever order they were found', () => {
  const again = gatherLicences(PROJECT, packages.toReversed(), page.toReversed());
  expect(licencesText(again)).toBe(licencesText(all));
  expect(licencesText(all)).not.toMatch(/\r|\/tmp\/|node_modules/);
});

test('a package without a text, or under a licence that is not on the list, is a fault', () => {
  const place = (manifest: object, licence?: string) => {
    const at = path.join(folder, `p${Math.trunc(performance.now() * 1000)}`);
    mkdirSync(at);
    writeFileSync(path.join(at, 'package.json'), JSON.stringify({ version: '1.0.0', ...manifest }));
    if (licence !== undefined) writeFileSync(path.join(at, 'LICENSE'), licence.padEnd(300, '.'));
    return licenceOfFolder(at);
  };
  expect(faults([place({ name: 'a', license: 'MIT' })])).toEqual(['a: MIT']);
  expect(faults([place({ name: 'b', license: 'AGPL-3.0-only' }, 'text')])).toEqual(['b: AGPL-3.0-only']);
  expect(faults([place({ name: 'c' }, 'text')])).toEqual(['c: UNKNOWN']);
  expect(faults([place({ name: 'd', license: 'MIT' }, 'text')])).toEqual([]);
});

test.each([
  ['MIT', true], ['GPL-3.0-only', false], ['(MIT OR GPL-3.0-only)', true], ['MIT AND OFL-1.1', true], ['MIT AND GPL-3.0-only', false], ['UNKNOWN', false], ['toString', false],
])('%s is allowed: %s', (expression, expected) => expect(isAllowed(expression, allowed)).toBe(expected));

test('an expression that mixes AND with OR is for a person to read', () => {
  expect(() => isAllowed('MIT AND (ISC OR 0BSD)', allowed)).toThrow('mixes AND with OR');
});
