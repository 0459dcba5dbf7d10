// A worker that fails on demand: the engine's name says how. Stands in for the model in tests of the pool.
import { existsSync, writeFileSync } from 'node:fs';
import { parentPort, threadId } from 'node:worker_threads';

const answer = (message) => ({
  performance: { verdict: { kind: 'model failure', message } },
  assessment: { checks: [] },
});

/** A running engine with a long curve. */
const curves = () => ({
  performance: {
    verdict: { kind: 'self-sustaining', message: '' },
    running: {
      tsfc: 1e-5,
      thrust: 9,
      frequency: 90,
      fuelFlow: 9e-5,
      valve: null,
      traces: { time: Array(1000).fill(0) },
    },
  },
  assessment: { checks: [], valveLife: { median: 60 }, mass: 1 },
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
  else if (what === 'curves') parentPort.postMessage(curves());
  else parentPort.postMessage(answer(`${engine.name} by ${threadId}`));
});
