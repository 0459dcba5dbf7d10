/** Where the petals and ports of a reed valve lie: one petal wheel on the plate when they fit, else rows on wedge panels. */
import type { Engine, ReedIntake } from '../engine/engine.ts';
import { CLAMP_DEPTH, PETAL_SLIT, PLATE_RIM, SEAT_LAND } from './proportions.ts';

/** Petals radiate from a clamped hub; all lie in one wheel cut from one piece of strip. Radii, m. */
export interface WheelLayout {
  kind: 'wheel';
  petals: number;
  /** Radius of the clamp edge, from which the free length counts. */
  rootRadius: number;
  tipRadius: number;
  /** Petal width at clamp edge and at tip; their mean is the petal's stated width. */
  rootWidth: number;
  tipWidth: number;
  /** Centre hole for the clamp screw. */
  hubHole: number;
}

/** Petals side by side in rows; each row lies on its own wedge panel. Lengths, m. */
export interface RowLayout {
  kind: 'rows';
  petals: number;
  perRow: number;
  rows: number;
  pitch: number;
  width: number;
  freeLength: number;
  /** Part of the strip that lies under the clamp. */
  clampDepth: number;
  panelWidth: number;
  panelLength: number;
  /** Openings of the valve plate, each under a pair of panels that lean together; centred on x = 0. */
  windows: { y: number; width: number; height: number }[];
  /** Whether the windows lie inside the chamber. */
  fits: boolean;
  /** Why one wheel does not hold them. */
  reason: string;
}

export type PetalLayout = WheelLayout | RowLayout;

/** Lays out the petals of a reed intake on a plate of the chamber's inside diameter. */
export function petalLayout(engine: Engine, intake: ReedIntake): PetalLayout {
  const plateDiameter = engine.sections[0].startDiameter;
  return wheelLayout(intake, plateDiameter) ?? rowLayout(intake, plateDiameter);
}

function wheelLayout(intake: ReedIntake, plateDiameter: number): WheelLayout | null {
  if (intake.petals < 3) return null;
  const half = Math.PI / intake.petals;
  const hubHole = plateDiameter < 0.1 ? 0.005 : 0.0066;
  const smallestRoot = 1.6 * hubHole;
  // Straight sides need this room at mid-length; at the root the petal narrows to what the sector gives.
  const middleRadius = (intake.width + PETAL_SLIT) / (2 * Math.tan(half));
  const straightRoot = middleRadius;
  const taperedRoot = middleRadius - intake.length / 2;
  const largestRoot = plateDiameter / 2 - PLATE_RIM - intake.length;
  const rootRadius = Math.max(smallestRoot, Math.min(straightRoot, largestRoot));
  if (rootRadius > largestRoot || rootRadius < taperedRoot - 1e-12) return null;
  const sectorWidth = 2 * rootRadius * Math.tan(half) - PETAL_SLIT;
  const rootWidth = Math.min(intake.width, sectorWidth);
  if (rootWidth < 0.25 * intake.width) return null;
  return {
    kind: 'wheel',
    petals: intake.petals,
    rootRadius,
    tipRadius: rootRadius + intake.length,
    rootWidth,
    tipWidth: 2 * intake.width - rootWidth,
    hubHole,
  };
}

/** Panels of a wedge lean together at this half angle, rad; common practice, no source. */
const WEDGE_HALF_ANGLE = Math.PI / 12;

function rowLayout(intake: ReedIntake, plateDiameter: number): RowLayout {
  const pitch = intake.width + 4 * SEAT_LAND;
  const perRow = Math.max(1, Math.min(intake.petals, Math.floor((0.8 * plateDiameter) / pitch)));
  const rows = Math.ceil(intake.petals / perRow);
  const panelWidth = perRow * pitch + 2 * SEAT_LAND;
  const panelLength = intake.length + CLAMP_DEPTH + 3 * SEAT_LAND;
  const pairs = Math.ceil(rows / 2);
  const height = 2 * panelLength * Math.sin(WEDGE_HALF_ANGLE);
  const step = height + 2 * SEAT_LAND;
  const windows = Array.from({ length: pairs }, (_, i) => ({
    y: step * (i - (pairs - 1) / 2),
    width: panelWidth,
    height,
  }));
  const corner = Math.hypot(panelWidth / 2, windows[pairs - 1].y + height / 2);
  return {
    kind: 'rows',
    petals: intake.petals,
    perRow,
    rows,
    pitch,
    width: intake.width,
    freeLength: intake.length,
    clampDepth: CLAMP_DEPTH,
    panelWidth,
    panelLength,
    windows,
    fits: corner <= plateDiameter / 2 - PLATE_RIM,
    reason: `${intake.petals} petals of ${mm(intake.width)} × ${mm(intake.length)} mm do not fit one wheel inside ${mm(plateDiameter)} mm`,
  };
}

const mm = (metres: number): string => (metres * 1e3).toFixed(1);

/** Net area of the wheel, m²: hub polygon and petals, less the centre hole. Corner rounding is left out (below 1 %). */
export function wheelArea(layout: WheelLayout): number {
  const half = Math.PI / layout.petals;
  const hub = layout.petals * layout.rootRadius ** 2 * Math.tan(half);
  const petal = ((layout.rootWidth + layout.tipWidth) / 2) * (layout.tipRadius - layout.rootRadius);
  return hub + layout.petals * petal - (Math.PI / 4) * layout.hubHole ** 2;
}

/** Net area of one single petal with its clamped end, m². */
export function rowStripArea(layout: RowLayout): number {
  return layout.width * (layout.freeLength + layout.clampDepth);
}
