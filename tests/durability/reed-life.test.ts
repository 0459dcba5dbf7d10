import { describe, expect, it } from 'vitest';
import { fatigueStrength } from '../../shared/durability/basquin.ts';
import { EDGE_FACTOR, groundSurfaceFactor } from '../../shared/durability/fatigue-factors.ts';
import { FREE_END_SHARE, stripImpactStress } from '../../shared/durability/impact-stress.ts';
import { reedSites } from '../../shared/durability/reed-stress.ts';
import { stripLives, valveLife } from '../../shared/durability/valve-life.ts';
import { VALVE_MATERIALS } from '../../shared/durability/valve-materials.ts';
import type { ReedIntake } from '../../shared/engine/engine.ts';
import { inputOf, reedEngine } from '../checks/fixtures.ts';

/** Ten-petal disc of a 50-cm engine: open theses (NC State 2006), from memory, confidence medium. */
const PETAL: ReedIntake = {
  kind: 'reed',
  petals: 10,
  length: 0.02,
  width: 0.009,
  thickness: 0.15e-3,
  material: 'AISI-1095',
  stopLift: 3.5e-3,
  portArea: 44e-6,
};

const engineWith = (seat: number, stop: number) => {
  const engine = { ...reedEngine(), intake: PETAL };
  const { performance } = inputOf(engine, (_, r) => {
    r.frequency = 240;
    Object.assign(r.valve!, {
      seatImpactSpeed: seat,
      stopImpactSpeed: stop,
      peakLift: PETAL.stopLift,
      stopLift: PETAL.stopLift,
    });
  });
  return { engine, running: performance.running! };
};
const minutes = (seat: number, stop: number) => {
  const { engine, running } = engineWith(seat, stop);
  const { low, median, high } = valveLife(engine, running).band;
  return [low, median, high].map((seconds) => seconds / 60);
};

describe('blow on a free end', () => {
  it('is the greatest of (2√2/√π) ∫ sin(π/4 − 2u²) du, the bending wave in a half-infinite strip (closed form)', () => {
    const steps = 20_000;
    const end = Math.sqrt(Math.PI / 8);
    let integral = 0;
    for (let k = 0; k < steps; k++) integral += Math.sin(Math.PI / 4 - 2 * ((end * (k + 0.5)) / steps) ** 2);
    const greatest = ((2 * Math.SQRT2) / Math.sqrt(Math.PI)) * (end / steps) * integral;
    expect(FREE_END_SHARE).toBeCloseTo(greatest, 4);
  });
});

describe('reeds against practice', () => {
  it('tumbled 1095 strip bears 10⁷ blows at 6–10 m/s (compressor practice, from memory, medium-low), nothing fitted', () => {
    const { fatigue, modulus, density, ultimate } = VALVE_MATERIALS['AISI-1095'];
    const strength = fatigueStrength(fatigue, 1e7, groundSurfaceFactor(ultimate.value[0]) * EDGE_FACTOR.polished);
    const speed = strength / stripImpactStress(modulus.value[0], density, 1);
    expect(speed).toBeGreaterThan(6);
    expect(speed).toBeLessThan(10);
  });
  it('petals of a 50-cm engine, 6 m/s on the seat and 9.5 m/s on the stop, last 20–60 min (common practice, no source)', () => {
    const [low, median, high] = minutes(6, 9.5);
    expect(median).toBeGreaterThan(20);
    expect(median).toBeLessThan(60);
    expect(low).toBeLessThan(20);
    expect(high).toBeGreaterThan(60);
  });
  it('overstressed petals fail in about 2 min (Univ. Limerick 2010): half as fast again is minutes, not an hour', () => {
    const [, median] = minutes(9, 14.25);
    expect(median).toBeGreaterThan(2 / 3);
    expect(median).toBeLessThan(6);
  });
  it('the place over the stop feels stop and seat in one period', () => {
    const { running } = engineWith(6, 9.5);
    const site = (id: string) => reedSites(PETAL, running.valve!, 293).find((s) => s.id === id)!;
    expect(site('stop').minimum).toBeCloseTo(site('seat').minimum, 0);
    expect(site('stop').cycles).toBeLessThan(site('seat').cycles);
  });
});

it('the same petal lives longer the higher the fatigue strength of its strip: 420, 1095, 301', () => {
  const { engine, running } = engineWith(6, 9.5);
  const lives = stripLives(engine, running);
  expect(lives.map((life) => life.material)).toEqual(['AISI-420', 'AISI-1095', 'AISI-301-full-hard']);
  expect(lives[1].band).toEqual(valveLife(engine, running).band);
});
