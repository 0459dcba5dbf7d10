/**
 * Exact developments of the surfaces that sheet can be rolled into. Plane numbers, no outlines; metres and radians.
 *
 * Diameters here are those of the neutral surface, which for thin sheet lies in the middle of its thickness:
 * inside diameter + thickness. All parts use the same rule, so that edges that meet have equal lengths.
 */

/** Diameter of the neutral (middle) surface, m. */
export function neutralDiameter(insideDiameter: number, thickness: number): number {
  return insideDiameter + thickness;
}

/** Width and height of the smallest upright rectangle, m. */
export interface Box {
  width: number;
  height: number;
}

export interface CylinderDevelopment {
  kind: 'cylinder';
  circumference: number;
  length: number;
  area: number;
  box: Box;
}

export interface ConeDevelopment {
  kind: 'cone';
  /** Length of a generator, m. */
  slant: number;
  /** Radii of the sector's outer and inner arcs, m. */
  outerRadius: number;
  innerRadius: number;
  /** Angle of the sector, rad. */
  angle: number;
  area: number;
  box: Box;
}

/** Unrolls a right circular cylinder: circumference π d by length. */
export function developCylinder(diameter: number, length: number): CylinderDevelopment {
  requirePositive({ diameter, length });
  const circumference = Math.PI * diameter;
  return {
    kind: 'cylinder',
    circumference,
    length,
    area: circumference * length,
    box: { width: circumference, height: length },
  };
}

/**
 * Unrolls a frustum of a right circular cone into a sector:
 * slant s = √(h² + ((D−d)/2)²), R = s D/(D−d), r = R − s, angle = π D/R.
 * Exact; the relation is the elementary development of a cone. Throws when the diameters are equal (use a cylinder).
 */
export function developCone(largeDiameter: number, smallDiameter: number, height: number): ConeDevelopment {
  requirePositive({ largeDiameter, smallDiameter, height });
  const difference = largeDiameter - smallDiameter;
  if (!(difference > 0)) {
    throw new Error(`a cone needs a larger and a smaller diameter, got ${largeDiameter} m and ${smallDiameter} m`);
  }
  const slant = Math.hypot(height, difference / 2);
  const outerRadius = (slant * largeDiameter) / difference;
  const innerRadius = (slant * smallDiameter) / difference;
  const angle = (Math.PI * largeDiameter) / outerRadius;
  return {
    kind: 'cone',
    slant,
    outerRadius,
    innerRadius,
    angle,
    area: (angle / 2) * (outerRadius ** 2 - innerRadius ** 2),
    box: sectorBox(outerRadius, innerRadius, angle),
  };
}

/** Smallest rectangle with a side square to the sector's middle line. */
export function sectorBox(outerRadius: number, innerRadius: number, angle: number): Box {
  const half = angle / 2;
  const width = 2 * outerRadius * (half >= Math.PI / 2 ? 1 : Math.sin(half));
  const lowest = Math.cos(half) >= 0 ? innerRadius * Math.cos(half) : outerRadius * Math.cos(half);
  return { width, height: outerRadius - lowest };
}

/** A cylinder when both diameters agree within a micrometre, else a cone. */
export function developSection(startDiameter: number, endDiameter: number, length: number) {
  if (Math.abs(startDiameter - endDiameter) < 1e-6) return developCylinder(startDiameter, length);
  return developCone(Math.max(startDiameter, endDiameter), Math.min(startDiameter, endDiameter), length);
}

export interface BendDevelopment {
  /** Mitre joints; full gores between them: mitres − 1; half gores at the two ends. */
  mitres: number;
  /** Half of the turn at one mitre, rad. */
  mitreHalfAngle: number;
  circumference: number;
  /** Half the gore's length along its axis at the outside (back), centreline and inside (throat) of the bend, m. */
  halfBack: number;
  halfCentre: number;
  halfThroat: number;
  /** Area of one full gore, m²; a half gore has half of it. */
  goreArea: number;
  goreBox: Box;
  halfGoreBox: Box;
}

/**
 * Unrolls a segmented (mitred) bend of one diameter: each gore is a cylinder cut by two planes. A mitre plane tilted by
 * α cuts the generator at angle ψ from the throat at h(ψ) = tan α (R − r cos ψ) from the gore's middle.
 * Throws when the bend is so tight that the throat of a gore vanishes.
 */
export function developBend(diameter: number, angle: number, centreRadius: number, mitres: number): BendDevelopment {
  requirePositive({ diameter, angle, centreRadius, mitres });
  const radius = diameter / 2;
  const mitreHalfAngle = angle / (2 * mitres);
  const slope = Math.tan(mitreHalfAngle);
  const halfThroat = slope * (centreRadius - radius);
  if (!(halfThroat > 0)) {
    throw new Error(
      `a bend of centreline radius ${centreRadius} m is too tight for a duct of ${diameter} m: the gores have no throat`,
    );
  }
  const halfBack = slope * (centreRadius + radius);
  const halfCentre = slope * centreRadius;
  const circumference = Math.PI * diameter;
  return {
    mitres,
    mitreHalfAngle,
    circumference,
    halfBack,
    halfCentre,
    halfThroat,
    goreArea: 2 * circumference * halfCentre,
    goreBox: { width: circumference, height: 2 * halfBack },
    halfGoreBox: { width: circumference, height: halfBack },
  };
}

function requirePositive(values: Record<string, number>): void {
  for (const [name, value] of Object.entries(values)) {
    if (!(value > 0) || !Number.isFinite(value)) throw new Error(`${name} must be a positive number, got ${value}`);
  }
}
