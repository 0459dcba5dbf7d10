/** Where poppet heads lie on the seat plate, and the lengths of head, stem, guide and spring that the design implies. */
import type { Engine, PoppetIntake } from '../engine/engine.ts';
import { densityOf, SPRING_WIRE } from './density.ts';
import { plateThickness } from './proportions.ts';

/** Shear modulus of unalloyed spring wire at room temperature, Pa. Source: EN 13906-1, 81.5 GPa (memory, high). */
const SPRING_SHEAR_MODULUS = 81.5e9;
/** Web of plate left between neighbouring heads, m. */
const HEAD_SPACING = 0.002;

export interface PoppetLayout {
  /** Centres of the ports on the seat plate, m. */
  centres: { x: number; y: number }[];
  /** Radius of the circle that holds all heads, m, and whether the chamber has that room. */
  enclosingRadius: number;
  fits: boolean;
}

export interface PoppetLengths {
  headThickness: number;
  stemLength: number;
  guideLength: number;
  retainerDiameter: number;
  retainerThickness: number;
  /** kg. */
  headMass: number;
  stemMass: number;
  retainerMass: number;
  spring: SpringWire;
}

/** Cylindrical compression spring. Lengths, m. */
export interface SpringWire {
  wireDiameter: number;
  meanCoilDiameter: number;
  activeCoils: number;
  freeLength: number;
  installedLength: number;
  wireLength: number;
}

/** Lays out the heads: one in the middle, or rings, whichever needs the smallest circle. */
export function poppetLayout(engine: Engine, intake: PoppetIntake): PoppetLayout {
  const pitch = intake.headDiameter + HEAD_SPACING;
  const patterns = ringPatterns(intake.valves).map((rings) => placeRings(rings, pitch));
  const reach = (centres: { x: number; y: number }[]) => Math.max(...centres.map((c) => Math.hypot(c.x, c.y)));
  const centres = patterns.reduce((best, next) => (reach(next) < reach(best) - 1e-12 ? next : best));
  const enclosingRadius = reach(centres) + intake.headDiameter / 2;
  return { centres, enclosingRadius, fits: enclosingRadius <= engine.sections[0].startDiameter / 2 - 0.001 };
}

/** Ways to share n heads between a centre and rings: counts from the middle outwards. */
function ringPatterns(n: number): number[][] {
  if (n === 1) return [[1]];
  const patterns: number[][] = [[0, n]];
  if (n >= 4) patterns.push([1, n - 1]);
  for (let inner = 2; inner <= Math.min(6, n - 3); inner++) {
    patterns.push([0, inner, n - inner]);
    if (n - inner - 1 > inner) patterns.push([1, inner, n - inner - 1]);
  }
  return patterns;
}

function placeRings(rings: number[], pitch: number): { x: number; y: number }[] {
  const centres: { x: number; y: number }[] = [];
  let radius = 0;
  rings.forEach((count, k) => {
    if (count === 0) return;
    if (k === 0) {
      centres.push({ x: 0, y: 0 });
      return;
    }
    const ownSpacing = count === 1 ? 0 : pitch / (2 * Math.sin(Math.PI / count));
    radius = Math.max(ownSpacing, centres.length > 0 ? radius + pitch : 0);
    for (let i = 0; i < count; i++) {
      const angle = Math.PI / 2 + (2 * Math.PI * i) / count;
      centres.push({ x: radius * Math.cos(angle), y: radius * Math.sin(angle) });
    }
  });
  return centres;
}

/**
 * Splits the stated moving mass into head, stem and retainer, and finds the spring wire.
 * Guide four and coil three stem diameters: common practice, no source. The head takes what mass is left.
 */
export function poppetLengths(engine: Engine, intake: PoppetIntake): PoppetLengths {
  const stem = intake.stemDiameter;
  const density = densityOf(intake.material);
  const spring = springWire(intake, 3 * stem);
  const guideLength = 4 * stem;
  const retainerDiameter = 3.8 * stem;
  const retainerThickness = 0.4 * stem;
  const plate = plateThickness(engine.sections[0].startDiameter);
  const stemLength = plate + guideLength + spring.installedLength + 2 * retainerThickness;
  let stemMass = density * (Math.PI / 4) * stem ** 2 * stemLength;
  let retainerMass = density * (Math.PI / 4) * (retainerDiameter ** 2 - stem ** 2) * retainerThickness;
  const thinnest = densityOf(intake.material) * (Math.PI / 4) * intake.headDiameter ** 2 * 0.0005;
  let headMass = intake.mass - stemMass - retainerMass;
  if (headMass < thinnest) {
    // Less than a solid stem leaves for the head: the stem and retainer are drilled hollow to keep the stated mass.
    headMass = Math.min(thinnest, 0.6 * intake.mass);
    const share = (intake.mass - headMass) / (stemMass + retainerMass);
    stemMass *= share;
    retainerMass *= share;
  }
  return {
    headThickness: headMass / (density * (Math.PI / 4) * intake.headDiameter ** 2),
    stemLength,
    guideLength,
    retainerDiameter,
    retainerThickness,
    headMass,
    stemMass,
    retainerMass,
    spring,
  };
}

/**
 * Wire and coils that have both the stated rate k = G d⁴/(8 D³ n) and the stated mass m = ρ π² d² D n/4.
 * Source of the rate: EN 13906-1. Two dead coils are added.
 */
export function springWire(intake: PoppetIntake, meanCoilDiameter: number): SpringWire {
  const density = densityOf(SPRING_WIRE);
  const D = meanCoilDiameter;
  const { springMass: m, springRate: k, preload, lift } = intake;
  const d = ((32 * D ** 2 * m * k) / (SPRING_SHEAR_MODULUS * density * Math.PI ** 2)) ** (1 / 6);
  const n = (4 * m) / (density * Math.PI ** 2 * d ** 2 * D);
  const travel = preload / k + lift;
  const freeLength = (n + 2) * d * 1.1 + travel;
  return {
    wireDiameter: d,
    meanCoilDiameter: D,
    activeCoils: n,
    freeLength,
    installedLength: freeLength - preload / k,
    wireLength: Math.PI * D * (n + 2),
  };
}
