/** What the search minimises and must keep, from the short answer of an evaluation. */
import type { EvaluationSummary } from '../evaluation/evaluation.ts';
import type { Outcome } from '../search/outcome.ts';

/** TSFC and life, both to be minimised. */
export const OBJECTIVES = 2;

/**
 * Objectives are TSFC, kg/(N s), and −log₁₀ of the median valve life, s: lives differ by decades, and a doubling counts the
 * same whether of minutes or of hours.
 */
export function outcomeOf(summary: EvaluationSummary): Outcome {
  // Violations come normalised to their limits and in varying number; the search compares their sum.
  const total = summary.violations.reduce((sum, { violation }) => sum + violation, 0);
  const violations = total > 0 ? [total] : [];
  if (summary.status !== 'ok' || summary.tsfc === null || summary.valveLife === null) {
    return { status: 'failed', objectives: null, violations, reason: summary.reason || summary.status };
  }
  const life = Math.log10(Math.max(summary.valveLife, 1e-3));
  return { status: 'ok', objectives: [summary.tsfc, -life], violations, reason: summary.violations[0]?.id ?? '' };
}
