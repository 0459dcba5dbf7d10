/** Pages of patterns at true size: large parts tiled with overlap and register marks, small ones together on a page. */
import type { Engine } from '../../../shared/engine/engine.ts';
import { labelBox } from '../../../shared/fabrication/patterns/labels.ts';
import { drawnBounds } from '../../../shared/fabrication/patterns/pattern.ts';
import { el, type Markup } from '../charts/svg.ts';
import { shorten, wrap } from '../charts/text-width.ts';
import type { PatternPage } from '../drawing-set.ts';
import { anchor } from '../format/escape.ts';
import type { Paper } from '../page.ts';
import { coordinate, drawingSvg, ring, segment, TEXT_SIZE, widthOf, write, type XY } from './drafting.ts';
import { pageMap } from './page-map.ts';
import { CAPTION_ROOM, type PageOptions, type PlacedPattern, type PlannedPage, planPages } from './page-plan.ts';
import { patternLayers } from './pattern-svg.ts';
import { OVERLAP, PAGE_MARGIN, PAPER_SIZE, pageWindow, type Tile, type Tiling, type Window } from './tiling.ts';

/** Length of the check bar on every page at true size, mm. */
export const CHECK_BAR = 100;
/** Letter height of the crosses' names, mm. */
const NAME_SIZE = 1.8;
/** Title of the page that shows how the tiles join. */
export const MAP_TITLE = 'Map of the pattern pages';

/** All pattern pages of an engine in order, the map of the tiles first. */
export function patternPages(engine: Engine, paper: Paper, options: PageOptions): PatternPage[] {
  const planned = planPages(engine, paper, options);
  const size = PAPER_SIZE[paper];
  const total = planned.length;
  const pages = planned.map((page, i) => {
    const id = `${anchor(options.id)}-pattern-${i + 1}`;
    const number = `page ${i + 1} of ${total}`;
    return {
      candidateId: options.id,
      title: `${page.title}, ${number}`,
      pageSize: size,
      svg: pageSvg(page, paper, id, `${options.id} · ${page.title} · ${number}`),
      caption: page.notes,
    };
  });
  if (!planned.some((p) => p.content.kind === 'tile')) return pages;
  return [
    {
      candidateId: options.id,
      title: MAP_TITLE,
      pageSize: size,
      svg: pageMap(planned, paper, options.id),
      caption: 'How the tiles join. Print every pattern page at 100 %, without fitting to the page.',
    },
    ...pages,
  ];
}

function pageSvg(page: PlannedPage, paper: Paper, id: string, headline: string): string {
  const { width_mm: width, height_mm: height } = PAPER_SIZE[paper];
  const window = pageWindow(paper);
  const corner = { x: PAGE_MARGIN, y: PAGE_MARGIN };
  const clip = `${id}-window`;
  const content = pageContent(page, corner);
  const marks =
    page.content.kind === 'tile' ? registerMarks(page.content.tiling, page.content.tile, window, corner) : [];
  return drawingSvg(
    {
      id,
      title: headline,
      description: page.content.kind === 'marking' ? page.notes : `${page.notes} True size on ${paper}.`,
      width,
      height,
    },
    el(
      'clipPath',
      { id: clip },
      el('rect', { x: corner.x, y: corner.y, width: coordinate(window.width), height: coordinate(window.height) }),
    ),
    el('rect', {
      x: corner.x,
      y: corner.y,
      width: coordinate(window.width),
      height: coordinate(window.height),
      fill: 'none',
      stroke: 'currentColor',
      'stroke-width': 0.15,
    }),
    el('g', { 'clip-path': `url(#${clip})` }, content),
    marks,
    foot(page, paper, headline),
  );
}

function pageContent({ content }: PlannedPage, corner: XY): Markup[] {
  if (content.kind === 'tile') return tileContent(content.tiling, content.tile, corner);
  if (content.kind === 'several') return severalContent(content.items, corner);
  return content.blocks.flatMap(({ block, y }) => block.draw({ x: corner.x + 2, y: corner.y + y }));
}

function tileContent(tiling: Tiling, tile: Tile, corner: XY): Markup[] {
  return patternLayers(tiling.pattern, {
    originX: corner.x + tile.originX,
    originY: corner.y + tile.originY,
    scale: 1e3,
  });
}

function severalContent(items: PlacedPattern[], corner: XY): Markup[] {
  return items.flatMap(({ pattern, caption, x, y }) => {
    const bounds = drawnBounds(pattern);
    const map = {
      originX: corner.x + x - bounds.minX * 1e3,
      originY: corner.y + y + bounds.maxY * 1e3,
      scale: 1e3,
    };
    const bottom = corner.y + y + (bounds.maxY - bounds.minY) * 1e3;
    const room = Math.max((bounds.maxX - bounds.minX) * 1e3, widthOf(caption));
    return [
      ...patternLayers(pattern, map),
      write(shorten(caption, TEXT_SIZE, room), { x: corner.x + x, y: bottom + CAPTION_ROOM - 1.2 }),
    ];
  });
}

/**
 * Crosses in the overlap with each printed neighbour, at a quarter and three quarters of the shared edge. The same mark has the same
 * name on both pages and falls on the same point of the pattern.
 */
export function registerMarks(tiling: Tiling, tile: Tile, window: Window, corner: XY): Markup[] {
  const shown = (row: number, column: number) =>
    tiling.tiles.some((t) => t.shows && t.row === row && t.column === column);
  const marks: Markup[] = [];
  const half = OVERLAP / 2;
  const taken = tiling.pattern.labels.map((label) => {
    const box = labelBox(label);
    return {
      x0: corner.x + tile.originX + box.minX * 1e3,
      x1: corner.x + tile.originX + box.maxX * 1e3,
      y0: corner.y + tile.originY - box.maxY * 1e3,
      y1: corner.y + tile.originY - box.minY * 1e3,
    };
  });
  /** Beside the cross on the side where the pattern has no text. */
  const namePlace = (at: XY, name: string): XY => {
    const long = widthOf(name, NAME_SIZE);
    const places = [0.6, -0.6 - long].flatMap((dx) => [-2.4, 3.8].map((dy) => ({ x: at.x + dx, y: at.y + dy })));
    const free = (p: XY) => taken.every((t) => p.x + long < t.x0 || p.x > t.x1 || p.y < t.y0 || p.y - NAME_SIZE > t.y1);
    return places.find(free) ?? places[0];
  };
  const add = (name: string, x: number, y: number) => {
    const at = { x: corner.x + x, y: corner.y + y };
    marks.push(
      ring(at, 1.8),
      segment({ x: at.x - 3.5, y: at.y }, { x: at.x + 3.5, y: at.y }),
      segment({ x: at.x, y: at.y - 3.5 }, { x: at.x, y: at.y + 3.5 }),
      write(name, namePlace(at, name), { size: NAME_SIZE }),
    );
  };
  const { row, column } = tile;
  for (const [share, letter] of [
    [0.25, 'a'],
    [0.75, 'b'],
  ] as const) {
    const y = window.height * share;
    const x = window.width * share;
    if (shown(row, column - 1)) add(`R${row + 1}/${column}${letter}`, half, y);
    if (shown(row, column + 1)) add(`R${row + 1}/${column + 1}${letter}`, window.width - half, y);
    if (shown(row - 1, column)) add(`C${column + 1}/${row}${letter}`, x, half);
    if (shown(row + 1, column)) add(`C${column + 1}/${row + 1}${letter}`, x, window.height - half);
  }
  return marks;
}

/** Title, notes, check bar, and the tile's place in its pattern. */
function foot(page: PlannedPage, paper: Paper, headline: string): Markup[] {
  const { width_mm: width, height_mm: height } = PAPER_SIZE[paper];
  const top = height - 24 + 4.5;
  const left = PAGE_MARGIN;
  const bar = { x0: left, x1: left + CHECK_BAR, y: top + 12 };
  const ticks = Array.from({ length: 11 }, (_, i) => {
    const x = bar.x0 + i * 10;
    return segment({ x, y: bar.y - (i % 5 === 0 ? 1.6 : 0.9) }, { x, y: bar.y + (i % 5 === 0 ? 1.6 : 0.9) });
  });
  const room = width - 2 * PAGE_MARGIN - 26;
  const [note, ...more] = wrap(page.notes, 2.2, room);
  const notes = more.length === 0 ? [note] : [note, shorten(more.join(' '), 2.2, room)];
  return [
    write(shorten(headline, 3, room), { x: left, y: top }, { size: 3, bold: true }),
    ...notes.map((line, i) => write(line ?? '', { x: left, y: top + 3.9 + 3 * i }, { size: 2.2 })),
    ...(page.content.kind === 'marking'
      ? []
      : [
          el(
            'g',
            { 'data-check-bar': `${CHECK_BAR} mm` },
            segment({ x: bar.x0, y: bar.y }, { x: bar.x1, y: bar.y }, { weight: 0.35 }),
            ...ticks,
          ),
          write('100 mm: measure this bar before cutting', { x: bar.x1 + 3, y: bar.y + 0.9 }, { size: 2.2 }),
        ]),
    ...(page.content.kind === 'tile'
      ? placeMap(page.content.tiling, page.content.tile, { x: width - PAGE_MARGIN, y: top - 2.5 })
      : []),
  ];
}

/** Small grid with this tile filled; its top right corner at the point. */
function placeMap(tiling: Tiling, tile: Tile, at: XY): Markup[] {
  const cell = Math.min(22 / tiling.columns, 17 / tiling.rows, 6);
  const x0 = at.x - cell * tiling.columns;
  return tiling.tiles.map((t) => {
    const x = x0 + t.column * cell;
    const y = at.y + t.row * cell;
    const own = t.row === tile.row && t.column === tile.column;
    return el('rect', {
      x: coordinate(x),
      y: coordinate(y),
      width: coordinate(cell),
      height: coordinate(cell),
      fill: own ? 'currentColor' : 'none',
      stroke: t.shows ? 'currentColor' : 'none',
      'stroke-width': 0.2,
    });
  });
}
