/** Face of the valve or seat plate from the chamber: ports, petals or heads, clamp and screws. */
import type { Engine, PoppetIntake, ReedIntake } from '../../../../shared/engine/engine.ts';
import { enginePatterns } from '../../../../shared/fabrication/patterns/engine-patterns.ts';
import { rowPort, wheelPorts } from '../../../../shared/fabrication/patterns/reed.ts';
import { petalLayout } from '../../../../shared/fabrication/petal-layout.ts';
import { poppetLayout } from '../../../../shared/fabrication/poppet-layout.ts';
import { headFlange, plateThickness } from '../../../../shared/fabrication/proportions.ts';
import type { SectionDrawing } from '../../drawing-set.ts';
import { anchor } from '../../format/escape.ts';
import type { Paper } from '../../page.ts';
import {
  diameterText,
  drawingSvg,
  FINE_SCALES,
  lengthText,
  scaleText,
  segment,
  standardScale,
  type XY,
} from '../drafting.ts';
import { patternLayers, toPaper } from '../pattern-svg.ts';
import { DRAWING_WIDTH } from '../side-view.ts';
import { type Callout, calloutColumn } from './callouts.ts';
import type { SectionOptions } from './index.ts';

const LARGEST = 92;
const MARGIN = 5;

interface Feature {
  text: string;
  /** Place on the plate, m. */
  at: XY;
}

export function plateFace(
  engine: Engine,
  intake: ReedIntake | PoppetIntake,
  paper: Paper,
  { id, marks }: SectionOptions,
): SectionDrawing {
  const pattern = enginePatterns(engine).find((p) => p.id === 'valve-plate')!;
  const flange = headFlange(engine.sections[0].startDiameter, engine.shell.thickness);
  const diameter = flange.outerDiameter;
  const scale = standardScale(diameter, diameter, LARGEST, LARGEST, FINE_SCALES);
  const size = diameter * scale * 1e3;
  const width = DRAWING_WIDTH[paper];
  const centre = { x: MARGIN + size / 2, y: MARGIN + size / 2 };
  const map = { originX: centre.x, originY: centre.y, scale: scale * 1e3 };
  const features = [
    ...plateFeatures(engine, marks['valve-plate'] ?? ''),
    ...(intake.kind === 'reed' ? reedFeatures(engine, intake, marks) : poppetFeatures(engine, intake, marks)),
  ];
  const callouts = features.map((f): Callout => ({ text: f.text, at: toPaper(map, f.at) }));
  const column = MARGIN + size + 12;
  const height = Math.max(size + 2 * MARGIN, 7 * features.length + 2 * MARGIN);
  const reach = size / 2 + 3;
  const svg = drawingSvg(
    {
      id: `${anchor(id)}-face`,
      title: `${pattern.name} of ${id} seen from the chamber, scale ${scaleText(scale)}`,
      description: `${features.map((f) => f.text).join('; ')}.`,
      width,
      height,
    },
    patternLayers(pattern, map, { text: false }),
    segment({ x: centre.x - reach, y: centre.y }, { x: centre.x + reach, y: centre.y }, { dash: 'chain' }),
    segment({ x: centre.x, y: centre.y - reach }, { x: centre.x, y: centre.y + reach }, { dash: 'chain' }),
    calloutColumn(callouts, column, width - column - 1, MARGIN + 2, height - MARGIN - 2),
  );
  return {
    svg,
    caption: `${pattern.name} seen from the chamber, ${intake.kind === 'reed' ? 'with the petal layout' : 'with the heads'} as chain lines. Scale ${scaleText(scale)}. ${pattern.notes.join(' ')}`,
  };
}

const polar = (radius: number, degrees: number): XY => ({
  x: radius * Math.cos((degrees * Math.PI) / 180),
  y: radius * Math.sin((degrees * Math.PI) / 180),
});

const named = (mark: string | undefined, text: string): string => (mark ? `${mark}: ${text}` : text);

function plateFeatures(engine: Engine, mark: string): Feature[] {
  const chamber = engine.sections[0].startDiameter;
  const flange = headFlange(chamber, engine.shell.thickness);
  // The screw hole that lies nearest to 30° above the level axis.
  const pitch = 360 / flange.screws;
  const screw = 90 - pitch * (Math.round((90 - 30) / pitch - 0.5) + 0.5);
  return [
    {
      text: named(mark, `plate, ${diameterText(flange.outerDiameter)}, ${lengthText(plateThickness(chamber))} thick`),
      at: polar(flange.outerDiameter / 2, 62),
    },
    { text: `chamber inside, ${diameterText(chamber)}`, at: polar(chamber / 2, 47) },
    {
      text: `${flange.screws} holes ${diameterText(flange.screw.hole)} for ${flange.screw.name} on ${diameterText(flange.boltCircle)}`,
      at: polar(flange.boltCircle / 2, screw),
    },
  ];
}

function reedFeatures(engine: Engine, intake: ReedIntake, marks: Record<string, string>): Feature[] {
  const layout = petalLayout(engine, intake);
  const mm2 = (area: number) => `${(area * 1e6).toFixed(1)} mm² (${(area / 0.0254 ** 2).toFixed(3)} sq in)`;
  const petal = `petals ${lengthText(intake.length)} free × ${lengthText(intake.width)} mean × ${(intake.thickness * 1e3).toFixed(2)} mm`;
  const ports = `${intake.petals} ports of ${mm2(intake.portArea)}, together ${mm2(intake.petals * intake.portArea)}`;
  if (layout.kind === 'rows') {
    const [window, second] = layout.windows;
    const { land } = rowPort(layout, intake.portArea);
    return [
      {
        text: `${layout.windows.length} ${second ? 'windows' : 'window'} ${lengthText(window.width)} × ${lengthText(window.height)}${second ? `, middles ${lengthText(second.y - window.y)} apart` : ''}`,
        at: { x: window.width / 2, y: layout.windows.at(-1)!.y },
      },
      {
        text: named(
          marks['wedge-panel'],
          `${layout.rows} wedge panels, each up to ${layout.perRow} petals, on the windows in pairs`,
        ),
        at: { x: window.width / 4, y: window.y },
      },
      {
        text: named(marks.petal, `${intake.petals} ${petal}`),
        at: { x: window.width / 3, y: window.y - window.height / 4 },
      },
      { text: `${ports}; seat ${lengthText(land)} wide`, at: { x: window.width / 6, y: window.y - window.height / 3 } },
    ];
  }
  const { land } = wheelPorts(layout, intake.portArea);
  const nearest = (degrees: number) => {
    const pitch = 360 / layout.petals;
    return 90 - pitch * Math.round((90 - degrees) / pitch);
  };
  const half = (layout.tipWidth / 2 / layout.tipRadius) * (180 / Math.PI);
  const middle = (layout.rootRadius + layout.tipRadius) / 2;
  return [
    {
      text: named(marks['petal-wheel'], `${intake.petals} ${petal}`),
      at: polar(layout.tipRadius, nearest(8) + 0.2 * half),
    },
    { text: `${ports}; seat ${lengthText(land)} wide`, at: polar(middle, nearest(-20)) },
    {
      text: `clamp edge, ${diameterText(2 * layout.rootRadius)}`,
      at: polar(layout.rootRadius, nearest(-55) - 180 / layout.petals),
    },
    { text: `clamp screw hole, ${diameterText(layout.hubHole)}`, at: polar(layout.hubHole / 2, -80) },
  ];
}

function poppetFeatures(engine: Engine, intake: PoppetIntake, marks: Record<string, string>): Feature[] {
  const { centres } = poppetLayout(engine, intake);
  // The head that lies farthest to the right, the lower one of two.
  const chosen = centres.reduce((a, b) => (b.x > a.x + 1e-9 || (Math.abs(b.x - a.x) < 1e-9 && b.y < a.y) ? b : a));
  const on = (radius: number, degrees: number): XY => {
    const p = polar(radius, degrees);
    return { x: chosen.x + p.x, y: chosen.y + p.y };
  };
  const head = marks['poppet-head'] ?? marks['poppet-valve'];
  return [
    {
      text: named(
        head,
        `${intake.valves} ${intake.valves === 1 ? 'head' : 'heads'}, ${diameterText(intake.headDiameter)}`,
      ),
      at: on(intake.headDiameter / 2, 20),
    },
    {
      text: `${intake.valves === 1 ? 'port' : 'ports'}, ${diameterText(intake.portDiameter)}; seat ${lengthText((intake.headDiameter - intake.portDiameter) / 2)} wide`,
      at: on(intake.portDiameter / 2, -30),
    },
  ];
}
