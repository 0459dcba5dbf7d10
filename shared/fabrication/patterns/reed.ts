/** Patterns of a reed intake: valve plate with ports, petal wheel or petals, curved stop, wedge panels. */
import type { Engine, ReedIntake } from '../../engine/engine.ts';
import { petalLayout, type RowLayout, type WheelLayout } from '../petal-layout.ts';
import { SEAT_LAND } from '../proportions.ts';
import { panelThickness, stopThickness } from '../reed-parts.ts';
import { type Corner, filletPolygon } from './fillet.ts';
import { circle, line, type Outline, outlineArea, type Point } from './outline.ts';
import type { Pattern } from './pattern.ts';
import { headPlatePattern } from './plates.ts';

const ORIGIN: Point = { x: 0, y: 0 };

export function reedPatterns(engine: Engine, intake: ReedIntake): Pattern[] {
  const layout = petalLayout(engine, intake);
  return layout.kind === 'wheel' ? wheelPatterns(engine, intake, layout) : rowPatterns(engine, intake, layout);
}

/** Direction of petal k, the first one at the top. */
export const petalDirection = (k: number, petals: number): number => Math.PI / 2 + (2 * Math.PI * k) / petals;

/** Outer outline of the petal wheel with rounded roots and tips. */
export function wheelOutline(layout: WheelLayout): Outline {
  const corners: Corner[] = [];
  const rootRounding = 0.001;
  const tipRounding = 0.2 * layout.tipWidth;
  for (let k = 0; k < layout.petals; k++) {
    const place = placeAlong(petalDirection(k, layout.petals));
    corners.push(
      { ...place(layout.rootRadius, -layout.rootWidth / 2), radius: rootRounding },
      { ...place(layout.tipRadius, -layout.tipWidth / 2), radius: tipRounding },
      { ...place(layout.tipRadius, layout.tipWidth / 2), radius: tipRounding },
      { ...place(layout.rootRadius, layout.rootWidth / 2), radius: rootRounding },
    );
  }
  return filletPolygon(corners);
}

export interface PortFit {
  /** Seat left between the port and the petal's sides and tip, m. */
  land: number;
  outlines: Outline[];
  warning: string | null;
}

/** Ports under the wheel's petals: the petal's own shape moved inwards until the area is the stated one. */
export function wheelPorts(layout: WheelLayout, portArea: number): PortFit {
  const shape = (land: number, k: number): Outline => {
    const place = placeAlong(petalDirection(k, layout.petals));
    const inner = layout.rootRadius + Math.max(land, SEAT_LAND);
    const outer = layout.tipRadius - land;
    const halfAt = (radius: number) =>
      (layout.rootWidth +
        ((layout.tipWidth - layout.rootWidth) * (radius - layout.rootRadius)) /
          (layout.tipRadius - layout.rootRadius)) /
        2 -
      land;
    return roundedQuad(place, inner, outer, halfAt(inner), halfAt(outer));
  };
  const widest = Math.min(layout.rootWidth, layout.tipWidth) / 2;
  return fitPorts(
    (land) => outlineArea(shape(land, 0)),
    portArea,
    widest,
    (land) => Array.from({ length: layout.petals }, (_, k) => shape(land, k)),
  );
}

/** One port in coordinates of a petal whose clamp edge lies at y = 0 and whose tip lies at y = free length. */
export function rowPort(layout: RowLayout, portArea: number): PortFit {
  const place = (along: number, across: number): Point => ({ x: -across, y: along });
  const shape = (land: number) =>
    roundedQuad(
      place,
      Math.max(land, SEAT_LAND),
      layout.freeLength - land,
      layout.width / 2 - land,
      layout.width / 2 - land,
    );
  return fitPorts(
    (land) => outlineArea(shape(land)),
    portArea,
    layout.width / 2,
    (land) => [shape(land)],
  );
}

function roundedQuad(
  place: (along: number, across: number) => Point,
  inner: number,
  outer: number,
  innerHalf: number,
  outerHalf: number,
): Outline {
  const radius = 0.3 * Math.min(innerHalf, outerHalf);
  return filletPolygon(
    [place(inner, -innerHalf), place(outer, -outerHalf), place(outer, outerHalf), place(inner, innerHalf)].map((p) => ({
      ...p,
      radius,
    })),
  );
}

/** Bisects for the land that gives one port its stated area. */
function fitPorts(
  areaAt: (land: number) => number,
  wanted: number,
  widest: number,
  outlines: (land: number) => Outline[],
): PortFit {
  let low = 1e-5;
  let high = 0.98 * widest;
  if (areaAt(low) < wanted) {
    return {
      land: low,
      outlines: outlines(low),
      warning: `A port of ${(wanted * 1e6).toFixed(1)} mm² does not fit under its petal; the largest that does is drawn (${(areaAt(low) * 1e6).toFixed(1)} mm²).`,
    };
  }
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (areaAt(middle) > wanted) low = middle;
    else high = middle;
  }
  const land = (low + high) / 2;
  const warning =
    land < SEAT_LAND
      ? `Only ${(land * 1e3).toFixed(2)} mm of seat remain round each port; ${(SEAT_LAND * 1e3).toFixed(1)} mm is common practice.`
      : null;
  return { land, outlines: outlines(land), warning };
}

/** Radius of the circular stop over which a petal of free length L lifts its tip by δ: δ = ρ (1 − cos(L/ρ)). */
export function stopRadius(freeLength: number, tipLift: number): number {
  let low = freeLength / Math.PI;
  let high = freeLength ** 2 / tipLift + freeLength;
  for (let i = 0; i < 80; i++) {
    const middle = (low + high) / 2;
    if (middle * (1 - Math.cos(freeLength / middle)) > tipLift) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

function wheelPatterns(engine: Engine, intake: ReedIntake, layout: WheelLayout): Pattern[] {
  const ports = wheelPorts(layout, intake.portArea);
  const hub = circle(ORIGIN, layout.hubHole / 2);
  const clampEdge = {
    kind: 'arc' as const,
    centre: ORIGIN,
    radius: layout.rootRadius,
    start: 0,
    sweep: 2 * Math.PI,
  };
  const wheel = { count: 1, outlines: [wheelOutline(layout), hub], labels: [], mating: [] };
  return [
    headPlatePattern(engine, 'Valve plate', {
      outlines: [hub, ...ports.outlines],
      marks: [
        { layer: 'MARK', edge: clampEdge },
        ...wheelOutline(layout).edges.map((edge) => ({ layer: 'MARK' as const, edge })),
      ],
      notes: [
        `${layout.petals} ports of ${(intake.portArea * 1e6).toFixed(1)} mm², ${mm(ports.land)} mm of seat round each; scribed line: petal wheel.`,
        ...(ports.warning ? [ports.warning] : []),
      ],
    }),
    {
      ...wheel,
      id: 'petal-wheel',
      name: 'Petal wheel',
      material: intake.material,
      thickness: intake.thickness,
      marks: [{ layer: 'MARK', edge: clampEdge }],
      notes: [
        `Clamped inside the scribed circle, Ø ${mm(2 * layout.rootRadius)} mm; free length ${mm(intake.length)} mm. Polish all edges along the petals.`,
      ],
    },
    {
      ...wheel,
      id: 'stop-plate',
      name: 'Stop plate, curved',
      material: engine.shell.material,
      thickness: stopThickness(intake),
      marks: [{ layer: 'BEND', edge: clampEdge }],
      notes: [
        `Roll each finger from the bend circle outwards to a radius of ${mm(stopRadius(intake.length, intake.stopLift))} mm: its tip then stands ${mm(intake.stopLift)} mm off the plate.`,
      ],
    },
  ];
}

function rowPatterns(engine: Engine, intake: ReedIntake, layout: RowLayout): Pattern[] {
  const port = rowPort(layout, intake.portArea);
  const stripLength = layout.freeLength + layout.clampDepth;
  const petalX = (i: number) => SEAT_LAND + layout.pitch * (i + 0.5);
  const clampY = SEAT_LAND + layout.clampDepth;
  const shift = (outline: Outline, dx: number, dy: number): Outline => ({
    edges: outline.edges.map((e) => moveEdge(e, dx, dy)),
  });
  const rectangle = (x: number, y: number, w: number, h: number, radius = 0): Outline =>
    filletPolygon([
      { x, y, radius },
      { x: x + w, y, radius },
      { x: x + w, y: y + h, radius },
      { x, y: y + h, radius },
    ]);
  const row = Array.from({ length: layout.perRow }, (_, i) => i);
  const windows = layout.windows.map((w) => rectangle(-w.width / 2, w.y - w.height / 2, w.width, w.height, 0.001));
  const common = { labels: [], mating: [] };
  return [
    headPlatePattern(engine, 'Valve plate', {
      outlines: windows,
      marks: [],
      notes: [
        `${layout.reason}: ${layout.rows} wedge panels of up to ${layout.perRow} petals stand in ${windows.length} windows.`,
        ...(layout.fits ? [] : ['The windows do not fit the plate: too many petals for this chamber.']),
      ],
    }),
    {
      ...common,
      id: 'wedge-panel',
      name: 'Wedge panel with ports',
      count: layout.rows,
      material: engine.shell.material,
      thickness: panelThickness(engine),
      outlines: [
        rectangle(0, 0, layout.panelWidth, layout.panelLength),
        ...row.flatMap((i) => port.outlines.map((o) => shift(o, petalX(i), clampY))),
      ],
      marks: [
        { layer: 'MARK', edge: line({ x: 0, y: clampY }, { x: layout.panelWidth, y: clampY }) },
        ...row.flatMap((i) =>
          rectangle(petalX(i) - layout.width / 2, SEAT_LAND, layout.width, stripLength).edges.map((edge) => ({
            layer: 'MARK' as const,
            edge,
          })),
        ),
      ],
      notes: [
        `Scribed: petals and clamp edge; ${mm(port.land)} mm of seat round each port of ${(intake.portArea * 1e6).toFixed(1)} mm².`,
        ...(port.warning ? [port.warning] : []),
      ],
    },
    {
      ...common,
      id: 'petal',
      name: 'Petal',
      count: intake.petals,
      material: intake.material,
      thickness: intake.thickness,
      outlines: [
        filletPolygon([
          { x: 0, y: 0, radius: 0 },
          { x: layout.width, y: 0, radius: 0 },
          { x: layout.width, y: stripLength, radius: 0.2 * layout.width },
          { x: 0, y: stripLength, radius: 0.2 * layout.width },
        ]),
      ],
      marks: [{ layer: 'MARK', edge: line({ x: 0, y: layout.clampDepth }, { x: layout.width, y: layout.clampDepth }) }],
      notes: [
        `Clamped below the scribed line; free length ${mm(layout.freeLength)} mm. Polish all edges along the petal.`,
      ],
    },
    {
      ...common,
      id: 'stop-strip',
      name: 'Stop strip, curved',
      count: layout.rows,
      material: engine.shell.material,
      thickness: stopThickness(intake),
      outlines: [rectangle(0, 0, layout.panelWidth, stripLength)],
      marks: [
        { layer: 'BEND', edge: line({ x: 0, y: layout.clampDepth }, { x: layout.panelWidth, y: layout.clampDepth }) },
      ],
      notes: [
        `Roll from the bend line upwards to a radius of ${mm(stopRadius(intake.length, intake.stopLift))} mm: the edge then stands ${mm(intake.stopLift)} mm off the panel.`,
      ],
    },
  ];
}

function moveEdge(edge: Outline['edges'][number], dx: number, dy: number): Outline['edges'][number] {
  const move = (p: Point): Point => ({ x: p.x + dx, y: p.y + dy });
  if (edge.kind === 'line') return line(move(edge.from), move(edge.to));
  if (edge.kind === 'arc') return { ...edge, centre: move(edge.centre) };
  return { kind: 'polyline', points: edge.points.map(move) };
}

/** Frame of one petal: distance along its axis from the plate's centre, and across it. */
function placeAlong(direction: number): (along: number, across: number) => Point {
  const c = Math.cos(direction);
  const s = Math.sin(direction);
  return (along, across) => ({ x: along * c - across * s, y: along * s + across * c });
}

const mm = (metres: number): string => (metres * 1e3).toFixed(2).replace(/\.?0+$/, '');
