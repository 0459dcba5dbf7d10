/** Start, stop and abort, step by step, with the figures of one candidate. Sequences are common practice, no source. */
import type { Candidate } from '../../ranking/results.ts';
import { bandMetric, bandPhrase } from '../format/band.ts';
import { duration } from '../format/duration.ts';
import { both, metric } from '../format/quantity.ts';
import { frequencyBand, lifeBand } from './key-figures.ts';

const GAS = 'propane';

export function startSteps(c: Candidate): string[] {
  const { verdict } = c.performance;
  const valved = c.engine.intake.kind !== 'valveless';
  const start = verdict.kind === 'self-sustaining' ? verdict.start : null;
  const air = start
    ? `Blow starting air of ${both(start.airPressure, 'Pa')} gauge into the intake.`
    : 'Blow starting air into the intake.';
  const feed =
    c.engine.feed.mode === 'premixed'
      ? 'Open the fuel slowly until the mixture catches: light thumps first, then a steady note.'
      : `Open the fuel valve slowly to the set flow; the chamber takes it directly (${c.engine.feed.mode.replace('-', ' ')}).`;
  return [
    'Clear the range: nobody beside or behind the engine, none in the plane of the valve plate, extinguisher manned, ear protection on.',
    'Check tether and stand by hand. Check the fuel line for leaks with soapy water at running pressure, spark off.',
    ...(valved
      ? ['Look at the valves: each must lie flat on its seat and lift freely to its stop.']
      : ['Look into intake and tailpipe: nothing loose may lie inside.']),
    'Purge: starting air on, fuel shut, spark off, for ten seconds.',
    'Spark on; hear it.',
    air,
    feed,
    start
      ? `When the note is steady, take the spark away and shut the air. The model needed a few cycles: it ran by itself after air and spark for ${duration(start.duration)} in all.`
      : 'When the note is steady, take the spark away and shut the air.',
    `Compare the note: ${bandPhrase(bandMetric(frequencyBand(c), 'Hz'))} is expected.`,
    'If it has not fired after five seconds: fuel off, spark off, air on for thirty seconds, and only then a new trial.',
  ];
}

export function stopSteps(c: Candidate): string[] {
  return [
    c.engine.feed.fuel === GAS
      ? 'Shut the fuel at the cylinder first and let the line burn empty; then shut the needle valve.'
      : 'Shut the fuel at the tank; let the line run empty, then shut the needle valve.',
    'When it has stopped, blow air through for thirty seconds: it cools the valves and clears fuel.',
    'Spark circuit off and its supply unplugged.',
    'Wait until the shell is below 50 °C (122 °F) before anybody touches it; mark it “hot” until then.',
    'Write the running time into the log of the valves.',
  ];
}

/** When to shut the fuel at once. */
export function abortRules(c: Candidate): string[] {
  const { running } = c.performance;
  const frequency = bandMetric(frequencyBand(c), 'Hz');
  const life = bandMetric(lifeBand(c), 's');
  const walls = running?.profile.wallTemperature ?? [];
  const rules = [
    'Anybody steps into the cleared range, or anybody calls “stop”.',
    'Fuel smell, hiss or flame anywhere but at the tailpipe.',
    ...(frequency
      ? [
          `The note falls below ${frequency.low} Hz or rises above ${frequency.high} Hz and stays there, or becomes uneven.`,
        ]
      : ['The note becomes uneven.']),
    ...(c.engine.intake.kind === 'valveless'
      ? []
      : ['Flame or sparks come forward out of the intake: a valve no longer shuts.']),
    ...(walls.length > 0
      ? [
          `The shell glows brighter or at another place than expected: ${metric(Math.max(...walls), 'K')} is the hottest that the model expects${Math.max(...walls) < 800 ? ', which does not glow in daylight' : ''}.`,
        ]
      : []),
    'Anything moves on the stand, a weld opens, or a part comes loose.',
    'The fuel line frosts over or the flow falls: the cylinder no longer keeps up.',
    ...(life && c.engine.intake.kind !== 'valveless'
      ? [
          `The valves have run ${life.low} ${life.unit}: stop, take them out and look at root and edges under a lens before going on.`,
        ]
      : []),
  ];
  return rules;
}
