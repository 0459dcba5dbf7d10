/** A real SMTP server on the loopback, with the fault that a test asks for. */
import { readFileSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import path from 'node:path';
import type { ParsedMail } from 'mailparser';
import { simpleParser } from 'mailparser';
import type { SMTPServerOptions } from 'smtp-server';
import { SMTPServer } from 'smtp-server';
import { afterEach } from 'vitest';

/** Self-signed for localhost, made for these tests; it protects nothing. */
const KEY = readFileSync(path.join(import.meta.dirname, 'loopback-key.pem'));
export const CERTIFICATE_FILE = path.join(import.meta.dirname, 'loopback-certificate.pem');
const CERTIFICATE = readFileSync(CERTIFICATE_FILE);

export const USER = 'builder';
export const PASSWORD = 'correct horse';

export interface LoopbackServer {
  port: number;
  mails: { envelope: string[]; secure: boolean; parsed: ParsedMail }[];
  /** Connections so far. */
  connections(): number;
  env: NodeJS.ProcessEnv;
}

const open: SMTPServer[] = [];
afterEach(() => Promise.all(open.splice(0).map((server) => new Promise<void>((done) => server.close(done)))));

/** An error with which smtp-server answers in the given words. */
export function reply(code: number, words: string): Error {
  return Object.assign(new Error(words), { responseCode: code });
}

/** @param faults smtp-server options that replace those of a server without fault */
export async function loopbackServer(faults: SMTPServerOptions = {}): Promise<LoopbackServer> {
  const mails: LoopbackServer['mails'] = [];
  let connections = 0;
  const server = new SMTPServer({
    key: KEY,
    cert: CERTIFICATE,
    onAuth: ({ username, password }, _session, callback) =>
      username === USER && password === PASSWORD
        ? callback(null, { user: USER })
        : callback(reply(535, `5.7.8 Authentication of ${password} failed`)),
    onData(stream, session, callback) {
      const envelope = session.envelope.rcptTo.map((recipient) => recipient.address);
      simpleParser(stream).then(
        (parsed) => {
          if (stream.sizeExceeded) return callback(reply(552, '5.3.4 Message too big'));
          mails.push({ envelope, secure: session.secure, parsed });
          callback();
        },
        (error) => callback(error),
      );
    },
    ...faults,
    onConnect(session, callback) {
      connections++;
      if (faults.onConnect) faults.onConnect.call(server, session, callback);
      else callback();
    },
  });
  // A client that leaves in the middle is part of these tests.
  server.on('error', () => undefined);
  await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening));
  open.push(server);
  const { port } = server.server.address() as AddressInfo;
  return {
    port,
    mails,
    connections: () => connections,
    env: {
      PULSEJET_SMTP_URL: `smtp://localhost:${port}`,
      PULSEJET_SMTP_USER: USER,
      PULSEJET_SMTP_PASSWORD: PASSWORD,
      PULSEJET_SMTP_CA: CERTIFICATE_FILE,
    },
  };
}
