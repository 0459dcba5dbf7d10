/** `evaluate`: one engine, no search. */
import { evaluateRequest } from '../../evaluation/evaluate-request.ts';
import { summarise } from '../../evaluation/summary.ts';
import { writeDurably } from '../../store/durable-file.ts';
import { evaluationText } from '../evaluation-text.ts';
import { EXIT } from '../exit-codes.ts';
import { Ended, tell, UsageError, writeData } from '../output.ts';
import { readEngine } from '../read-configuration.ts';
import { traceCsv } from '../trace-csv.ts';
import { modelVersion, toolVersion } from '../versions.ts';

export interface EvaluateOptions {
  json?: boolean;
  trace?: string;
}

export async function evaluateCommand(file: string, options: EvaluateOptions): Promise<void> {
  const { engine, brief } = await readEngine(file);
  const result = evaluateRequest({ engine, brief, fidelity: 'full', constantsDraw: null, probeEdge: true });
  const { verdict, running } = result.performance;
  if (options.json) {
    const summary = summarise(result);
    writeData(
      JSON.stringify({ formatVersion: 1, toolVersion, modelVersion, engine, brief, summary, ...result }, null, 2),
    );
  } else {
    writeData(evaluationText(engine, result));
  }
  if (options.trace !== undefined) {
    if (running === null)
      throw new UsageError(`There is no cycle to write to ${options.trace}: the engine does not run by itself.`);
    await writeDurably(options.trace, traceCsv(running.traces));
    tell(`One cycle is written to ${options.trace}.`);
  }
  if (verdict.kind === 'model failure') throw new Ended(EXIT.modelFailure);
}
