/** The sizes that define a pattern's outline, found from its own edges: rectangle, sector, gore, disc. */
import { type Edge, edgeEnd, edgeStart, polar } from '../../../shared/fabrication/patterns/outline.ts';
import { type Pattern, patternBounds } from '../../../shared/fabrication/patterns/pattern.ts';
import type { XY } from './drafting.ts';
import { diameterText, lengthText } from './drafting.ts';

export interface LetteredSize {
  letter: string;
  /** What is measured and its length in mm and inches. */
  text: string;
  from: XY;
  to: XY;
  /** Outside: a dimension line beside the part; inside: a dashed line between the two points. */
  place: 'outside' | 'inside';
  /** Inside only: where the letter stands, from the line's middle towards this point; null: across the line. */
  letterTowards: XY | null;
}

export interface MarkingSizes {
  sizes: LetteredSize[];
  /** What needs no letter: holes, bend lines, ordinates. */
  lines: string[];
}

type Arc = Extract<Edge, { kind: 'arc' }>;

/** Radius beyond which a trammel is awkward, m: offsets from the chord are given as well. */
const LONGEST_TRAMMEL = 1.2;
const ORDINATES = 12;

/** Openings that are neither round nor slots: ports and windows. */
export function hasShapedHoles(pattern: Pattern): boolean {
  return pattern.outlines.slice(1).some((hole) => hole.edges.length > 4);
}

export function markingSizes(pattern: Pattern): MarkingSizes {
  const [outer] = pattern.outlines;
  const [first] = outer.edges;
  const fourth = outer.edges[4];
  let found: MarkingSizes;
  if (outer.edges.length === 1 && first.kind === 'arc') found = discSizes(pattern, first);
  else if (outer.edges.length === 6 && first.kind === 'arc' && fourth.kind === 'arc') {
    found = sectorSizes(first, fourth, outer.edges[5]);
  } else if (outer.edges.length === 6 && fourth.kind === 'polyline') found = goreSizes(pattern, fourth.points);
  else found = boxSizes(pattern);
  return { sizes: found.sizes, lines: [...found.lines, ...bendLines(pattern), ...holeLines(pattern)] };
}

const size = (
  letter: string,
  words: string,
  from: XY,
  to: XY,
  options: { place?: 'outside' | 'inside'; letterTowards?: XY } = {},
): LetteredSize => ({
  letter,
  text: `${words} ${lengthText(Math.hypot(to.x - from.x, to.y - from.y))}`,
  from,
  to,
  place: options.place ?? 'outside',
  letterTowards: options.letterTowards ?? null,
});

function discSizes(pattern: Pattern, arc: Arc): MarkingSizes {
  const { centre, radius } = arc;
  const at = (side: number) => ({ x: centre.x + side * radius, y: centre.y });
  return {
    sizes: [{ ...size('A', 'outside diameter', at(-1), at(1)), place: 'inside' }],
    lines: hasShapedHoles(pattern) ? ['Transfer the openings from the SVG or DXF file at full size.'] : [],
  };
}

/** Sector of a cone's development: radii and chords; the seam allowance lies beyond the closing line. */
function sectorSizes(large: Arc, small: Arc, side: Edge): MarkingSizes {
  const at = (arc: Arc, share: number): XY => polar(arc.centre, arc.radius, arc.start + arc.sweep * share);
  // The small arc runs the other way; its end lies beside the large arc's start.
  const back: Arc = { ...small, start: small.start + small.sweep, sweep: -small.sweep };
  const degrees = ((large.sweep * 180) / Math.PI).toFixed(2);
  const lines = [
    `Large radius ${lengthText(large.radius)}, small radius ${lengthText(small.radius)}, angle ${degrees}°, from one centre.`,
  ];
  for (const [name, arc] of [
    ['large', large],
    ['small', back],
  ] as const) {
    if (arc.radius > LONGEST_TRAMMEL) lines.push(`The ${name} arc without a trammel: ${chordOffsets(arc)}`);
  }
  // The side runs outwards; turned by a quarter it points away from the part.
  const [inner, outer] = [edgeStart(side), edgeEnd(side)];
  const middle = { x: (inner.x + outer.x) / 2, y: (inner.y + outer.y) / 2 };
  // The chords of a nearly closed ring meet near its centre: their letters then stand outside.
  const within = large.sweep < 5 ? large.centre : undefined;
  const roomBeside = 2 * Math.PI - large.sweep > 0.6;
  const beside = roomBeside
    ? { x: middle.x + (outer.y - inner.y), y: middle.y - (outer.x - inner.x) }
    : { x: 2 * middle.x - large.centre.x, y: 2 * middle.y - large.centre.y };
  return {
    sizes: [
      // The two chords stand on different halves, so that their letters keep apart.
      size('A', 'chord of half the large arc, twice', at(large, 0.5), at(large, 1), {
        place: 'inside',
        letterTowards: within,
      }),
      size('B', 'chord of half the small arc, twice', at(back, 0), at(back, 0.5), {
        place: 'inside',
        letterTowards: within,
      }),
      size('C', 'straight side', edgeStart(side), edgeEnd(side), { place: 'inside', letterTowards: beside }),
    ],
    lines,
  };
}

/** Heights of an arc over its whole chord, from its end to its middle. */
function chordOffsets(arc: Arc): string {
  const { radius, sweep } = arc;
  const chord = 2 * radius * Math.sin(Math.min(Math.PI, sweep) / 2);
  const depth = radius * Math.cos(sweep / 2);
  const heights = [1 / 8, 1 / 4, 3 / 8, 1 / 2].map((share) => {
    const x = chord * (share - 0.5);
    return ((Math.sqrt(radius ** 2 - x ** 2) - depth) * 1e3).toFixed(1);
  });
  return `chord ${lengthText(chord)}; it rises ${heights.join(', ')} mm over the chord at 1/8, 1/4, 3/8 and 1/2.`;
}

function goreSizes(pattern: Pattern, upper: XY[]): MarkingSizes {
  const lower = pattern.outlines[0].edges[0];
  const full = lower.kind === 'polyline';
  // The upper edge runs from right to left.
  const girth = upper[0].x;
  const at = (turn: number): XY => upper[Math.round((1 - turn) * (upper.length - 1))];
  const throat = at(0).y;
  const back = at(0.5).y;
  const base = (h: number) => (full ? -h : 0);
  const bounds = patternBounds(pattern);
  const heights = Array.from({ length: ORDINATES / 2 + 1 }, (_, k) => (at(k / ORDINATES).y * 1e3).toFixed(1));
  return {
    sizes: [
      size('A', 'girth to the closing line', { x: 0, y: bounds.minY }, { x: girth, y: bounds.minY }),
      size('B', 'length at the seam (throat of the bend)', { x: 0, y: base(throat) }, { x: 0, y: throat }),
      size(
        'C',
        'length in the middle (back)',
        { x: girth / 2, y: base(back) },
        { x: girth / 2, y: back },
        { place: 'inside' },
      ),
      size('D', 'seam allowance', { x: girth, y: bounds.maxY }, { x: bounds.maxX, y: bounds.maxY }),
    ],
    lines: [
      `Edge ${full ? 'above and below the middle line' : 'above the straight edge'} at 0 to ${ORDINATES / 2} twelfths of the girth, mm: ${heights.join(', ')}; then back the same way.`,
    ],
  };
}

function boxSizes(pattern: Pattern): MarkingSizes {
  const { minX, minY, maxX, maxY } = patternBounds(pattern);
  const seam = pattern.marks.find((m) => m.layer === 'SEAM');
  const closing = seam ? edgeStart(seam.edge).x : maxX;
  const sizes = [
    size('A', seam ? 'girth to the closing line' : 'length', { x: minX, y: minY }, { x: closing, y: minY }),
    size('B', seam ? 'length along the axis' : 'width', { x: minX, y: minY }, { x: minX, y: maxY }),
  ];
  if (closing < maxX - 1e-6) {
    sizes.push(size('C', 'seam allowance', { x: closing, y: maxY }, { x: maxX, y: maxY }));
  }
  const lines = seam
    ? [`Middle of the girth is the top of the engine; roll lines every ${lengthText((closing - minX) / 12)}.`]
    : [];
  return { sizes, lines };
}

/** Upright bend lines across a strap. */
function bendLines(pattern: Pattern): string[] {
  const { minX } = patternBounds(pattern);
  if (pattern.marks.some((m) => m.layer === 'SEAM')) return [];
  const places = pattern.marks
    .filter((m) => m.layer === 'BEND' && m.edge.kind === 'line')
    .map((m) => lengthText(edgeStart(m.edge).x - minX));
  return places.length > 0 ? [`Bend lines ${places.join(' and ')} from the left end.`] : [];
}

/** Holes of a rectangle from its left and lower edges; like holes at one height in one line. */
function holeLines(pattern: Pattern): string[] {
  const [outer, ...holes] = pattern.outlines;
  if (outer.edges[0].kind === 'arc') return [];
  const { minX, minY } = patternBounds(pattern);
  const rows = new Map<string, { x: number[]; y: number }>();
  for (const hole of holes) {
    const arcs = hole.edges.filter((e): e is Arc => e.kind === 'arc');
    if (arcs.length === 0) continue;
    const centres = arcs.map((arc) => arc.centre);
    const x = centres.reduce((sum, c) => sum + c.x, 0) / centres.length - minX;
    const y = centres.reduce((sum, c) => sum + c.y, 0) / centres.length - minY;
    const what = hole.edges.length > 1 ? slotName(arcs) : holeName(pattern, centres[0], 2 * arcs[0].radius);
    const key = `${what} ${y.toFixed(5)}`;
    rows.set(key, { x: [...(rows.get(key)?.x ?? []), x], y });
  }
  return [...rows].map(([key, { x, y }]) => {
    const what = key.slice(0, key.lastIndexOf(' '));
    const from = x.map(lengthText).join(' and ');
    return `${what}: ${x.length > 1 ? 'centres' : 'centre'} ${from} from the left, ${lengthText(y)} from the lower edge.`;
  });
}

function slotName([a, b]: Arc[]): string {
  const long = Math.hypot(b.centre.x - a.centre.x, b.centre.y - a.centre.y);
  return `Slot ${lengthText(2 * a.radius)} wide, ${lengthText(long)} between its arc centres`;
}

/** What a hole is for, by the label beside it, and its diameter. */
function holeName(pattern: Pattern, centre: XY, diameter: number): string {
  const label = pattern.labels.find(
    (l) => l.text.includes('Ø') && Math.hypot(l.at.x - centre.x, l.at.y - centre.y) < diameter / 2 + 0.006,
  );
  const name = label?.text.replace(/\s*Ø.*/, '');
  return `${name ? `Hole for ${name}` : 'Hole'} ${diameterText(diameter)}`;
}
