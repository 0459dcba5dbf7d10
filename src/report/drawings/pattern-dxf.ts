/** Flat patterns as DXF in millimetres, on the layers CUT, BEND, MARK, SEAM and TEXT. */
import {
  Colors,
  DxfWriter,
  LWPolylineFlags,
  type LWPolylineVertex,
  point2d,
  point3d,
  TextHorizontalAlignment,
  TextVerticalAlignment,
  Units,
} from '@tarikjabiri/dxf';
import { type Edge, type Outline, type Point, polar } from '../../../shared/fabrication/patterns/outline.ts';
import { PATTERN_LAYERS, type Pattern, type PatternLayer } from '../../../shared/fabrication/patterns/pattern.ts';

const LAYER_LOOK: Record<PatternLayer, { colour: number; line: string }> = {
  CUT: { colour: Colors.White, line: 'CONTINUOUS' },
  BEND: { colour: Colors.Cyan, line: 'DASHED' },
  MARK: { colour: Colors.Green, line: 'CENTER' },
  SEAM: { colour: Colors.Red, line: 'PHANTOM' },
  TEXT: { colour: Colors.Blue, line: 'CONTINUOUS' },
};

const mm = (value: number): number => value * 1e3;
const degrees = (radians: number): number => (radians * 180) / Math.PI;

/** One pattern as the text of a DXF file. Full circles become CIRCLE, other outlines closed polylines with bulges. */
export function patternDxf(pattern: Pattern): string {
  const dxf = new DxfWriter();
  dxf.setUnits(Units.Millimeters);
  dxf.setVariable('$MEASUREMENT', { 70: 1 });
  dxf.addLType('DASHED', '__ __ __', [2, -1]);
  dxf.addLType('CENTER', '____ _ ____', [6, -1.2, 1, -1.2]);
  dxf.addLType('PHANTOM', '____ _ _ ____', [6, -1, 1, -1, 1, -1]);
  for (const layer of PATTERN_LAYERS) dxf.addLayer(layer, LAYER_LOOK[layer].colour, LAYER_LOOK[layer].line);
  for (const outline of pattern.outlines) addOutline(dxf, outline, 'CUT');
  for (const mark of pattern.marks) addEdge(dxf, mark.edge, mark.layer);
  for (const label of pattern.labels) {
    const at = point3d(mm(label.at.x), mm(label.at.y));
    dxf.addText(at, mm(label.height), plainText(label.text), {
      layerName: 'TEXT',
      rotation: degrees(label.angle),
      horizontalAlignment: TextHorizontalAlignment.Center,
      verticalAlignment: TextVerticalAlignment.Middle,
      secondAlignmentPoint: at,
    });
  }
  return dxf.stringify();
}

/** A DXF text is one line; line ends would break the file's pairs of lines. The degree and diameter signs have codes. */
function plainText(text: string): string {
  return text
    .replace(/[\r\n\t]+/g, ' ')
    .replace(/Ø/g, '%%c')
    .replace(/°/g, '%%d')
    .replace(/[^\x20-\x7e]/g, '-');
}

function addOutline(dxf: DxfWriter, outline: Outline, layer: PatternLayer): void {
  const [only] = outline.edges;
  if (outline.edges.length === 1 && only.kind === 'arc') {
    dxf.addCircle(point3d(mm(only.centre.x), mm(only.centre.y)), mm(only.radius), { layerName: layer });
    return;
  }
  dxf.addLWPolyline(outline.edges.flatMap(edgeVertices), { layerName: layer, flags: LWPolylineFlags.Closed });
}

/** Vertices of an edge without its end, which the next edge begins with. bulge = tan(sweep/4); long arcs are halved. */
function edgeVertices(edge: Edge): LWPolylineVertex[] {
  const vertex = (p: Point, bulge?: number): LWPolylineVertex => ({ point: point2d(mm(p.x), mm(p.y)), bulge });
  if (edge.kind === 'line') return [vertex(edge.from)];
  if (edge.kind === 'polyline') return edge.points.slice(0, -1).map((p) => vertex(p));
  const { centre, radius, start, sweep } = edge;
  const parts = Math.max(1, Math.ceil(Math.abs(sweep) / (Math.PI / 2) - 1e-9));
  const bulge = Math.tan(sweep / parts / 4);
  return Array.from({ length: parts }, (_, i) => vertex(polar(centre, radius, start + (sweep * i) / parts), bulge));
}

function addEdge(dxf: DxfWriter, edge: Edge, layer: PatternLayer): void {
  const options = { layerName: layer };
  if (edge.kind === 'line') {
    dxf.addLine(point3d(mm(edge.from.x), mm(edge.from.y)), point3d(mm(edge.to.x), mm(edge.to.y)), options);
  } else if (edge.kind === 'polyline') {
    const vertices = edge.points.map((p) => ({ point: point2d(mm(p.x), mm(p.y)) }));
    dxf.addLWPolyline(vertices, options);
  } else {
    const centre = point3d(mm(edge.centre.x), mm(edge.centre.y));
    if (Math.abs(edge.sweep) > 2 * Math.PI - 1e-9) {
      dxf.addCircle(centre, mm(edge.radius), options);
    } else {
      const [from, to] = edge.sweep > 0 ? [edge.start, edge.start + edge.sweep] : [edge.start + edge.sweep, edge.start];
      dxf.addArc(centre, mm(edge.radius), degrees(from), degrees(to), options);
    }
  }
}
