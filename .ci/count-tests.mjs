// Reads the test runner's JSON report and prints the one line of totals: "N passed, N failed", ", N skipped" where there are any.
import { readFileSync } from 'node:fs';
import process from 'node:process';
import { pathToFileURL } from 'node:url';

/** Totals of a report. A file that could not even be loaded is one failure, and so is a report that is not there. */
export function totalsOf(text) {
  const totals = { passed: 0, failed: 0, skipped: 0 };
  let files;
  try {
    files = JSON.parse(text).testResults;
  } catch {
    return { ...totals, failed: 1 };
  }
  for (const file of files) {
    const of = (status) => file.assertionResults.filter((one) => one.status === status).length;
    totals.passed += of('passed');
    totals.failed += of('failed') === 0 && file.status === 'failed' ? 1 : of('failed');
    totals.skipped += file.assertionResults.length - of('passed') - of('failed');
  }
  return totals;
}

function read(file) {
  try {
    return readFileSync(file, 'utf8');
  } catch {
    return '';
  }
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const { passed, failed, skipped } = totalsOf(read(process.argv[2]));
  console.log(`${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`);
  process.exitCode = failed > 0 || passed === 0 ? 1 : 0;
}
