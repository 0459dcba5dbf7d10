// The steps of the continuous integration. Types, style and the validation table count as one check each.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const folder = mkdtempSync(join(tmpdir(), 'pulsejet-ci-'));
const report = join(folder, 'tests.json');
let passed = 0;
let failed = 0;
let skipped = 0;

function step(name, command, env = {}) {
  console.log(`\n== ${name}: ${command}`);
  const { status } = spawnSync(command, { shell: true, stdio: 'inherit', env: { ...process.env, ...env } });
  return status === 0;
}

function check(name, command) {
  if (step(name, command)) passed++;
  else failed++;
}

/** The tests of the queue start a Redis of their own; where the system's packages have none, they are skipped and counted. */
function provideRedis() {
  const there = () => spawnSync('redis-server', ['--version'], { stdio: 'ignore' }).status === 0;
  const quiet = '-qq -o Dpkg::Use-Pty=0';
  if (!there()) step('redis', `apt-get update ${quiet} && apt-get install -y --no-install-recommends ${quiet} redis-server`, { DEBIAN_FRONTEND: 'noninteractive' });
  if (!there()) console.log('No Redis can be had: the tests of the queue at work will be skipped.');
}

// The README's test command is `npm ci && npm test`; types and style are looked at in between.
const installed = step('install', 'npm ci');
if (installed) {
  check('types', 'npm run typecheck');
  check('style', 'npm run lint');
  check('computed against measured', 'npm run -s validate -- --check');
  provideRedis();
  const green = step('tests', 'npm test -- --reporter=default --reporter=json --outputFile.json="$TEST_REPORT"', { TEST_REPORT: report });
  let counted = { numPassedTests: 0, numFailedTests: 0, numPendingTests: 0 };
  try {
    counted = JSON.parse(readFileSync(report, 'utf8'));
  } catch (error) {
    console.error(`The test report cannot be read: ${error.message}`);
  }
  passed += counted.numPassedTests;
  failed += counted.numFailedTests;
  skipped += counted.numPendingTests;
  // A file that cannot even start, or a run without tests, has no failed test to count.
  if ((!green && counted.numFailedTests === 0) || counted.numPassedTests === 0) failed++;
} else {
  failed++;
}
rmSync(folder, { recursive: true, force: true });
console.log(`\n${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`);
process.exitCode = failed === 0 ? 0 : 1;
