/**
 * Whether a verdict stands on an edge: the same engine with small changes that no builder controls, tried again.
 *
 * Mixture ± 3 %, air ± 8 K, starting air ± 20 %: about what a jet, a season and a blower vary by (common practice, no source).
 */
import type { Engine } from './engine.ts';
import type { EdgeProbe, StartAttempt } from './performance.ts';

interface Variant {
  engine: Engine;
  starts: StartAttempt[];
}

/** The varied engines with the starts to try, in a fixed order. */
export function edgeVariants(engine: Engine, starts: readonly StartAttempt[]): Variant[] {
  const mixture = (f: number): Engine => ({
    ...engine,
    feed: { ...engine.feed, equivalenceRatio: engine.feed.equivalenceRatio * f },
  });
  const warmer = (d: number): Engine => ({
    ...engine,
    site: { ...engine.site, temperature: engine.site.temperature + d },
  });
  const air = (f: number) => starts.map((s) => ({ ...s, airPressure: s.airPressure * f }));
  const same = [...starts];
  return [
    { engine: mixture(0.97), starts: same },
    { engine: mixture(1.03), starts: same },
    { engine: warmer(-8), starts: same },
    { engine: warmer(8), starts: same },
    { engine, starts: air(0.8) },
    { engine, starts: air(1.2) },
  ];
}

/** One sentence when the variants disagree with each other or with the verdict; '' when they agree. */
export function edgeSentence(probe: EdgeProbe, runs: boolean): string {
  const agree = runs ? probe.running : probe.tried - probe.running;
  if (agree === probe.tried) return '';
  return ` It is at the edge: with small changes of mixture, air and start it runs in ${probe.running} of ${probe.tried} trials.`;
}
