/** An independent reader of PDFs (pdfjs-dist), so that our own counting is not its own judge. */
import { readFile } from 'node:fs/promises';
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { apply, type Matrix, multiply } from '../support/pdf-matrix.ts';

export interface PdfPage {
  /** Points. */
  width: number;
  height: number;
  text: string;
  /** Bounding boxes of filled or stroked paths, points, in drawing order. */
  boxes: { x: number; y: number; width: number; height: number }[];
}

export async function readPdf(file: string) {
  const document = await getDocument({
    data: new Uint8Array(await readFile(file)),
    useSystemFonts: false,
    verbosity: 0,
  }).promise;
  const pages: PdfPage[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number);
    const [left, bottom, right, top] = page.view;
    const content = await page.getTextContent();
    const text = content.items.map((item) => ('str' in item ? item.str : '')).join(' ');
    pages.push({ width: right - left, height: top - bottom, text, boxes: pathBoxes(await page.getOperatorList()) });
  }
  const outline = ((await document.getOutline()) ?? []) as { title: string; items: { title: string }[] }[];
  const metadata = await document.getMetadata();
  const marked = (await document.getMarkInfo()) as { Marked: boolean } | null;
  await document.destroy();
  return { pages, outline, info: metadata.info as Record<string, string>, tagged: marked?.Marked === true };
}

function pathBoxes(list: { fnArray: number[]; argsArray: unknown[][] }): PdfPage['boxes'] {
  const boxes: PdfPage['boxes'] = [];
  const stack: Matrix[] = [];
  let matrix: Matrix = [1, 0, 0, 1, 0, 0];
  list.fnArray.forEach((operator, i) => {
    const args = list.argsArray[i];
    if (operator === OPS.save) stack.push(matrix);
    else if (operator === OPS.restore) matrix = stack.pop() ?? matrix;
    else if (operator === OPS.transform) matrix = multiply(matrix, args as unknown as Matrix);
    else if (operator === OPS.constructPath) {
      const [x0, y0, x1, y1] = args[2] as [number, number, number, number];
      const a = apply(matrix, x0, y0);
      const b = apply(matrix, x1, y1);
      boxes.push({
        x: Math.min(a[0], b[0]),
        y: Math.min(a[1], b[1]),
        width: Math.abs(b[0] - a[0]),
        height: Math.abs(b[1] - a[1]),
      });
    }
  });
  return boxes;
}
