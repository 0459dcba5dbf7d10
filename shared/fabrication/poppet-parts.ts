/** Seat plate, heads, stems, retainers, guides and springs of a poppet intake. */
import type { Engine, PoppetIntake } from '../engine/engine.ts';
import { densityOf, SPRING_WIRE } from './density.ts';
import type { Part } from './parts.ts';
import { poppetLengths } from './poppet-layout.ts';
import { valvePlate } from './reed-parts.ts';

/** Bar parts of each valve and the plate that carries their seats. Head, stem and retainer together have the stated mass. */
export function poppetParts(engine: Engine, intake: PoppetIntake): Part[] {
  const lengths = poppetLengths(engine, intake);
  const ports = intake.valves * (Math.PI / 4) * intake.portDiameter ** 2;
  const guideOuter = 2 * intake.stemDiameter;
  const guideMass =
    (Math.PI / 4) *
    (guideOuter ** 2 - intake.stemDiameter ** 2) *
    lengths.guideLength *
    densityOf(engine.shell.material);
  const count = intake.valves;
  const bar = (id: string, name: string, material: string, diameter: number, length: number, mass: number): Part => ({
    id,
    name,
    kind: 'bar',
    material,
    count,
    thickness: diameter,
    blankLength: length,
    blankWidth: 0,
    area: 0,
    mass,
  });
  const stem = [
    bar('poppet-head', 'Poppet head', intake.material, intake.headDiameter, lengths.headThickness, lengths.headMass),
    bar('poppet-stem', 'Poppet stem', intake.material, intake.stemDiameter, lengths.stemLength, lengths.stemMass),
  ];
  const onePiece = [
    bar(
      'poppet-valve',
      'Poppet, head and stem in one piece',
      intake.material,
      intake.headDiameter,
      lengths.headThickness + lengths.stemLength,
      lengths.headMass + lengths.stemMass,
    ),
  ];
  return [
    valvePlate(engine, ports, 'Seat plate'),
    ...(intake.stemJoint === 'welded' ? stem : onePiece),
    bar(
      'spring-retainer',
      'Spring retainer',
      intake.material,
      lengths.retainerDiameter,
      lengths.retainerThickness,
      lengths.retainerMass,
    ),
    bar('stem-guide', 'Stem guide on its spider', engine.shell.material, guideOuter, lengths.guideLength, guideMass),
    {
      ...bar(
        'valve-spring',
        'Valve spring',
        SPRING_WIRE,
        lengths.spring.wireDiameter,
        lengths.spring.wireLength,
        intake.springMass,
      ),
      kind: 'wire',
    },
  ];
}
