/** What was tried to find a browser, and why each try came to nothing. */
export interface BrowserRefusal {
  origin: string;
  reason: string;
}

/** No browser on this machine can print. The HTML report stands without one. */
export class NoBrowserError extends Error {
  override name = 'NoBrowserError';
  readonly refusals: readonly BrowserRefusal[];

  constructor(refusals: readonly BrowserRefusal[], advice: string) {
    const lines = refusals.map(({ origin, reason }, i) => `  ${i + 1}. ${origin}: ${reason}`);
    super(
      ['No browser was found that can print the PDF; the HTML report is complete without it.', 'Tried, in this order:']
        .concat(lines, advice)
        .join('\n'),
    );
    this.refusals = refusals;
  }
}
