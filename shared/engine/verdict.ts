/** Why an engine does not run, in the order in which a builder would look. */
import type { DeathCause, ValveMotion } from './performance.ts';

export interface DeathSigns {
  /** Hottest gas seen at the end of a cycle, K. */
  hottest: number;
  /** Strongest cycle while starting air was on: peak gauge pressure over ambient. */
  strongest: number;
  /** Heat still released per second over what the fuel could give, after the start. */
  burning: number;
  equivalenceRatio: number;
  valve: ValveMotion | null;
}

/** Gas below this never burned, K. */
export const NEVER_LIT = 1100;
/** Mixtures beyond these are blamed first (flammability of propane and petrol in air with hot residuals; common practice). */
const RICH = 1.6;
const LEAN = 0.75;
/** A valve that is open for less of the suction than this starves the engine. */
const STARVED = 0.35;

/** The likeliest cause of death. */
export function deathCause(s: DeathSigns): DeathCause {
  if (s.hottest < NEVER_LIT) return s.valve && s.valve.followRatio < 1 ? 'intake does not follow' : 'no ignition';
  if (s.valve && (s.valve.followRatio < 1 || s.valve.openFraction < STARVED)) return 'intake does not follow';
  if (s.equivalenceRatio > RICH) return 'over-rich';
  if (s.equivalenceRatio < LEAN) return 'over-lean';
  return s.burning > 0.3 ? 'burns without pulsing' : 'blow-out';
}

/** One sentence a builder understands. */
export function deathMessage(cause: DeathCause, valve: ValveMotion | null, cycle: number): string {
  const when =
    cycle === 0
      ? 'It stops as soon as air and spark are taken away'
      : `It stops ${cycle} cycle${cycle === 1 ? '' : 's'} after air and spark are taken away`;
  switch (cause) {
    case 'intake does not follow':
      return valve
        ? `${when}: suction offers each valve ${valve.forceOffered.toFixed(2)} N for ${(valve.suctionWindow * 1e3).toFixed(1)} ms, and opening it in time needs ${valve.forceNeeded.toFixed(2)} N.`
        : `${when}: the intake does not follow.`;
    case 'no ignition':
      return 'The mixture never lit: neither spark nor hot gas set it off.';
    case 'over-rich':
      return `${when}: the mixture is too rich to burn in time.`;
    case 'over-lean':
      return `${when}: the mixture is too lean to relight from the hot gas that is left.`;
    case 'burns without pulsing':
      return `${when}: it goes on burning like a torch, without pulsing, and gives no thrust to speak of.`;
    case 'blow-out':
      return `${when}: what is left in the chamber does not relight the fresh charge in time.`;
  }
}
