/** Why a report could not be mailed. The report itself is never touched by mail. */

/**
 * settings: the environment or the study's deliver section cannot be used;
 * address: an address or subject that no mail header may hold;
 * unreachable: no connection to the mail server; encryption: no trusted TLS; login: user or password refused;
 * sender, recipient: an address that the server refuses; too large: even the text alone is too large for the server;
 * refused: any other final refusal; busy: the server kept saying "later"; files: the report's files cannot be read.
 */
export type MailErrorKind =
  | 'settings'
  | 'address'
  | 'unreachable'
  | 'encryption'
  | 'login'
  | 'sender'
  | 'recipient'
  | 'too large'
  | 'refused'
  | 'busy'
  | 'files';

export class MailError extends Error {
  override name = 'MailError';
  readonly kind: MailErrorKind;
  /** True when the same mail may go through later without any change. */
  readonly temporary: boolean;
  /** Addresses that did get the mail before this became final. */
  readonly delivered: readonly string[];

  constructor(kind: MailErrorKind, message: string, more: { temporary?: boolean; delivered?: readonly string[] } = {}) {
    super(message);
    this.kind = kind;
    this.temporary = more.temporary ?? false;
    this.delivered = more.delivered ?? [];
  }
}
