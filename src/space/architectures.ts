/** Every architecture that a study allows, each with its variables and the way from coordinates to an engine. */
import type { Augmenter, Engine, Intake, Section } from '../../shared/engine/engine.ts';
import type { AugmenterRanges, IntakeChoice, Study } from '../config/study.ts';
import type { Architecture, ArchitectureSpace, Refusal } from './architecture.ts';
import { Coordinates, type Values } from './coordinates.ts';
import {
  addDuctVariables,
  chamberSections,
  type DuctDimensions,
  ductDimensions,
  isObjection,
  tailSections,
} from './duct.ts';
import { addPoppetVariables, poppetFit, poppetIntake } from './poppet-intake.ts';
import { addReedVariables, reedFit, reedIntake } from './reed-intake.ts';
import { type Objection, refusalFor } from './refusal.ts';
import { toHalfMillimetre, toHundredth } from './rounding.ts';
import { addValvelessVariables, bendRadius, intakeSections, valvelessIntake } from './valveless-intake.ts';
import { lengthWords, millimetres } from './wording.ts';
import { workshopObjections } from './workshop.ts';

/** A space that can say its designs in words. */
export interface DesignSpace extends ArchitectureSpace {
  describe(x: readonly number[]): { name: string; label: string; value: string }[];
}

const INTAKE_WORDS: Record<IntakeChoice, string> = {
  reed: 'reed valves',
  poppet: 'poppet valves',
  'valveless-straight': 'valveless, straight',
  'valveless-u': 'valveless, U-bent',
};

const FEED_WORDS = {
  premixed: 'premixed',
  'steady-injection': 'steadily injected',
  'timed-injection': 'timed injection of',
} as const;

/**
 * Intake × augmenter × feed, in the order of the configuration. Premixed feeds are left out for valveless intakes: an open
 * intake would blow the mixture out.
 */
export function architecturesOf(study: Study): DesignSpace[] {
  const { intakes, augmenter, feeds } = study.space;
  return intakes.flatMap((intake) =>
    augmenter.flatMap((choice) =>
      feeds
        .filter((feed) => feed.mode !== 'premixed' || !intake.startsWith('valveless'))
        .map((feed) => designSpace(study, architecture(intake, choice === 'with', feed))),
    ),
  );
}

/** Names, labels and human values of one design. */
export function describeDesign(
  space: DesignSpace,
  x: readonly number[],
): { name: string; label: string; value: string }[] {
  return space.describe(x);
}

function architecture(intake: IntakeChoice, augmenter: boolean, feed: Architecture['feed']): Architecture {
  return {
    id: `${intake}_${augmenter ? 'augmented' : 'plain'}_${feed.mode}-${feed.fuel}`,
    label: `${INTAKE_WORDS[intake]}, ${augmenter ? 'with augmenter' : 'no augmenter'}, ${FEED_WORDS[feed.mode]} ${feed.fuel}`,
    intake,
    augmenter,
    feed,
  };
}

function designSpace(study: Study, kind: Architecture): DesignSpace {
  const { space } = study;
  const coordinates = new Coordinates();
  const own = kind.intake.startsWith('valveless') ? space.valveless : null;
  addDuctVariables(coordinates, {
    ...space.geometry,
    chamberAspect: own?.chamberAspect ?? space.geometry.chamberAspect,
    tailpipeRatio: own?.tailpipeRatio ?? space.geometry.tailpipeRatio,
    tailpipeAspect: own?.tailpipeAspect ?? space.geometry.tailpipeAspect,
  });
  if (kind.intake === 'reed') addReedVariables(coordinates, needed(space.reed, 'reed'));
  else if (kind.intake === 'poppet') addPoppetVariables(coordinates, needed(space.poppet, 'poppet'));
  else addValvelessVariables(coordinates, needed(space.valveless, 'valveless'));
  if (kind.augmenter) addAugmenterVariables(coordinates, needed(space.augmenterRanges, 'augmenter'));
  const mixture = own?.equivalenceRatio ?? space.equivalenceRatio;
  coordinates.real('equivalence-ratio', 'equivalence ratio', mixture, '', (value) => toHundredth(value).toFixed(2));
  coordinates.choice(
    'shell',
    'shell',
    space.shells.map((shell) => `${shell.material}, ${millimetres(shell.thickness)} mm`),
  );
  const toEngine = (x: readonly number[]) => build(study, kind, coordinates.read(x));
  return {
    architecture: kind,
    variables: coordinates.variables,
    toEngine,
    describe: (x) => {
      const engine = toEngine(x);
      return coordinates.describe(x, 'refused' in engine ? null : engine);
    },
  };
}

function build(study: Study, kind: Architecture, values: Values): Engine | Refusal {
  const duct = ductDimensions(values);
  if (isObjection(duct)) return refusalFor([duct])!;
  const shell = study.space.shells[values('shell')];
  const head = kind.intake.startsWith('valveless') ? intakeSections(values, duct) : [];
  const tail = tailSections(duct, kind.intake === 'valveless-u' ? bendRadius(duct, shell.thickness) : null);
  if (isObjection(head) || isObjection(tail)) return refusalFor([head, tail].filter(isObjection))!;
  const sections: Section[] = [...head, ...chamberSections(duct), ...tail];
  const { intake, objections } = intakeOf(study, kind, values, duct);
  const engine: Engine = {
    name: kind.label,
    sections,
    intake,
    feed: { fuel: kind.feed.fuel, mode: kind.feed.mode, equivalenceRatio: toHundredth(values('equivalence-ratio')) },
    shell,
    augmenter: kind.augmenter ? augmenter(values, duct) : null,
    site: study.site,
  };
  if (intake.kind === 'reed') objections.push(reedFit(engine, intake));
  if (intake.kind === 'poppet') objections.push(...poppetFit(engine, intake));
  objections.push(...workshopObjections(engine, study.brief));
  return refusalFor(objections) ?? engine;
}

function intakeOf(
  study: Study,
  kind: Architecture,
  values: Values,
  duct: DuctDimensions,
): { intake: Intake; objections: (Objection | null)[] } {
  const { space } = study;
  if (kind.intake === 'reed') {
    const { intake, objection } = reedIntake(values, needed(space.reed, 'reed'), duct.tailDiameter);
    return { intake, objections: [objection] };
  }
  if (kind.intake === 'poppet') {
    return {
      intake: poppetIntake(values, needed(space.poppet, 'poppet'), duct.tailDiameter, duct.chamberDiameter),
      objections: [],
    };
  }
  return { intake: valvelessIntake(values, needed(space.valveless, 'valveless'), kind.intake), objections: [] };
}

function addAugmenterVariables(coordinates: Coordinates, ranges: AugmenterRanges): void {
  const lengthOf = (name: 'diameter' | 'length' | 'gap') => (value: number, engine: Engine | null) =>
    engine?.augmenter ? `${value.toFixed(2)}: ${lengthWords(engine.augmenter[name])}` : value.toFixed(2);
  coordinates.real(
    'augmenter-ratio',
    'augmenter diameter over exit diameter',
    ranges.diameterRatio,
    '',
    lengthOf('diameter'),
  );
  coordinates.real('augmenter-aspect', 'augmenter length over diameter', ranges.aspect, '', lengthOf('length'));
  coordinates.real('augmenter-gap', 'gap over exit diameter', ranges.gapRatio, '', lengthOf('gap'));
  coordinates.real('augmenter-taper', 'augmenter exit over throat', ranges.taper, '', (value) =>
    toHundredth(value).toFixed(2),
  );
}

function augmenter(values: Values, duct: DuctDimensions): Augmenter {
  const diameter = toHalfMillimetre(values('augmenter-ratio') * duct.exitDiameter);
  return {
    diameter,
    length: toHalfMillimetre(values('augmenter-aspect') * diameter),
    gap: toHalfMillimetre(values('augmenter-gap') * duct.exitDiameter),
    taper: toHundredth(values('augmenter-taper')),
  };
}

function needed<T>(ranges: T | null, name: string): T {
  if (ranges === null) throw new RangeError(`The study explores "${name}" without ranges for it.`);
  return ranges;
}
