/** Published problems that the search is measured on. F is minimised; a design is feasible when every G is at or below 0. */
import type { SearchProblem } from '../search/outcome.ts';
import type { Variable } from '../space/architecture.ts';

export interface BenchmarkProblem extends SearchProblem {
  /** Objectives and constraints of one design. */
  evaluate(x: readonly number[]): { f: number[]; g: number[] };
}

function real(name: string, low: number, high: number): Variable {
  return { kind: 'real', name, label: name, low, high, unit: '' };
}

function reals(count: number, low: number, high: number): Variable[] {
  return Array.from({ length: count }, (_, i) => real(`x${i + 1}`, low, high));
}

function meanOfRest(x: readonly number[]): number {
  let sum = 0;
  for (let i = 1; i < x.length; i++) sum += x[i];
  return sum / (x.length - 1);
}

type Evaluate = BenchmarkProblem['evaluate'];

function problem(id: string, variables: Variable[], objectiveCount: number, evaluate: Evaluate): BenchmarkProblem {
  return { id, variables, objectiveCount, evaluate };
}

/** ZDT: Zitzler, Deb and Thiele, Evolutionary Computation 8, 2000. */
export const zdt1 = problem('ZDT1', reals(30, 0, 1), 2, (x) => {
  const g = 1 + 9 * meanOfRest(x);
  return { f: [x[0], g * (1 - Math.sqrt(x[0] / g))], g: [] };
});

export const zdt2 = problem('ZDT2', reals(30, 0, 1), 2, (x) => {
  const g = 1 + 9 * meanOfRest(x);
  return { f: [x[0], g * (1 - (x[0] / g) ** 2)], g: [] };
});

export const zdt3 = problem('ZDT3', reals(30, 0, 1), 2, (x) => {
  const g = 1 + 9 * meanOfRest(x);
  return { f: [x[0], g * (1 - Math.sqrt(x[0] / g) - (x[0] / g) * Math.sin(10 * Math.PI * x[0]))], g: [] };
});

export const zdt4 = problem('ZDT4', [real('x1', 0, 1), ...reals(9, -5, 5)], 2, (x) => {
  let g = 1 + 10 * (x.length - 1);
  for (let i = 1; i < x.length; i++) g += x[i] * x[i] - 10 * Math.cos(4 * Math.PI * x[i]);
  return { f: [x[0], g * (1 - Math.sqrt(x[0] / g))], g: [] };
});

export const zdt6 = problem('ZDT6', reals(10, 0, 1), 2, (x) => {
  const f1 = 1 - Math.exp(-4 * x[0]) * Math.sin(6 * Math.PI * x[0]) ** 6;
  const g = 1 + 9 * meanOfRest(x) ** 0.25;
  return { f: [f1, g * (1 - (f1 / g) ** 2)], g: [] };
});

/** Deb, Thiele, Laumanns and Zitzler, CEC 2002. */
export const dtlz2 = problem('DTLZ2', reals(12, 0, 1), 3, (x) => {
  let g = 0;
  for (let i = 2; i < x.length; i++) g += (x[i] - 0.5) ** 2;
  const [a, b] = [(x[0] * Math.PI) / 2, (x[1] * Math.PI) / 2];
  const radius = 1 + g;
  return {
    f: [radius * Math.cos(a) * Math.cos(b), radius * Math.cos(a) * Math.sin(b), radius * Math.sin(a)],
    g: [],
  };
});

/** Binh and Korn, 1997. */
export const bnh = problem('BNH', [real('x1', 0, 5), real('x2', 0, 3)], 2, ([a, b]) => ({
  f: [4 * a * a + 4 * b * b, (a - 5) ** 2 + (b - 5) ** 2],
  g: [(a - 5) ** 2 + b * b - 25, 7.7 - (a - 8) ** 2 - (b + 3) ** 2],
}));

/** Srinivas and Deb, Evolutionary Computation 2, 1994. */
export const srn = problem('SRN', reals(2, -20, 20), 2, ([a, b]) => ({
  f: [2 + (a - 2) ** 2 + (b - 1) ** 2, 9 * a - (b - 1) ** 2],
  g: [a * a + b * b - 225, a - 3 * b + 10],
}));

/** Tanaka, Watanabe, Furukawa and Tanino, IEEE SMC 1995. */
export const tnk = problem('TNK', reals(2, 0, Math.PI), 2, ([a, b]) => ({
  f: [a, b],
  g: [
    // At b = 0 the quotient is infinite and its arctangent π/2; at 0/0 the angle does not matter, the design is infeasible.
    -(a * a + b * b - 1 - 0.1 * Math.cos(16 * Math.atan2(a, b))),
    (a - 0.5) ** 2 + (b - 0.5) ** 2 - 0.5,
  ],
}));

/** Osyczka and Kundu, Structural Optimization 10, 1995. */
export const osy = problem(
  'OSY',
  [real('x1', 0, 10), real('x2', 0, 10), real('x3', 1, 5), real('x4', 0, 6), real('x5', 1, 5), real('x6', 0, 10)],
  2,
  ([a, b, c, d, e, f]) => ({
    f: [
      -(25 * (a - 2) ** 2 + (b - 2) ** 2 + (c - 1) ** 2 + (d - 4) ** 2 + (e - 1) ** 2),
      a * a + b * b + c * c + d * d + e * e + f * f,
    ],
    g: [2 - a - b, a + b - 6, b - a - 2, a - 3 * b - 2, (c - 3) ** 2 + d - 4, 4 - (e - 3) ** 2 - f],
  }),
);

/** Welded beam with the beam's own bending, shear, buckling and deflection limits (Ragsdell and Phillips 1976; form of Coello 2000). */
export const weldedBeam = problem(
  'welded beam',
  [real('h', 0.1, 2), real('l', 0.1, 10), real('t', 0.1, 10), real('b', 0.1, 2)],
  1,
  ([h, l, t, b]) => {
    const [load, length, young, shearModulus] = [6000, 14, 30e6, 12e6];
    const direct = load / (Math.SQRT2 * h * l);
    const radius = Math.sqrt((l * l) / 4 + ((h + t) / 2) ** 2);
    const moment = load * (length + l / 2);
    const polar = 2 * Math.SQRT2 * h * l * ((l * l) / 12 + ((h + t) / 2) ** 2);
    const torsion = (moment * radius) / polar;
    const shear = Math.sqrt(direct ** 2 + (direct * torsion * l) / radius + torsion ** 2);
    const bending = (6 * load * length) / (b * t * t);
    const deflection = (4 * load * length ** 3) / (young * t ** 3 * b);
    const buckling =
      ((4.013 * young * Math.sqrt((t * t * b ** 6) / 36)) / length ** 2) *
      (1 - (t / (2 * length)) * Math.sqrt(young / (4 * shearModulus)));
    return {
      f: [1.10471 * h * h * l + 0.04811 * t * b * (14 + l)],
      g: [
        shear - 13600,
        bending - 30000,
        h - b,
        0.10471 * h * h + 0.04811 * t * b * (14 + l) - 5,
        0.125 - h,
        deflection - 0.25,
        load - buckling,
      ],
    };
  },
);

/** Pressure vessel whose shell and head come in steps of 1/16 inch (Sandgren 1990). */
export const pressureVessel = problem(
  'pressure vessel',
  [
    { kind: 'integer', name: 'shell', label: 'shell', low: 1, high: 99, unit: '' },
    { kind: 'integer', name: 'head', label: 'head', low: 1, high: 99, unit: '' },
    real('radius', 10, 200),
    real('length', 10, 200),
  ],
  1,
  ([shellSteps, headSteps, r, l]) => {
    const [s, h] = [shellSteps / 16, headSteps / 16];
    return {
      f: [0.6224 * s * r * l + 1.7781 * h * r * r + 3.1661 * s * s * l + 19.84 * s * s * r],
      g: [0.0193 * r - s, 0.00954 * r - h, 1_296_000 - Math.PI * r * r * l - (4 / 3) * Math.PI * r ** 3, l - 240],
    };
  },
);

/** Tension spring: wire diameter, coil diameter, active coils (Belegundu 1982; Arora 1989). */
export const tensionSpring = problem(
  'tension spring',
  [real('d', 0.05, 2), real('D', 0.25, 1.3), real('N', 2, 15)],
  1,
  ([d, D, n]) => ({
    f: [(n + 2) * D * d * d],
    g: [
      1 - (D ** 3 * n) / (71785 * d ** 4),
      (4 * D * D - d * D) / (12566 * (D * d ** 3 - d ** 4)) + 1 / (5108 * d * d) - 1,
      1 - (140.45 * d) / (D * D * n),
      (D + d) / 1.5 - 1,
    ],
  }),
);

/** Three-bar truss (Nowcki 1974). */
export const threeBarTruss = problem('three-bar truss', reals(2, 0, 1), 1, ([a, b]) => {
  const root2 = Math.SQRT2;
  const below = root2 * a * a + 2 * a * b;
  return {
    f: [(2 * root2 * a + b) * 100],
    g: [((root2 * a + b) / below) * 2 - 2, (b / below) * 2 - 2, (1 / (root2 * b + a)) * 2 - 2],
  };
});
