/** Everything that a run found out, in the shape that the ranking takes. */
import validation from '../../shared/calibration/validation.json' with { type: 'json' };
import { constantsTable } from '../../shared/index.ts';
import type { Study } from '../config/study.ts';
import type { ArchitectureEvidence, StudyEvidence } from '../ranking/evidence.ts';
import type { ValidationRow } from '../ranking/results.ts';
import type { DesignSpace } from '../space/architectures.ts';
import type { JudgedFinalists } from './judge-finalists.ts';
import type { SearchedStudy } from './search-study.ts';

export interface GatherEvidenceInput {
  study: Study;
  spaces: readonly DesignSpace[];
  searched: SearchedStudy;
  judged: JudgedFinalists;
  modelVersion: string;
  toolVersion: string;
}

export function gatherEvidence(input: GatherEvidenceInput): StudyEvidence {
  const { study, spaces, searched, judged, modelVersion, toolVersion } = input;
  const { result, asked, kept } = searched;
  return {
    study,
    modelVersion,
    toolVersion,
    architectures: spaces.map((space) => architectureEvidence(space, searched, judged)),
    finalists: judged.finalists,
    tradePoints: spaces.flatMap(({ architecture }) =>
      (kept.get(architecture.id)?.designs ?? []).map(({ mass: _, ...point }) => point),
    ),
    evaluations: {
      total: asked.screen + asked.full + judged.finalists.length + judged.nearest.size + judged.asked,
      screen: asked.screen,
      full: asked.full + judged.finalists.length + judged.nearest.size,
      refused: result.problems.reduce((sum, { refused }) => sum + refused, 0),
      robustness: judged.asked,
    },
    screening: result.screening,
    stoppedBecause: result.stoppedBecause,
    convergence: result.convergence.map(({ evaluations, hypervolume }) => ({ evaluations, hypervolume })),
    constants: constantsTable(),
    validation: validation as ValidationRow[],
  };
}

function architectureEvidence(
  space: DesignSpace,
  { result }: SearchedStudy,
  { nearest }: JudgedFinalists,
): ArchitectureEvidence {
  const { architecture } = space;
  const found = result.problems.find(({ id }) => id === architecture.id);
  if (!found) throw new Error(`the search forgot ${architecture.id}`);
  const refusal = found.leastViolating && space.toEngine(found.leastViolating.x);
  return {
    architecture,
    evaluations: found.designs,
    running: found.running,
    feasible: found.feasible,
    failures: found.failures,
    nearest: nearest.get(architecture.id) ?? null,
    ...(refusal && 'refused' in refusal ? { objection: refusal.sentence } : {}),
  };
}
