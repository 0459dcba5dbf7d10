// A worker that fails on demand: the engine's name says how. Stands in for the model in tests of the pool.
import { existsSync, writeFileSync } from 'node:fs';
import { parentPort, threadId } from 'node:worker_threads';

const answer = (message) => ({
  performance: { verdict: { kind: 'model failure', message } },
  assessment: { checks: [] },
});

parentPort.on('message', ({ engine }) => {
  const [what, argument] = engine.name.split(' ');
  if (what === 'hang') for (;;);
  if (what === 'crash') throw new Error('an odd corner');
  if (what === 'exit') process.exit(3);
  if (what === 'memory') {
    const kept = [];
    for (;;) kept.push(new Array(1e5).fill(kept.length));
  }
  if (what === 'crash-once' && !existsSync(argument)) {
    writeFileSync(argument, '');
    throw new Error('a passing fault');
  }
  // Later requests answer sooner, so that arrival and request order differ.
  if (what === 'slow') setTimeout(() => parentPort.postMessage(answer(engine.name)), Number(argument));
  else parentPort.postMessage(answer(`${engine.name} by ${threadId}`));
});
