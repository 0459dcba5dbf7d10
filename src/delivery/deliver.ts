/**
 * Mails the report of a study: text summary, PDF and patterns. Only reads the study folder, so the report stays whatever
 * becomes of the mail.
 */
import { randomUUID } from 'node:crypto';
import { setTimeout as sleep } from 'node:timers/promises';
import type { SentMessageInfo } from 'nodemailer';
import nodemailer from 'nodemailer';
import type { DeliverySettings } from '../config/study.ts';
import type { StudyResults } from '../ranking/results.ts';
import type { Mailbox } from './addresses.ts';
import { checkSubject, plainLine, readMailbox } from './addresses.ts';
import type { Attachments } from './attachments.ts';
import { chooseAttachments, sizeAsSent } from './attachments.ts';
import { MailError } from './mail-error.ts';
import type { LibraryError, ServerFault } from './server-fault.ts';
import { judgeFault } from './server-fault.ts';
import { summaryText } from './summary-text.ts';
import type { TransportSettings } from './transport-settings.ts';
import { readTransport } from './transport-settings.ts';

export interface DeliverOptions {
  /** Waits before each further attempt, s. The last is long enough for a server that greylists strangers. */
  waits?: readonly number[];
  /** Ends the waiting; the promise then rejects with the signal's reason. */
  signal?: AbortSignal;
  /** Told about each wait, for the terminal. */
  onNote?: (sentence: string) => void;
}

export interface Receipt {
  /** Addresses that the server took the mail for. */
  accepted: string[];
  attempts: number;
  /** File names that went along. */
  attached: string[];
  /** What was left out and why. */
  notes: string[];
  messageId: string;
}

const WAITS = [5, 15, 45, 120, 300];

interface Envelope {
  from: Mailbox;
  to: Mailbox[];
  subject: string | null;
  transport: TransportSettings;
}

/**
 * Checks everything that can be known before a night's run: settings in the environment, addresses, subject.
 * Throws MailError of kind 'settings' or 'address'.
 */
export function checkDelivery(settings: DeliverySettings, env: NodeJS.ProcessEnv): Envelope {
  if (settings.to.length === 0) throw new MailError('address', 'to: nobody is named');
  const to = settings.to.map((text, i) => readMailbox(text, `to[${i}]`));
  const from = readMailbox(settings.from, 'from');
  const subject = settings.subject === null ? null : checkSubject(settings.subject);
  return { to, from, subject, transport: readTransport(env) };
}

/**
 * Sends the report. Temporary refusals and lost connections are tried again after each wait; a server that finds the
 * mail too large gets it without attachments and with a note. A recipient who has it is never sent it again, except
 * where the connection broke before the server's last word; both mails then carry the same Message-ID.
 * Throws MailError: its kind tells what is the matter, `delivered` who has the mail all the same.
 */
export async function deliver(
  study: { results: StudyResults; folder: string },
  settings: DeliverySettings,
  env: NodeJS.ProcessEnv,
  options: DeliverOptions = {},
): Promise<Receipt> {
  const envelope = checkDelivery(settings, env);
  const { slug } = study.results.study;
  let attachments = await chooseAttachments(study.folder, slug, settings.attachmentLimit);
  const messageId = `<${randomUUID()}@${envelope.from.address.split('@')[1]}>`;
  const waits = options.waits ?? WAITS;
  const accepted: string[] = [];
  const refused: string[] = [];
  let pending = envelope.to.map((mailbox) => mailbox.address);
  for (let attempt = 1; ; attempt++) {
    const outcome = await attemptOnce(envelope, pending, message(study, envelope, attachments, messageId));
    accepted.push(...outcome.accepted);
    refused.push(...outcome.refused.map(({ address, fault }) => `${address}: ${fault.sentence}`));
    pending = outcome.pending;
    if (pending.length === 0) {
      if (refused.length > 0) throw final('recipient', refused.join(' '), study.folder, accepted);
      return {
        accepted,
        attempts: attempt,
        attached: attachments.files.map((f) => f.filename),
        notes: attachments.notes,
        messageId,
      };
    }
    const fault = outcome.fault!;
    if (fault.kind === 'too large' && attachments.files.length > 0) {
      const names = attachments.files.map((file) => file.filename).join(' and ');
      attachments = {
        files: [],
        notes: [...attachments.notes, `${names} left out: the mail server takes no mail of this size`],
      };
      options.onNote?.(`${fault.sentence} Sending the text alone.`);
      continue;
    }
    const wait = waits[attempt - 1];
    if (!fault.temporary || wait === undefined)
      throw final(fault.kind, [...refused, fault.sentence].join(' '), study.folder, accepted, attempt, fault.temporary);
    options.onNote?.(`${fault.sentence} Trying again in ${wait} s.`);
    await sleep(wait * 1000, undefined, { signal: options.signal });
  }
}

type Message = ReturnType<typeof message>;

function message(
  study: { results: StudyResults; folder: string },
  envelope: Envelope,
  attachments: Attachments,
  messageId: string,
) {
  const names = attachments.files.map((file) => file.filename);
  const text = summaryText(study.results, study.folder, names, attachments.notes);
  const title = plainLine(study.results.study.report.title, 150);
  return {
    from: envelope.from,
    to: envelope.to,
    subject: envelope.subject ?? `Trade study: ${title}`,
    text,
    messageId,
    // So that out-of-office replies stay away (RFC 3834, 5).
    headers: { 'Auto-Submitted': 'auto-generated' },
    attachments: attachments.files,
    size: attachments.files.reduce((sum, file) => sum + sizeAsSent(file.content.length), Buffer.byteLength(text)),
  };
}

interface Outcome {
  accepted: string[];
  /** Refused for good, one by one. */
  refused: { address: string; fault: ServerFault }[];
  /** Not yet sent to, and why. */
  pending: string[];
  fault: ServerFault | null;
}

async function attemptOnce(envelope: Envelope, to: string[], mail: Message): Promise<Outcome> {
  const { transport } = envelope;
  const { size, ...content } = mail;
  const sender = nodemailer.createTransport({
    host: transport.host,
    port: transport.port,
    secure: transport.encryption === 'tls',
    requireTLS: transport.encryption === 'starttls',
    ignoreTLS: transport.encryption === 'none',
    auth: transport.login ? { user: transport.login.user, pass: transport.login.password } : undefined,
    tls: transport.authority ? { ca: transport.authority } : {},
    // Seconds that a slow line or a slow server may take, in ms.
    connectionTimeout: 30_000,
    greetingTimeout: 30_000,
    socketTimeout: 300_000,
    disableFileAccess: true,
    disableUrlAccess: true,
  });
  try {
    const info: SentMessageInfo = await sender.sendMail({
      ...content,
      envelope: { from: envelope.from.address, to, size },
    });
    return sortRecipients(to, (info.rejectedErrors ?? []) as LibraryError[], transport);
  } catch (error) {
    const fault = error as LibraryError;
    if (fault.rejectedErrors?.length) return sortRecipients(to, fault.rejectedErrors, transport);
    return { accepted: [], refused: [], pending: to, fault: judgeFault(fault, transport) };
  } finally {
    sender.close();
  }
}

function sortRecipients(to: string[], rejected: LibraryError[], transport: TransportSettings): Outcome {
  const outcome: Outcome = { accepted: [], refused: [], pending: [], fault: null };
  for (const address of to) {
    const error = rejected.find((one) => one.recipient === address);
    if (!error) {
      outcome.accepted.push(address);
      continue;
    }
    const fault = judgeFault(error, transport);
    if (fault.temporary) {
      outcome.pending.push(address);
      outcome.fault = fault;
    } else outcome.refused.push({ address, fault });
  }
  return outcome;
}

function final(
  kind: MailError['kind'],
  sentence: string,
  folder: string,
  delivered: string[],
  attempts = 1,
  temporary = false,
): MailError {
  const tried = attempts > 1 ? ` (${attempts} attempts)` : '';
  const reached = delivered.length > 0 ? ` It did reach ${delivered.join(', ')}.` : '';
  return new MailError(
    kind,
    `The report could not be mailed${tried}: ${sentence}${reached} The report lies whole in ${folder}; "pulsejet-study send" mails it again.`,
    { temporary, delivered },
  );
}
