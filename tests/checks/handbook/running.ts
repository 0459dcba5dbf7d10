/** Running and valve life against outside figures. */
import { readFileSync } from 'node:fs';
import { VALVE_MATERIALS } from '../../../shared/durability/valve-materials.ts';
import { simulate } from '../../../shared/engine/simulate.ts';
import { poppetLengths } from '../../../shared/fabrication/poppet-layout.ts';
import { readEngineFile } from '../../../src/config/read-engine.ts';
import { POPPET, poppetEngine, REED } from '../fixtures.ts';
import { poppet, reed } from '../scenario-kit.ts';
import { all, between, figureOf, type Handbook, limitOf, near, shellAt } from './entry.ts';

const ROOM = 293.15;

function simulated(name: string) {
  const url = new URL(`../../../configs/engines/${name}.yaml`, import.meta.url);
  const reading = readEngineFile(readFileSync(url, 'utf8'), name);
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  const { engine, brief } = reading;
  return { engine, brief, performance: simulate(engine, { fidelity: 'screen' }) };
}

/** Valves at room temperature, so that handbook stiffness holds. */
const cold = all(shellAt(ROOM, 0.9e5), (input, running) => {
  input.engine.site.temperature = ROOM;
  running.profile.filmCoefficient.fill(0);
});
/** A fully reversed amplitude that stands for a stress between 0 and σ: σ/√2 (Smith–Watson–Topper). */
const PULSATING = Math.SQRT2;

const petal = (stop: number, lift: number, seat: number) =>
  reed(
    all(cold, (input, running) => {
      input.engine.intake = { ...REED, thickness: 0.15e-3, length: 0.02, stopLift: stop };
      const still = { stopLift: stop, peakLift: lift, seatImpactSpeed: seat, stopImpactSpeed: 0 };
      Object.assign(running.valve!, still);
    }),
  )();

/** 50-cm class: open theses (NC State 2006), from memory, medium. */
const fiftyCentimetre = reed((input, running) => {
  input.engine.intake = { ...REED, length: 0.02, width: 0.009, thickness: 0.15e-3, stopLift: 3.5e-3, portArea: 44e-6 };
  running.frequency = 240;
  Object.assign(running.valve!, { seatImpactSpeed: 6, stopImpactSpeed: 9.5, peakLift: 3.5e-3, stopLift: 3.5e-3 });
});

const stems = (speed: number, joint: 'welded' | 'one-piece' = 'one-piece') =>
  poppet(
    all(cold, (input, running) => {
      input.engine.intake = { ...POPPET, stemJoint: joint };
      Object.assign(running.valve!, { seatImpactSpeed: speed, stopImpactSpeed: 0 });
    }),
  )();

const VALVE_STEEL = VALVE_MATERIALS['valve-steel-21-4N'];
const headThickness = poppetLengths(poppetEngine(), POPPET).headThickness;

export const RUNNING_HANDBOOK: Record<string, Handbook> = {
  'engine-runs': near('common practice, no source: one large poppet does not run', 0, () =>
    figureOf(simulated('one-large-poppet'), 'engine-runs'),
  ),
  'valve-follows': between('common practice, no source: one heavy poppet does not follow', 0, 0.999, () =>
    figureOf(simulated('one-large-poppet'), 'valve-follows'),
  ),
  'steady-running': between('common practice, no source: rough above a tenth to a fifth', 0.1, 0.2, () =>
    limitOf(reed()(), 'steady-running'),
  ),
  mixture: near(
    'fuel tables: 15.68 kg of air burn 1 kg of propane',
    15.68,
    () => {
      const { engine, brief, performance } = simulated('every-flag-cylinder');
      const running = performance.running!;
      return (figureOf({ engine, brief, performance }, 'mixture') * running.airFlow) / running.fuelFlow;
    },
    2e-3,
  ),
  'books-balance': between('conservation laws: a real engine closes far inside the bound of 0.1 %', 0, 0.01, () =>
    figureOf(simulated('every-flag-cylinder'), 'books-balance'),
  ),
  'valve-life': between('common practice, no source: petal reeds last 20–60 min', 1200, 3600, () =>
    figureOf(fiftyCentimetre(), 'valve-life'),
  ),
  'seat-impact': between('compressor practice: 6–10 m/s is the limit for 10⁷ cycles (memory, medium-low)', 6, 10, () =>
    limitOf(simulated('every-flag-cylinder'), 'seat-impact'),
  ),
  'stop-impact': between('compressor practice: 6–10 m/s is the limit for 10⁷ cycles (memory, medium-low)', 6, 10, () =>
    limitOf(simulated('every-flag-cylinder'), 'stop-impact'),
  ),
  'valve-temperature': near('first law: without heat from the gas a petal is as cold as plate and charge', ROOM, () =>
    figureOf(reed(cold)(), 'valve-temperature'),
  ),
  'reed-root-stress': near(
    'beam theory: 3.516 E t δ/2L²; E 205 GPa, 0.15 × 20 mm, δ 1 mm: 135.15 MPa',
    135.15e6,
    () => PULSATING * figureOf(petal(6e-3, 1e-3, 0), 'reed-root-stress'),
    1e-3,
  ),
  'reed-stop-stress': near(
    'E t/2R: 0.15 mm steel on an arc of R 100 mm (lifts 20 mm by 1.9933 mm): 153.75 MPa',
    153.75e6,
    () => PULSATING * figureOf(petal(1.99334e-3, 1.99334e-3, 0), 'reed-stop-stress'),
    1e-3,
  ),
  'reed-port-stress': near(
    'Roark table 11.4: square plate 0.2874 p b²/t²',
    0.2874 * 0.6e5 * (16 / 0.25) ** 2,
    () =>
      PULSATING *
      figureOf(
        reed(
          all(cold, (i) => {
            i.engine.intake = { ...REED, portArea: 0.016 ** 2 };
          }),
        )(),
        'reed-port-stress',
      ),
  ),
  'reed-seat-stress': near(
    'Hunt 1960: √3 √(E ρ) is 69.48 MPa for each m/s of steel',
    69.48e6,
    () => figureOf(petal(6e-3, 1e-3, 1), 'reed-seat-stress'),
    1e-3,
  ),
  'poppet-stem-stress': near(
    'elastic impact: stress is proportional to speed (Timoshenko & Goodier)',
    2,
    () => figureOf(stems(1), 'poppet-stem-stress') / figureOf(stems(0.5), 'poppet-stem-stress'),
  ),
  'poppet-head-stress': near(
    'Timoshenko: foot of a centre-loaded plate 3P/2πt² ((1+ν) ln(a/r)+1), with the stem’s own P (fillet 1.4)',
    ((3 / (2 * Math.PI * headThickness ** 2)) *
      ((1 + VALVE_STEEL.poisson) * Math.log(POPPET.portDiameter / POPPET.stemDiameter) + 1) *
      ((Math.PI / 4) * POPPET.stemDiameter ** 2)) /
      1.4,
    () => figureOf(stems(1), 'poppet-head-stress') / figureOf(stems(1), 'poppet-stem-stress'),
  ),
  'poppet-firing-stress': near(
    'Roark: circular plate, edge supported, 3(3+ν) p a²/8t²',
    ((3 * (3 + VALVE_STEEL.poisson)) / 8) * 0.6e5 * (POPPET.portDiameter / 2 / headThickness) ** 2,
    () => PULSATING * figureOf(stems(1), 'poppet-firing-stress'),
  ),
  'poppet-weld': between(
    'EN 1993-1-9: a ground butt weld keeps at most 112/160 of the parent’s strength',
    0.4,
    0.7,
    () => {
      // Beyond the knee the whole factor acts, so allowed stresses compare as strengths.
      const allowed = (joint: 'welded' | 'one-piece') => {
        const input = stems(0.1, joint);
        input.brief.wanted.endurance = 1e6;
        return limitOf(input, 'poppet-stem-stress');
      };
      return allowed('welded') / allowed('one-piece');
    },
  ),
  'poppet-guide-wear': near(
    'Archard 1953: K F s/H, worn over half of the girth of a guide of four diameters',
    (3e-4 * (3 * POPPET.mass * 9.81) * (2 * POPPET.lift * 90 * 600)) /
      3600e6 /
      (2 * Math.PI * POPPET.stemDiameter ** 2),
    () => figureOf(poppet()(), 'poppet-guide-wear'),
  ),
};
