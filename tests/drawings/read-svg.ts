/** Reads the drawings' SVG text back: elements in order, text boxes, path points. Shares no code with the writers but text width. */
import { textWidth } from '../../src/report/charts/text-width.ts';

export interface ReadText {
  text: string;
  x0: number;
  y0: number;
  x1: number;
  y1: number;
}

/** Names of elements that are opened and not closed in order; empty for a well-formed drawing. */
export function unbalanced(svg: string): string[] {
  const open: string[] = [];
  for (const [, close, name, self] of svg.matchAll(/<(\/?)([a-zA-Z]+)(?:\s+[\w:-]+="[^"<]*")*\s*(\/?)>/g)) {
    if (close === '') {
      if (self === '') open.push(name);
    } else if (open.pop() !== name) return [name];
  }
  // What is left once all proper tags are taken away must hold no angle bracket.
  const rest = svg.replace(/<\/?[a-zA-Z]+(?:\s+[\w:-]+="[^"<]*")*\s*\/?>/g, '');
  return /[<>]/.test(rest) ? ['<'] : open;
}

const attribute = (attributes: string, name: string): string | null =>
  new RegExp(`(?:^| )${name}="([^"]*)"`).exec(attributes)?.[1] ?? null;

const ENTITIES: Record<string, string> = { '&amp;': '&', '&lt;': '<', '&gt;': '>', '&quot;': '"', '&#39;': "'" };

/** Boxes of all texts; a vertical shift of the group round them moves all alike and is left out. */
export function readTexts(svg: string): ReadText[] {
  return [...svg.matchAll(/<text ([^>]*)>([^<]*)<\/text>/g)].map(([, attributes, raw]) => {
    const text = raw.replace(/&(?:amp|lt|gt|quot|#39);/g, (entity) => ENTITIES[entity]);
    const size = Number(attribute(attributes, 'font-size'));
    const x = Number(attribute(attributes, 'x'));
    const y = Number(attribute(attributes, 'y'));
    const width = textWidth(text, size) * 0.92;
    const anchor = attribute(attributes, 'text-anchor');
    const left = anchor === 'middle' ? -width / 2 : anchor === 'end' ? -width : 0;
    // Height of capitals over the baseline.
    const box = { x0: left, x1: left + width, y0: -0.7 * size, y1: 0 };
    const turn = /rotate\((-?[\d.]+)/.exec(attribute(attributes, 'transform') ?? '');
    const angle = ((turn ? Number(turn[1]) : 0) * Math.PI) / 180;
    const corners = [
      [box.x0, box.y0],
      [box.x1, box.y0],
      [box.x1, box.y1],
      [box.x0, box.y1],
    ].map(([u, v]) => [x + u * Math.cos(angle) - v * Math.sin(angle), y + u * Math.sin(angle) + v * Math.cos(angle)]);
    return {
      text,
      x0: Math.min(...corners.map((c) => c[0])),
      x1: Math.max(...corners.map((c) => c[0])),
      y0: Math.min(...corners.map((c) => c[1])),
      y1: Math.max(...corners.map((c) => c[1])),
    };
  });
}

/** Pairs of texts that lie on one another by more than a hair, 0.2 mm. */
export function collisions(texts: ReadText[]): string[] {
  const hair = 0.2;
  return texts.flatMap((a, i) =>
    texts
      .slice(i + 1)
      .filter((b) => a.x0 < b.x1 - hair && b.x0 < a.x1 - hair && a.y0 < b.y1 - hair && b.y0 < a.y1 - hair)
      .map((b) => `"${a.text}" on "${b.text}"`),
  );
}

/** Paths in order with their layer of the pattern; '' outside the layers. */
export function readPaths(svg: string): { layer: string; d: string }[] {
  let layer = '';
  const paths: { layer: string; d: string }[] = [];
  for (const [, group, d, close] of svg.matchAll(/<g data-layer="(\w+)">|<path d="([^"]+)"[^>]*>|(<\/g>)/g)) {
    if (group) layer = group;
    else if (close) layer = '';
    else paths.push({ layer, d });
  }
  return paths;
}
