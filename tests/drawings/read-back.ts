/** Independent readers for tests: geometry out of DXF and SVG text, in mm. They share no code with the writers. */
import DxfParser from 'dxf-parser';

export interface ReadLoop {
  layer: string;
  length: number;
  /** Signed area, mm². */
  area: number;
}

interface Vertex {
  x: number;
  y: number;
  bulge?: number;
}

/** Closed loops of a DXF file with exact length and area of bulged polylines and circles, and its layer names. */
export function readDxf(text: string): {
  loops: ReadLoop[];
  layers: string[];
  units: unknown;
  entities: Record<string, number>;
} {
  const dxf = new DxfParser().parseSync(text);
  if (!dxf) throw new Error('the DXF does not parse');
  const loops: ReadLoop[] = [];
  const entities: Record<string, number> = {};
  for (const entity of dxf.entities) {
    entities[`${entity.layer} ${entity.type}`] = (entities[`${entity.layer} ${entity.type}`] ?? 0) + 1;
    const e = entity as unknown as { type: string; layer: string; vertices: Vertex[]; shape: boolean; radius: number };
    if (e.type === 'CIRCLE') {
      loops.push({ layer: e.layer, length: 2 * Math.PI * e.radius, area: Math.PI * e.radius ** 2 });
    } else if (e.type === 'LWPOLYLINE' && e.shape) {
      loops.push({ layer: e.layer, ...bulgedLoop(e.vertices) });
    }
  }
  return { loops, layers: Object.keys(dxf.tables.layer.layers), units: dxf.header.$INSUNITS, entities };
}

/** A bulge is the tangent of a quarter of the arc's angle, positive to the left of the chord. */
function bulgedLoop(vertices: Vertex[]): { length: number; area: number } {
  let length = 0;
  let area = 0;
  vertices.forEach((a, i) => {
    const b = vertices[(i + 1) % vertices.length];
    const chord = Math.hypot(b.x - a.x, b.y - a.y);
    area += (a.x * b.y - b.x * a.y) / 2;
    if (!a.bulge) {
      length += chord;
      return;
    }
    const angle = 4 * Math.atan(a.bulge);
    const radius = chord / (2 * Math.sin(Math.abs(angle) / 2));
    length += radius * Math.abs(angle);
    area += (Math.sign(angle) * (radius ** 2 * (Math.abs(angle) - Math.sin(Math.abs(angle))))) / 2;
  });
  return { length, area };
}

/** Closed sub-paths of an SVG path's data (M, L, A with equal radii and no large arc, Z), y down. */
export function readPath(d: string): { length: number; area: number }[] {
  const loops: { length: number; area: number }[] = [];
  let at: Vertex = { x: 0, y: 0 };
  let loop: Vertex[] = [];
  for (const [, command, numbers] of d.matchAll(/([MLAZ])([^MLAZ]*)/g)) {
    const n = numbers
      .trim()
      .split(/[\s,]+/)
      .map(Number);
    if (command === 'M') {
      at = { x: n[0], y: n[1] };
      loop = [at];
    } else if (command === 'L') {
      at = { x: n[0], y: n[1] };
      loop.push(at);
    } else if (command === 'A') {
      const [r, , , large, flag, x, y] = n;
      if (large !== 0) throw new Error('large arcs are not expected');
      const half = Math.hypot(x - at.x, y - at.y) / 2;
      const angle = 2 * Math.asin(Math.min(1, half / r));
      at.bulge = Math.tan(angle / 4) * (flag === 1 ? 1 : -1);
      at = { x, y };
      loop.push(at);
    } else {
      const first = loop[0];
      const last = loop[loop.length - 1];
      if (Math.hypot(first.x - last.x, first.y - last.y) < 0.005) loop.pop();
      loops.push(bulgedLoop(loop));
    }
  }
  return loops;
}
