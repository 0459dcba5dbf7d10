/** Puts the results of a study together: ranks the finalists, gives every architecture its reason, and writes the answer. Pure. */
import { duration } from '../../shared/checks/say.ts';
import { digestOf } from '../config/canonical.ts';
import type { RankingWishes, Study } from '../config/study.ts';
import { answerParagraphs } from './answer.ts';
import { failureReason, forcesOf } from './architecture-reasons.ts';
import { contradictionsOf } from './contradictions.ts';
import type { ArchitectureEvidence, FinalistEvidence, StudyEvidence } from './evidence.ts';
import { asLong, constraintWords, fuelAgainst, fuelWords, moreOrLess } from './phrases.ts';
import { type Ranked, rankFinalists } from './rank.ts';
import type { ArchitectureResult, Candidate, StudyResults } from './results.ts';
import { sheetChoices } from './sheet-choices.ts';

/** The results of a study. Same evidence, same value. */
export function assembleResults(evidence: StudyEvidence): StudyResults {
  const { study } = evidence;
  const ranked = rankFinalists(evidence.finalists, study.ranking, study.brief.limits.minSustainChance);
  const candidates = ranked.map((entry, place) =>
    candidateOf(study, evidence.finalists[entry.index], entry, place + 1, ranked),
  );
  const architectures = evidence.architectures.map((architecture) =>
    architectureResult(architecture, candidates, evidence.architectures),
  );
  return {
    formatVersion: 1,
    study,
    configurationDigest: digestOf(study),
    modelVersion: evidence.modelVersion,
    toolVersion: evidence.toolVersion,
    answer: answerParagraphs(evidence, candidates, architectures),
    contradictions: contradictionsOf(evidence),
    candidates,
    tradePoints: evidence.tradePoints.map((point) => ({ ...point, reason: constraintWords(point.reason) })),
    front: frontOf(candidates, ranked),
    architectures,
    evaluations: evidence.evaluations,
    ...(evidence.screening ? { screening: evidence.screening } : {}),
    stoppedBecause: evidence.stoppedBecause,
    convergence: evidence.convergence,
    constants: evidence.constants,
    validation: evidence.validation,
  };
}

function candidateOf(
  study: Study,
  finalist: FinalistEvidence,
  entry: Ranked,
  rank: number,
  ranked: readonly Ranked[],
): Candidate {
  const { space, x, result, robustness, sensitivities } = finalist;
  const engine = space.toEngine(x);
  if ('refused' in engine) throw new RangeError(`a finalist is refused by geometry: ${engine.sentence}`);
  const id = `C${rank}`;
  return {
    id,
    rank,
    architecture: space.architecture,
    variables: space.describe(x),
    x,
    engine: { ...engine, name: `${id}, ${space.architecture.label}` },
    performance: result.performance,
    assessment: result.assessment,
    robustness,
    sensitivities,
    feasible: entry.feasible,
    nonDominated: entry.nonDominated,
    score: entry.score,
    why: whyRanked(study, finalist, entry, ranked),
    ...(result.performance.running ? { alternatives: sheetChoices(engine, result.performance.running) } : {}),
  };
}

const METHOD_WORDS: Record<RankingWishes['method'], string> = {
  weighted: 'weighted score',
  knee: 'distance from the line between the ends of the trade',
  'life-at-bounded-tsfc': 'life within the bound on TSFC',
};

/** The words that explain a rank, with the robust values that made it. */
function whyRanked(
  study: Study,
  { summary, robustness }: FinalistEvidence,
  entry: Ranked,
  ranked: readonly Ranked[],
): string {
  if (!entry.feasible) return whyNotFeasible(study, summary, robustness);
  const { method, tsfcWeight, lifeWeight } = study.ranking;
  const first = ranked[0];
  const weights = method === 'weighted' ? ` (TSFC ${tsfcWeight}, life ${lifeWeight})` : '';
  const values = `three draws in four stay below ${fuelWords(entry.tsfc!)} and outlast ${duration(entry.life!)}`;
  const line = entry.nonDominated ? 'no finalist beats it in both' : 'another finalist beats it in both';
  const chance = `it meets every wish in ${Math.round(100 * robustness.feasibleChance)} % of the draws`;
  const against =
    entry === first
      ? 'best'
      : `against the first it uses ${moreOrLess(entry.tsfc!, first.tsfc!, 'more', 'less')} fuel; ${entry.score.toFixed(2)} against ${first.score.toFixed(2)}`;
  return `By ${METHOD_WORDS[method]}${weights}, ${against}: ${values}; ${line}; ${chance}.`;
}

function whyNotFeasible(
  study: Study,
  summary: FinalistEvidence['summary'],
  robustness: FinalistEvidence['robustness'],
): string {
  if (summary.status !== 'ok') return `It fails at full resolution: ${summary.reason}.`;
  if (summary.violations.length > 0) {
    return `It breaks ${summary.violations.map(({ id }) => `"${constraintWords(id)}"`).join(', ')}; ordered by how much.`;
  }
  const wanted = Math.round(100 * study.brief.limits.minSustainChance);
  return `It runs by itself in ${Math.round(100 * robustness.sustainChance)} % of the draws, and ${wanted} % are asked for.`;
}

/** Non-dominated candidates by rising robust TSFC. */
function frontOf(candidates: readonly Candidate[], ranked: readonly Ranked[]): string[] {
  return candidates
    .map((candidate, i) => ({ id: candidate.id, on: candidate.nonDominated, tsfc: ranked[i].tsfc ?? Infinity }))
    .filter(({ on }) => on)
    .sort((a, b) => a.tsfc - b.tsfc)
    .map(({ id }) => id);
}

function architectureResult(
  evidence: ArchitectureEvidence,
  candidates: readonly Candidate[],
  all: readonly ArchitectureEvidence[],
): ArchitectureResult {
  const { architecture, evaluations, running, feasible, failures } = evidence;
  const own = candidates.find((candidate) => candidate.architecture.id === architecture.id && candidate.feasible);
  const named = failures.map(({ reason, count }) => ({ reason: constraintWords(reason), count }));
  const base = { architecture, evaluations, running, feasible, bestCandidate: own?.id ?? null, failures: named };
  if (feasible > 0 || own) {
    const valve = own?.performance.running?.valve ?? null;
    return {
      ...base,
      leastViolating: null,
      reason: standing(own ?? null, candidates[0]),
      freedBy: '',
      forces: valve === null ? null : forcesOf(valve),
    };
  }
  const { reason, freedBy, forces, bindingConstraint } = failureReason(evidence, all);
  const { nearest } = evidence;
  const engine = nearest?.space.toEngine(nearest.x);
  const leastViolating =
    nearest && engine && !('refused' in engine)
      ? { engine, summary: nearest.summary, bindingConstraint: constraintWords(bindingConstraint) }
      : null;
  return { ...base, leastViolating, reason, freedBy, forces };
}

/** Where a working architecture stands against the first. */
function standing(own: Candidate | null, first: Candidate | undefined): string {
  if (own === null)
    return 'It met every wish in the search, but none of its designs was among the finalists that kept their place.';
  if (first === undefined || own.id === first.id) return 'It holds the first rank.';
  const fuel =
    own.robustness.tsfc && first.robustness.tsfc
      ? fuelAgainst(own.robustness.tsfc.median, first.robustness.tsfc.median, first.id)
      : null;
  const life =
    own.robustness.valveLife && first.robustness.valveLife
      ? asLong(own.robustness.valveLife.median, first.robustness.valveLife.median)
      : null;
  const parts = [fuel === null ? '' : `uses ${fuel}`, life === null ? '' : `lasts ${life}`].filter(
    (part) => part !== '',
  );
  return `Its best, ${own.id}, ${parts.length > 0 ? parts.join(' and ') : `stands behind ${first.id}`}.`;
}
