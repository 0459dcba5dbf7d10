/** The door of the queue's room. Everything behind it is loaded only when a queue is asked for. */
export { addressText, queueAddress } from './address.ts';
export { QueueEvaluator } from './queue-evaluator.ts';
export { QueueWorker } from './queue-worker.ts';
