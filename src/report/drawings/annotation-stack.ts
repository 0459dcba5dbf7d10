/** Labels, dimensions and stations stacked outwards from one side of a drawing, each in rows of its own. */
import { spread } from '../charts/labels.ts';
import type { Markup } from '../charts/svg.ts';
import { type DimensionWish, dimensionRows } from './dimension-rows.ts';
import { dimensionLine, segment, TEXT_SIZE, widthOf, write, type XY } from './drafting.ts';
import { type LabelWish, labelRows } from './label-rows.ts';

export interface TextBox {
  text: string;
  x0: number;
  y0: number;
  x1: number;
  y1: number;
}

const LABEL_ROW = 4;
const DIMENSION_ROW = 5;
const STATION_PITCH = 3.5;
const BLOCK_GAP = 2;

/** A vertical thin line that gives way to text. */
interface Upright {
  x: number;
  y0: number;
  y1: number;
}

export class AnnotationStack {
  /** Texts placed so far, for tests and for lines that must give way. */
  readonly texts: TextBox[] = [];
  private readonly uprights: Upright[] = [];
  private readonly marks: Markup[] = [];
  private edge: number;

  /** `side` −1 stacks upwards (smaller y), +1 downwards, from `base`; texts stay between the bounds. All mm. */
  constructor(
    private readonly side: 1 | -1,
    base: number,
    private readonly bounds: { left: number; right: number },
  ) {
    this.edge = base;
  }

  /** Outermost y that is in use. */
  get reach(): number {
    return this.edge;
  }

  /** Names with leaders; `startAt` gives the y at which a leader leaves the part, by share of its span. */
  addLabels(wishes: (LabelWish & { startAt: (share: number) => number })[]): void {
    const placed = labelRows(wishes, this.bounds.left, this.bounds.right);
    let rows = 0;
    placed.forEach((label, i) => {
      rows = Math.max(rows, label.row + 1);
      // Above, the shelf lies under the text; below, over it: the leader always ends on the shelf.
      const shelf = this.edge + this.side * label.row * LABEL_ROW;
      const baseline = this.side < 0 ? shelf - 0.9 : shelf + 2.9;
      const span = label.to - label.from;
      const share = span > 1e-9 ? (label.leaderX - label.from) / span : 0.5;
      this.uprights.push({ x: label.leaderX, y0: wishes[i].startAt(share), y1: shelf });
      const ends = [label.textX, label.textX + label.width, label.leaderX];
      this.marks.push(segment({ x: Math.min(...ends), y: shelf }, { x: Math.max(...ends), y: shelf }));
      this.addText(label.text, { x: label.textX, y: baseline });
    });
    this.edge += this.side * (rows * LABEL_ROW + (rows > 0 ? BLOCK_GAP : 0));
  }

  /** Horizontal dimensions; `edgeAt` gives the y of the body from which the extension line at x starts. */
  addDimensions(wishes: DimensionWish[], edgeAt: (x: number) => number): void {
    if (wishes.length === 0) return;
    const placed = dimensionRows(wishes, this.bounds.right);
    const rows = 1 + Math.max(...placed.map((p) => p.row));
    const outermost = new Map<number, number>();
    for (const dimension of placed) {
      const depth = dimension.row * DIMENSION_ROW + (this.side > 0 ? 3.4 : 1.4);
      const y = this.edge + this.side * depth;
      this.marks.push(...dimensionLine(dimension.x0, dimension.x1, y));
      this.addText(dimension.text, { x: dimension.textX, y: dimension.inside ? y - 0.8 : y + 0.9 });
      for (const x of [dimension.x0, dimension.x1]) {
        const key = Math.round(x * 100) / 100;
        const known = outermost.get(key);
        if (known === undefined || Math.abs(y - edgeAt(x)) > Math.abs(known - edgeAt(x))) outermost.set(key, y);
      }
    }
    for (const [x, y] of outermost) {
      this.uprights.push({ x, y0: edgeAt(x) + this.side, y1: y + this.side * 1.2 });
    }
    this.edge += this.side * (rows * DIMENSION_ROW + BLOCK_GAP);
  }

  /** Stations as upright figures, moved apart where they would touch. */
  addStations(stations: { text: string; x: number; from: number }[]): void {
    if (stations.length === 0) return;
    const { left, right } = this.bounds;
    const places = spread(
      stations.map((s) => s.x),
      STATION_PITCH,
      left + 2,
      right - 2,
    );
    const longest = Math.max(...stations.map((s) => widthOf(s.text)));
    stations.forEach((station, i) => {
      const elbow = this.edge + this.side * 1;
      const foot = this.edge + this.side * 4;
      this.uprights.push({ x: station.x, y0: station.from + this.side, y1: elbow });
      this.marks.push(segment({ x: station.x, y: elbow }, { x: places[i], y: foot }));
      const width = widthOf(station.text);
      const start = foot + this.side * 0.8;
      const at = { x: places[i] + 0.36 * TEXT_SIZE, y: start };
      this.marks.push(write(station.text, at, { turn: -90, anchor: this.side > 0 ? 'end' : 'start' }));
      const far = start + this.side * width;
      this.texts.push({
        text: station.text,
        x0: places[i] - TEXT_SIZE / 2,
        x1: places[i] + TEXT_SIZE / 2,
        y0: Math.min(start, far),
        y1: Math.max(start, far),
      });
    });
    this.edge += this.side * (4.8 + longest + BLOCK_GAP);
  }

  /** All marks; lines are broken where they meet text. */
  draw(): Markup[] {
    return [...this.uprights.flatMap((line) => this.broken(line)), ...this.marks];
  }

  private addText(text: string, at: XY): void {
    this.marks.push(write(text, at));
    this.texts.push({ text, x0: at.x, x1: at.x + widthOf(text), y0: at.y - 2, y1: at.y + 0.6 });
  }

  private broken({ x, y0, y1 }: Upright): Markup[] {
    const [top, bottom] = y0 < y1 ? [y0, y1] : [y1, y0];
    const gaps = this.texts
      .filter((t) => x > t.x0 - 0.5 && x < t.x1 + 0.5 && t.y1 > top && t.y0 < bottom)
      .map((t): [number, number] => [t.y0 - 0.5, t.y1 + 0.5])
      .sort((a, b) => a[0] - b[0]);
    const parts: Markup[] = [];
    let from = top;
    for (const [start, end] of [...gaps, [bottom, bottom] as [number, number]]) {
      if (start - from > 0.3) parts.push(segment({ x, y: from }, { x, y: Math.min(start, bottom) }));
      from = Math.max(from, end);
    }
    return parts;
  }
}
