/** Turns what the mail library reports into words, and tells "later" from "never". */
import { plainLine } from './addresses.ts';
import type { MailErrorKind } from './mail-error.ts';
import type { TransportSettings } from './transport-settings.ts';

export interface ServerFault {
  kind: MailErrorKind;
  /** Worth another attempt. */
  temporary: boolean;
  /** One sentence for people, without secrets and without control characters. */
  sentence: string;
}

/** The parts of the library's errors that are read here. */
export interface LibraryError extends Error {
  code?: string;
  command?: string;
  responseCode?: number;
  response?: string;
  recipient?: string;
  rejectedErrors?: LibraryError[];
}

const CERTIFICATE = /certificate|altnames|self-signed|self signed|SSL routines|wrong version number/i;

/**
 * Source of the reply codes: RFC 5321, 4.2.1 and 4.2.3 (4yz come back later, 5yz never; 552 too much data);
 * of the enhanced codes: RFC 3463 (5.2.2 mailbox full, 5.2.3 and 5.3.4 message too large).
 */
export function judgeFault(error: LibraryError, transport: TransportSettings): ServerFault {
  const server = `${transport.host}:${transport.port}`;
  const words = serverWords(error, transport);
  const said = words ? ` It said: ${words}` : '';
  const reply = error.responseCode ?? 0;
  const fault = (kind: MailErrorKind, sentence: string, temporary = false): ServerFault => ({
    kind,
    temporary,
    sentence,
  });

  if (reply >= 400 && reply < 500) return fault('busy', `${server} asked to come back later.${said}`, true);
  if (error.code === 'EAUTH' || error.code === 'ENOAUTH')
    return reply === 0
      ? fault('login', `${server} offers no way to log in that is known here (${redact(error.message, transport)}).`)
      : fault('login', `${server} refused the user or the password.${said}`);
  if (error.code === 'ETLS' || CERTIFICATE.test(error.message)) return encryptionFault(error, transport, server, said);
  if (isTooLarge(error, words)) return fault('too large', `${server} takes no mail of this size.${said}`);
  if (reply >= 500) {
    if (error.command === 'RCPT TO') return fault('recipient', `${server} refused the recipient.${said}`);
    if (reply === 530 || reply === 538)
      return transport.login
        ? fault('login', `${server} wants another kind of login.${said}`)
        : fault(
            'login',
            `${server} takes mail only after login; set PULSEJET_SMTP_USER and PULSEJET_SMTP_PASSWORD.${said}`,
          );
    if (error.command === 'MAIL FROM') return fault('sender', `${server} refused the sender's address.${said}`);
    return fault('refused', `${server} refused the mail.${said}`);
  }
  if (error.code === 'EENVELOPE')
    return fault('address', `an address cannot be sent to: ${redact(error.message, transport)}.`);
  const reason = redact(error.message, transport);
  return fault('unreachable', `${server} could not be reached or broke off (${reason}).`, true);
}

function encryptionFault(error: LibraryError, transport: TransportSettings, server: string, said: string): ServerFault {
  const temporary = error.code === 'ETLS' && /closed unexpectedly|timeout|ECONNRESET/i.test(error.message) && !said;
  if (error.command === 'STARTTLS' && said)
    return {
      kind: 'encryption',
      temporary: false,
      sentence: `${server} offers no encryption (STARTTLS), and mail never goes out readable unless PULSEJET_SMTP_TLS=none is set.${said}`,
    };
  const hint = /self-signed|self signed|unable to verify|unable to get|issuer/i.test(error.message)
    ? ' PULSEJET_SMTP_CA may name the authority that signed it.'
    : /wrong version number|packet length/i.test(error.message)
      ? ` The server may want ${transport.encryption === 'tls' ? 'smtp://' : 'smtps://'} instead.`
      : '';
  return {
    kind: 'encryption',
    temporary,
    sentence: `no trusted encrypted connection to ${server} (${redact(error.message, transport)}).${hint}`,
  };
}

function isTooLarge(error: LibraryError, words: string): boolean {
  if (error.code === 'EMESSAGE' && /size larger than allowed/.test(error.message)) return true;
  if (/\b5\.(2\.3|3\.4)\b/.test(words)) return true;
  return error.responseCode === 552 && !/\b5\.2\.2\b/.test(words);
}

function serverWords(error: LibraryError, transport: TransportSettings): string {
  return error.response ? redact(error.response, transport) : '';
}

/** A server may repeat what it was told; passwords and control characters stay out of messages. */
function redact(text: string, transport: TransportSettings): string {
  let line = plainLine(text, 300);
  const { login } = transport;
  if (login) {
    const secrets = [login.password, `\0${login.user}\0${login.password}`].map((it) =>
      Buffer.from(it).toString('base64'),
    );
    for (const secret of [login.password, ...secrets]) line = line.replaceAll(secret, '***');
  }
  return line;
}
