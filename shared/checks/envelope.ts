/** Shared by the checks of a greatest size, mass or fuel use that the brief states. */
import { atMost, type Judgement, notApplicable } from './rule.ts';

export function judgeWish(
  limit: number | null,
  value: () => number,
  unit: string,
  say: (value: number) => string,
  what: string,
  cure: (over: number) => string,
): Judgement {
  if (limit === null) return notApplicable(`No limit of ${what} is stated.`);
  const found = `${what[0].toUpperCase()}${what.slice(1)} is ${say(value())}; ${say(limit)} is allowed`;
  return atMost(
    // A drawn size is a size: no caution band.
    { value: value(), limit, unit, cautionMargin: 0 },
    { pass: `${found}.`, caution: `${found}.`, fail: `${found}: ${cure(value() - limit)}.` },
  );
}
