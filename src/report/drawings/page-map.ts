/** First pattern page: how the tiles of each large pattern join, with page numbers, and what lies on the other pages. */

import { el, type Markup } from '../charts/svg.ts';
import { shorten } from '../charts/text-width.ts';
import { anchor } from '../format/escape.ts';
import type { Paper } from '../page.ts';
import { coordinate, drawingSvg, TEXT_SIZE, write } from './drafting.ts';
import type { PlannedPage } from './page-plan.ts';
import { patternLayers } from './pattern-svg.ts';
import { OVERLAP, PAGE_MARGIN, PAPER_SIZE, pageWindow, type Tiling } from './tiling.ts';

const COLUMNS = 3;
const GAP = 6;
const HEAD = 26;

/** The map page. Patterns too many for the page are listed by name only. */
export function pageMap(planned: readonly PlannedPage[], paper: Paper, id: string): string {
  const { width_mm: width, height_mm: height } = PAPER_SIZE[paper];
  const tilings = [...new Set(planned.flatMap((p) => (p.content.kind === 'tile' ? [p.content.tiling] : [])))];
  const boxWidth = (width - 2 * PAGE_MARGIN - (COLUMNS - 1) * GAP) / COLUMNS;
  const rows = Math.max(1, Math.ceil(tilings.length / COLUMNS));
  const lines = planned.flatMap((page, i) =>
    page.content.kind === 'several'
      ? [`Page ${i + 1}: ${page.content.items.map((item) => item.caption.replace(/:.*/, '')).join(', ')}`]
      : page.content.kind === 'marking'
        ? [`Page ${i + 1}: ${page.title}`]
        : [],
  );
  const listTop = height - PAGE_MARGIN - 4 * lines.length - 2;
  const boxHeight = Math.min(80, (listTop - HEAD - rows * GAP) / rows);
  const maps = tilings.map((tiling, i) => {
    const x = PAGE_MARGIN + (i % COLUMNS) * (boxWidth + GAP);
    const y = HEAD + Math.floor(i / COLUMNS) * (boxHeight + GAP);
    return tileMap(tiling, planned, paper, { x, y, width: boxWidth, height: boxHeight });
  });
  return drawingSvg(
    {
      id: `${anchor(id)}-pattern-map`,
      title: `Map of the pattern pages of ${id}`,
      description: `${planned.length} pages at true size; ${tilings.length} patterns are tiled over several pages with ${OVERLAP} mm of overlap.`,
      width,
      height,
    },
    write(`${id} · Map of the pattern pages`, { x: PAGE_MARGIN, y: PAGE_MARGIN + 4 }, { size: 4, bold: true }),
    write(
      'Print at 100 %. Measure the 100 mm bar of each page. Lay the circled crosses with the same name on each other,',
      { x: PAGE_MARGIN, y: PAGE_MARGIN + 9 },
    ),
    write('tape, and check a long edge of the pattern against the parts list before cutting.', {
      x: PAGE_MARGIN,
      y: PAGE_MARGIN + 12.8,
    }),
    maps,
    lines.map((line, i) =>
      write(shorten(line, TEXT_SIZE, width - 2 * PAGE_MARGIN), { x: PAGE_MARGIN, y: listTop + 4 * (i + 1) }),
    ),
  );
}

function tileMap(
  tiling: Tiling,
  planned: readonly PlannedPage[],
  paper: Paper,
  box: { x: number; y: number; width: number; height: number },
): Markup {
  const window = pageWindow(paper);
  const step = { x: window.width - OVERLAP, y: window.height - OVERLAP };
  const full = {
    width: window.width + (tiling.columns - 1) * step.x,
    height: window.height + (tiling.rows - 1) * step.y,
  };
  const scale = Math.min(box.width / full.width, (box.height - 6) / full.height);
  const top = box.y + 5;
  const first = tiling.tiles[0];
  const map = { originX: box.x + first.originX * scale, originY: top + first.originY * scale, scale: 1e3 * scale };
  const cells = tiling.tiles.map((tile) => {
    if (!tile.shows) return null;
    const number = planned.findIndex((p) => p.content.kind === 'tile' && p.content.tile === tile) + 1;
    const x = box.x + tile.column * step.x * scale;
    const y = top + tile.row * step.y * scale;
    return [
      el('rect', {
        x: coordinate(x),
        y: coordinate(y),
        width: coordinate(window.width * scale),
        height: coordinate(window.height * scale),
        fill: 'none',
        stroke: 'currentColor',
        'stroke-width': 0.15,
      }),
      write(
        String(number),
        { x: x + (window.width * scale) / 2, y: y + (window.height * scale) / 2 + 1 },
        { anchor: 'middle', bold: true },
      ),
    ];
  });
  const heading = planned
    .find((p) => p.content.kind === 'tile' && p.content.tiling === tiling)!
    .title.replace(/, row .*/, '');
  return el(
    'g',
    {},
    write(shorten(heading, TEXT_SIZE, box.width), { x: box.x, y: box.y + 3 }),
    patternLayers(tiling.pattern, map, { text: false, weights: 0.6 }),
    cells,
  );
}
