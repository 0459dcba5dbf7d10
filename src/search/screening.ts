/**
 * Two fidelities: a cheap coarse run screens, the full one decides. A failed screen normally settles a design, but the
 * screen is audited: the failure of a generation that came nearest to working is run in full as well, though hardly more than
 * one failure in four, and when such failures turn out to run too often, failed screens are no longer believed.
 */
import { FAILED, type Member } from './outcome.ts';

/** Share of failed screens that are audited, at most. */
const AUDITED = 0.25;

export class ScreenAudit {
  /** Failed screens that were run in full, and those among them that then ran. */
  audited = 0;
  overturned = 0;
  /** Failed screens so far. */
  private failed = 0;

  /** `doubt`: share of overturned audits above which failed screens are all run in full. */
  constructor(private readonly doubt = 0.2) {}

  /** False once the screen has cried wolf too often. */
  get trusted(): boolean {
    return this.overturned <= this.doubt * (this.audited + 4);
  }

  /** Marks in `promoted` which failed screens to run in full after all; returns their indices. */
  choose(screened: readonly Member[], promoted: boolean[]): number[] {
    const failed = screened.map((_, n) => n).filter((n) => screened[n].tier >= FAILED);
    if (failed.length === 0) return [];
    this.failed += failed.length;
    // Where a generation holds a design or two, auditing each would cost more than screening saves.
    if (this.trusted && this.audited >= 1 + AUDITED * this.failed) return [];
    const nearest = failed.reduce((best, n) => (nearer(screened[n], screened[best]) ? n : best));
    const chosen = this.trusted ? [nearest] : failed;
    for (const n of chosen) promoted[n] = true;
    return chosen;
  }

  get state(): { audited: number; overturned: number; failed: number } {
    return { audited: this.audited, overturned: this.overturned, failed: this.failed };
  }

  set state({ audited, overturned, failed }) {
    this.failed = failed;
    this.audited = audited;
    this.overturned = overturned;
  }

  learn(full: Member): void {
    this.audited++;
    if (full.tier < FAILED) this.overturned++;
  }
}

function nearer(a: Member, b: Member): boolean {
  return a.tier !== b.tier ? a.tier < b.tier : a.violation < b.violation;
}
