/** The name of a question: equal requests to the same model have equal keys, on any machine. */
import { digestOf } from '../config/canonical.ts';
import type { EvaluationRequest } from './evaluation.ts';

const briefDigests = new WeakMap<object, string>();

/** The brief is the same object for a whole study, so its digest is worked out once. */
function briefDigest(brief: object): string {
  let digest = briefDigests.get(brief);
  if (digest === undefined) {
    digest = digestOf(brief);
    briefDigests.set(brief, digest);
  }
  return digest;
}

/**
 * SHA-256, 64 hexadecimal digits, of engine, brief, fidelity, draw and model version. The engine's name is left out: it
 * changes nothing that is computed.
 */
export function requestKey(request: EvaluationRequest, modelVersion: string): string {
  const { name: _, ...engine } = request.engine;
  const { fidelity, constantsDraw } = request;
  return digestOf({ modelVersion, brief: briefDigest(request.brief), engine, fidelity, constantsDraw });
}
