/** Dimensions of an engine in mm and inch, as they go on a bench. */
import type { Engine, Section, SectionRole } from '../../../shared/engine/engine.ts';
import { count } from '../format/number.ts';
import { both, imperial, metric } from '../format/quantity.ts';

export interface DimensionRow {
  name: string;
  metric: string;
  imperial: string;
}

export const ROLE_NAMES: Record<SectionRole, string> = {
  intake: 'Intake pipe',
  'intake-cone': 'Intake cone',
  chamber: 'Chamber',
  'chamber-cone': 'Chamber cone',
  tailpipe: 'Tailpipe',
  bend: 'Bend',
  'exit-flare': 'Exit flare',
};

function row(name: string, value: number, unit = 'm'): DimensionRow {
  return { name, metric: metric(value, unit), imperial: imperial(value, unit) };
}

function textRow(name: string, value: string): DimensionRow {
  return { name, metric: value, imperial: '' };
}

function sectionRows(section: Section): DimensionRow[] {
  const name = ROLE_NAMES[section.role];
  const rows = [row(`${name}, length`, section.length)];
  if (section.startDiameter === section.endDiameter) rows.push(row(`${name}, inside diameter`, section.startDiameter));
  else
    rows.push(
      row(`${name}, inside diameter at head end`, section.startDiameter),
      row(`${name}, inside diameter at exit end`, section.endDiameter),
    );
  if (section.bend)
    rows.push(
      row(`${name}, centreline radius`, section.bend.radius),
      textRow(`${name}, angle`, metric(section.bend.angle, 'rad')),
    );
  return rows;
}

function intakeRows(engine: Engine): DimensionRow[] {
  const { intake } = engine;
  if (intake.kind === 'reed')
    return [
      textRow('Reed petals', `${count(intake.petals, 'petal')}, ${intake.material}`),
      row('Petal, free length from clamp to tip', intake.length),
      row('Petal, mean width', intake.width),
      row('Petal, thickness', intake.thickness),
      row('Stop, lift at the tip', intake.stopLift),
      row('Port under one petal, area', intake.portArea, 'm²'),
    ];
  if (intake.kind === 'poppet')
    return [
      textRow(
        'Poppet valves',
        `${count(intake.valves, 'valve')}, ${intake.material}, ${intake.stemJoint} stem, axis ${intake.axis}`,
      ),
      row('Valve head, diameter', intake.headDiameter),
      row('Seat throat, diameter', intake.portDiameter),
      row('Greatest lift', intake.lift),
      row('Stem, diameter', intake.stemDiameter),
      row('Moving mass without spring', intake.mass, 'kg'),
      row('Spring rate', intake.springRate, 'N/m'),
      row('Spring force when shut', intake.preload, 'N'),
    ];
  return [textRow('Intake mouth', `${intake.lip} lip, points ${intake.mouth}`)];
}

/** Duct from head to exit, then intake, augmenter and sheet. */
export function dimensionRows(engine: Engine): DimensionRow[] {
  const { augmenter, shell } = engine;
  return [
    ...engine.sections.flatMap(sectionRows),
    ...intakeRows(engine),
    ...(augmenter
      ? [
          row('Augmenter, throat diameter', augmenter.diameter),
          row('Augmenter, length behind the bell', augmenter.length),
          row('Augmenter, gap from exit to lip', augmenter.gap),
          ...(augmenter.taper === 1 ? [] : [row('Augmenter, exit diameter', augmenter.diameter * augmenter.taper)]),
        ]
      : []),
    { ...row('Shell sheet, thickness', shell.thickness), name: `Shell sheet ${shell.material}, thickness` },
  ];
}

/** One line for the short sheets: "chamber Ø 65 × 120 mm, …". */
export function dimensionLine(engine: Engine): string {
  const parts = engine.sections
    .filter((s) => s.role === 'chamber' || s.role === 'tailpipe' || s.role === 'intake')
    .map((s) => `${ROLE_NAMES[s.role].toLowerCase()} Ø\u00a0${both(s.startDiameter, 'm')} by ${both(s.length, 'm')}`);
  return parts.join('; ');
}
