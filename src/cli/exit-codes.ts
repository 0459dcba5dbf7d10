/** What the command's exit code says. Documented in the README and in `pulsejet-study --help`. */

export const EXIT = {
  done: 0,
  badConfiguration: 2,
  noFeasibleCandidate: 3,
  modelFailure: 4,
  noBrowser: 5,
  cannotWrite: 6,
  mailFailed: 7,
  fault: 70,
  interrupted: 130,
} as const;

export type ExitCode = (typeof EXIT)[keyof typeof EXIT];

export const EXIT_MEANINGS: readonly [ExitCode, string][] = [
  [EXIT.done, 'done'],
  [EXIT.badConfiguration, 'bad configuration or usage; nothing was started'],
  [EXIT.noFeasibleCandidate, 'no feasible candidate; the report says what stopped each architecture'],
  [EXIT.modelFailure, 'the performance model failed on the engine, or on every design of the study'],
  [EXIT.noBrowser, 'no browser that can print the PDF, or it failed; the HTML report is complete'],
  [EXIT.cannotWrite, 'the study folder cannot be read or written, is in use by another run, or is damaged'],
  [EXIT.mailFailed, 'the report stands, but could not be mailed'],
  [EXIT.fault, 'a fault in the tool itself, or it could not start'],
  [EXIT.interrupted, 'interrupted; the same command goes on from there'],
];

/** Several studies in one command end with the gravest code: the first of these that occurred. */
const GRAVEST_FIRST: readonly ExitCode[] = [
  EXIT.interrupted,
  EXIT.fault,
  EXIT.badConfiguration,
  EXIT.cannotWrite,
  EXIT.modelFailure,
  EXIT.noFeasibleCandidate,
  EXIT.noBrowser,
  EXIT.mailFailed,
];

export function gravest(codes: readonly ExitCode[]): ExitCode {
  return GRAVEST_FIRST.find((code) => codes.includes(code)) ?? EXIT.done;
}
