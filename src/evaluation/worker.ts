/** A thread of the pool: answers one request at a time. See worker-pool.ts for the other end. */
import { parentPort } from 'node:worker_threads';
import { evaluateRequest } from './evaluate-request.ts';
import type { EvaluationRequest } from './evaluation.ts';

parentPort?.on('message', (request: EvaluationRequest) => {
  parentPort?.postMessage(evaluateRequest(request));
});
