import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { expect, test } from 'vitest';
import { day, openTestHost, temporaryFolder, type TestHost } from '../host/open-test-host.ts';
import { packTexts } from './pack-texts.ts';

const picture = async (colour: string) => (await sharp({ create: { width: 60, height: 40, channels: 3, background: colour } }).jpeg().toBuffer()).toString('base64');

async function household(): Promise<{ readonly host: TestHost; readonly papers: readonly string[] }> {
  const host = openTestHost();
  await host.must('household.start', { name: 'Test household' });
  await host.must('car.add', { id: 'pip', name: 'Pip' });
  const papers: string[] = [];
  for (const [name, colour] of [['FILENAMEONE.jpg', 'red'], ['FILENAMETWO.JPG', 'blue'], ['FILENAMETHREE.jpg', 'grey']] as const) papers.push((await host.must('paper.keep', { name, base64: await picture(colour) })).paper.id);
  await host.must('paper.describe', { paper: papers[1] ?? '', name: 'Pip: receipt of the tyres' });
  await host.must('record.add', { id: 'r1', car: 'pip', date: day('2026-11-20'), title: 'Tyres', lines: [{ name: 'Tyres' }], papers: [...papers] });
  return { host, papers };
}

test('a paper is called as the keeper calls it, in the PDF, in its file’s name and where papers are chosen; its file’s name is nowhere', async () => {
  const { host } = await household();
  expect((await host.must('pack.papers', { car: 'pip' })).papers.map((one) => one.name)).toEqual(['FILENAMEONE.jpg', 'Pip: receipt of the tyres', 'FILENAMETHREE.jpg']);
  const { folder, pdf, all } = await packTexts((await host.must('pack.write', { car: 'pip', out: temporaryFolder() })).path);
  expect(pdf).toContain('Pip: receipt of the tyres');
  expect(readdirSync(join(folder, 'data/papers'))).toEqual(['0001-FILENAMEONE.jpg', '0002-Pip-receipt-of-the-tyres.JPG', '0003-FILENAMETHREE.jpg']);
  expect(all).not.toContain('FILENAMETWO');
});

test('a paper that is withheld is told of by its kind and digest, by no name', async () => {
  const { host, papers } = await household();
  const { pdf, all } = await packTexts((await host.must('pack.write', { car: 'pip', out: temporaryFolder(), onlyPapers: [papers[0] ?? ''] })).path);
  for (const name of ['FILENAMETWO', 'FILENAMETHREE', 'receipt of the tyres']) expect(all).not.toContain(name);
  expect(pdf).toContain(`Paper withheld: Picture, SHA-256 ${papers[2] ?? ''}`);
  expect(pdf).toContain('FILENAMEONE');
});
