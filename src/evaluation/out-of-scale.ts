/** Refuses figures from which no time step follows, before a thread is spent on them. */
import type { Engine } from '../../shared/engine/engine.ts';

/** m; far beyond any pulsejet. The steps that a valve's motion takes in one period grow with the engine's length. */
const LONGEST = 100;
/** Beyond this in SI units, whatever the quantity, and below its inverse unless zero: no engine has such a part. */
const GREATEST = 1e9;

/** m; a petal thicker than long is none. Both bound how fast it swings, and with it the steps that its motion takes. */
const SHORTEST_PETAL = 1e-3;
/** (rad/s)², spring rate over moving mass: a thousand times as fast as any valve spring. */
const FASTEST_SPRING = 1e13;
/** Valves or petals; parts are listed one by one, and a thread that asks for too much memory at once takes the process along. */
const MOST_VALVES = 10_000;

/** What is out of scale, in words; null when nothing is. */
export function outOfScale(engine: Engine): string | null {
  for (const [i, { length, startDiameter, endDiameter }] of engine.sections.entries())
    for (const [name, value] of Object.entries({ length, startDiameter, endDiameter }))
      if (Math.abs(value) > LONGEST) return words(`sections[${i}].${name}`, value, `${LONGEST} m`);
  const { intake } = engine;
  const valves = intake.kind === 'reed' ? intake.petals : intake.kind === 'poppet' ? intake.valves : 1;
  if (!(valves >= 1 && valves <= MOST_VALVES && Number.isInteger(valves)))
    return words(`intake.${intake.kind === 'reed' ? 'petals' : 'valves'}`, valves, `whole, 1 to ${MOST_VALVES}`);
  if (intake.kind === 'reed' && !(intake.length >= SHORTEST_PETAL))
    return words('intake.length', intake.length, `at least ${SHORTEST_PETAL} m`);
  if (intake.kind === 'reed' && intake.thickness > intake.length)
    return words('intake.thickness', intake.thickness, `the petal's length, ${intake.length} m`);
  if (intake.kind === 'poppet' && intake.springRate > FASTEST_SPRING * (intake.mass + intake.springMass / 3))
    return words('intake.springRate', intake.springRate, 'what the moving mass can follow');
  const parts = {
    intake: engine.intake,
    feed: engine.feed,
    shell: engine.shell,
    augmenter: engine.augmenter,
    site: engine.site,
  };
  for (const [part, figures] of Object.entries(parts))
    for (const [name, value] of Object.entries(figures ?? {})) {
      if (typeof value !== 'number' || value === 0) continue;
      if (Math.abs(value) > GREATEST) return words(`${part}.${name}`, value, `${GREATEST}`);
      if (Math.abs(value) < 1 / GREATEST) return words(`${part}.${name}`, value, `0 or at least ${1 / GREATEST}`);
    }
  return null;
}

function words(path: string, value: number, bound: string): string {
  return `${path} of the engine is ${value}, out of scale (bound: ${bound})`;
}
