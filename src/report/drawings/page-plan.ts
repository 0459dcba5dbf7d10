/** Decides which pattern is printed at true size, which is drawn small with the sizes to mark it out, and on which page. */
import { MaxRectsPacker, Rectangle } from 'maxrects-packer/dist/maxrects-packer.mjs';
import type { Engine } from '../../../shared/engine/engine.ts';
import { enginePatterns } from '../../../shared/fabrication/patterns/engine-patterns.ts';
import { drawnBounds, type Pattern } from '../../../shared/fabrication/patterns/pattern.ts';
import type { Paper } from '../page.ts';
import { widthOf } from './drafting.ts';
import { type MarkingBlock, markingBlock } from './marking-out.ts';
import { hasShapedHoles } from './marking-sizes.ts';
import { pageWindow, type Tile, type Tiling, tilePattern, type Window } from './tiling.ts';

export interface PageOptions {
  /** Candidate's id; begins every id and title. */
  id: string;
  /** Marks of the parts list by part identifier. */
  marks: Record<string, string>;
  /**
   * How many pages the patterns may take in all. What finds no room is drawn small, to be marked out by its sizes.
   * Patterns with shaped openings are always tiled: sizes alone do not tell how to cut them.
   */
  mostPages: number;
}

export interface PlacedPattern {
  pattern: Pattern;
  caption: string;
  /** Place of its upper left corner from the window's corner, mm. */
  x: number;
  y: number;
}

/** What one page carries, before its number is known. */
export interface PlannedPage {
  title: string;
  notes: string;
  content:
    | { kind: 'tile'; tiling: Tiling; tile: Tile }
    | { kind: 'several'; items: PlacedPattern[] }
    /** Not at true size: drawings with the sizes to mark out on the sheet. */
    | { kind: 'marking'; blocks: { block: MarkingBlock; y: number }[] };
}

/** Room for a caption under a pattern, and space between patterns, mm. */
export const CAPTION_ROOM = 5;
const BLANK_GAP = 5;

/**
 * All pages of an engine in order: tiles, then small patterns together, then drawings of the large ones with sizes, to
 * check the taped paper by or to mark out on the metal. Flat bars are only marked out.
 */
export function planPages(engine: Engine, paper: Paper, options: PageOptions): PlannedPage[] {
  const window = pageWindow(paper);
  const tilings = enginePatterns(engine).map((pattern) => tilePattern(pattern, window));
  const naming = (pattern: Pattern) => {
    const mark = options.marks[pattern.id];
    return `${mark ? `${mark} ` : ''}${pattern.name}`;
  };
  const printed = tilings.filter((t) => !isBar(t.source));
  const small = gather(
    printed.filter((t) => t.tiles.length === 1),
    window,
    naming,
  );
  const large = printed.filter((t) => t.tiles.length > 1);
  const drawnSmall = tilings.filter((t) => isBar(t.source) || t.tiles.length > 1).map((t) => t.source);
  const marking = (where: (pattern: Pattern) => string) =>
    markingPages(drawnSmall, window, (p) => `${naming(p)}: ${stock(p)}; ${where(p)}`);
  // One page is kept for the map of the tiles.
  const room = options.mostPages - 1 - small.length - marking(() => '').length;
  const tiled = chooseTiled(large, room);
  const tiles = tiled.flatMap((tiling) => tilePages(tiling, naming));
  return [...tiles, ...small, ...marking((pattern) => whereAtTrueSize(pattern, tiles, options.id))];
}

/** "at true size on pages 4 to 9", or in the files to cut from. */
function whereAtTrueSize(pattern: Pattern, tiles: readonly PlannedPage[], id: string): string {
  const numbers = tiles.flatMap(({ content }, i) =>
    content.kind === 'tile' && content.tiling.source === pattern ? [i + 1] : [],
  );
  return numbers.length > 0
    ? `true size on pages ${numbers[0]} to ${numbers.at(-1)}`
    : `true size in ${id}-${pattern.id}.svg and .dxf`;
}

const shownTiles = (tiling: Tiling): number => tiling.tiles.filter((t) => t.shows).length;

/** Flat bars, rectangles that are not rolled up to a seam, are marked out with a rule more exactly than paper can be taped. */
export function isBar(pattern: Pattern): boolean {
  const [outer] = pattern.outlines;
  if (hasShapedHoles(pattern) || pattern.marks.some((mark) => mark.layer === 'SEAM')) return false;
  return outer.edges.every(
    (e) => e.kind === 'line' && (Math.abs(e.from.x - e.to.x) < 1e-9 || Math.abs(e.from.y - e.to.y) < 1e-9),
  );
}

/** Shapes with ports, then others from the fewest tiles upwards as far as the pages go; in the order of the parts list. */
function chooseTiled(large: Tiling[], pages: number): Tiling[] {
  const shaped = large.filter((t) => hasShapedHoles(t.source));
  const others = large.filter((t) => !shaped.includes(t)).sort((a, b) => shownTiles(a) - shownTiles(b));
  let left = pages - shaped.reduce((sum, t) => sum + shownTiles(t), 0);
  const chosen = others.filter((tiling) => {
    if (shownTiles(tiling) > left) return false;
    left -= shownTiles(tiling);
    return true;
  });
  return large.filter((t) => shaped.includes(t) || chosen.includes(t));
}

function tilePages(tiling: Tiling, naming: (p: Pattern) => string): PlannedPage[] {
  const { pattern, tiles, rows, columns } = tiling;
  return tiles
    .filter((tile) => tile.shows)
    .map((tile) => ({
      title: `${naming(pattern)}, row ${tile.row + 1} of ${rows}, column ${tile.column + 1} of ${columns}`,
      notes: `${stock(pattern)}. ${pattern.notes.join(' ')}`,
      content: { kind: 'tile', tiling, tile },
    }));
}

export function stock(pattern: Pattern): string {
  return `${pattern.count} off, ${pattern.material}, ${(pattern.thickness * 1e3).toFixed(2)} mm`;
}

/** Packs patterns that fit one window together, each with a caption under it. Patterns of one outline are drawn once. */
function gather(small: Tiling[], window: Window, naming: (p: Pattern) => string): PlannedPage[] {
  const packer = new MaxRectsPacker<Rectangle>(window.width - 4, window.height - 4, BLANK_GAP, {
    smart: false,
    pot: false,
    square: false,
    allowRotation: false,
  });
  const groups = new Map<string, Pattern[]>();
  for (const { pattern } of small) {
    const outline = JSON.stringify(pattern.outlines);
    groups.set(outline, [...(groups.get(outline) ?? []), pattern]);
  }
  const rectangles = [...groups.values()].map((group) => {
    const [pattern] = group;
    const bounds = drawnBounds(pattern);
    const caption = group.map((p) => `${naming(p)}: ${stock(p)}`).join('; ');
    const width = Math.max((bounds.maxX - bounds.minX) * 1e3, Math.min(widthOf(caption), window.width - 6));
    const rectangle = new Rectangle(
      Math.min(width, window.width - 4),
      Math.min((bounds.maxY - bounds.minY) * 1e3 + CAPTION_ROOM, window.height - 4),
    );
    rectangle.data = { pattern, caption, group };
    return rectangle;
  });
  packer.addArray(rectangles);
  return packer.bins.map((bin): PlannedPage => {
    const items = bin.rects.map((r) => ({
      ...(r.data as { pattern: Pattern; caption: string; group: Pattern[] }),
      x: r.x + 2,
      y: r.y + 2,
    }));
    const names = items.flatMap((item) => item.group.map(naming));
    return {
      title: names.length <= 2 ? names.join('; ') : `${names.length} small parts`,
      notes: items.flatMap((item) => item.group.map((p) => `${naming(p)}: ${p.notes.join(' ')}`)).join(' '),
      content: { kind: 'several', items },
    };
  });
}

/** Space between marking-out drawings, mm. */
const BLOCK_GAP = 4;

function markingPages(patterns: Pattern[], window: Window, heading: (p: Pattern) => string): PlannedPage[] {
  const pages: { blocks: { block: MarkingBlock; y: number }[]; y: number }[] = [];
  for (const pattern of patterns) {
    const block = markingBlock(pattern, heading(pattern), window.width - 4);
    let page = pages.find((p) => p.y + block.height <= window.height - 2);
    if (!page) {
      page = { blocks: [], y: 2 };
      pages.push(page);
    }
    page.blocks.push({ block, y: page.y });
    page.y += block.height + BLOCK_GAP;
  }
  return pages.map(({ blocks }, i) => ({
    title: `Sizes for marking out and checking, not at true size, sheet ${i + 1} of ${pages.length}`,
    notes:
      'Not at true size. Check the taped paper by these sizes, or mark them out on the metal; the SVG and DXF files beside the report hold every part at true size.',
    content: { kind: 'marking', blocks },
  }));
}
