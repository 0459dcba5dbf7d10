/** An independent reader of closed lines out of a PDF (pdfjs-dist): lengths and areas in mm, arcs as the curves that the PDF holds. */
import { readFile } from 'node:fs/promises';
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { apply, type Matrix, multiply } from '../support/pdf-matrix.ts';
import type { ReadLoop } from './read-back.ts';

type Point = [number, number];

const MM = 25.4 / 72;
/** Chords of a cubic curve; those of a quarter circle of 500 mm then miss 0.0002 mm of its length. */
const CHORDS = 256;

/** Closed loops of every page; open lines are left out. */
export async function readPdfLoops(file: string): Promise<Omit<ReadLoop, 'layer'>[][]> {
  const document = await getDocument({ data: new Uint8Array(await readFile(file)), verbosity: 0 }).promise;
  const pages: Omit<ReadLoop, 'layer'>[][] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const list = await (await document.getPage(number)).getOperatorList();
    pages.push(loopsOf(list));
  }
  await document.destroy();
  return pages;
}

function loopsOf(list: { fnArray: number[]; argsArray: unknown[][] }): Omit<ReadLoop, 'layer'>[] {
  const loops: Omit<ReadLoop, 'layer'>[] = [];
  const stack: Matrix[] = [];
  let m: Matrix = [1, 0, 0, 1, 0, 0];
  list.fnArray.forEach((operator, i) => {
    const args = list.argsArray[i];
    if (operator === OPS.save) stack.push(m);
    else if (operator === OPS.restore) m = stack.pop() ?? m;
    else if (operator === OPS.transform) m = multiply(m, args as Matrix);
    else if (operator === OPS.constructPath) {
      const [operators, numbers] = args as [number[], number[]];
      const place = (x: number, y: number): Point => {
        const [across, up] = apply(m, x, y);
        return [across * MM, up * MM];
      };
      loops.push(...closedLoops(operators, numbers, place));
    }
  });
  return loops;
}

function closedLoops(operators: number[], numbers: number[], place: (x: number, y: number) => Point) {
  const loops: Omit<ReadLoop, 'layer'>[] = [];
  let points: Point[] = [];
  let at = 0;
  const take = (): Point => {
    at += 2;
    return place(numbers[at - 2], numbers[at - 1]);
  };
  for (const operator of operators) {
    if (operator === OPS.moveTo) points = [take()];
    else if (operator === OPS.lineTo) points.push(take());
    else if (operator === OPS.curveTo) {
      const from = points[points.length - 1] ?? place(0, 0);
      const [a, b, to] = [take(), take(), take()];
      for (let k = 1; k <= CHORDS; k++) points.push(cubic(from, a, b, to, k / CHORDS));
    } else if (operator === OPS.closePath) {
      loops.push(measure(points));
      points = points.slice(0, 1);
    } else if (operator === OPS.rectangle) {
      const [x, y, width, height] = numbers.slice(at, at + 4);
      at += 4;
      loops.push(measure([place(x, y), place(x + width, y), place(x + width, y + height), place(x, y + height)]));
      points = [place(x, y)];
    } else throw new Error(`operator ${operator} is not expected`);
  }
  return loops;
}

function cubic(p: Point, a: Point, b: Point, q: Point, t: number): Point {
  const u = 1 - t;
  const at = (i: 0 | 1) => u ** 3 * p[i] + 3 * u * u * t * a[i] + 3 * u * t * t * b[i] + t ** 3 * q[i];
  return [at(0), at(1)];
}

function measure(points: Point[]): Omit<ReadLoop, 'layer'> {
  let length = 0;
  let area = 0;
  points.forEach((a, i) => {
    const b = points[(i + 1) % points.length];
    length += Math.hypot(b[0] - a[0], b[1] - a[1]);
    area += (a[0] * b[1] - b[0] * a[1]) / 2;
  });
  return { length, area };
}
