/** Where mail goes out: read from the environment only, so that no secret lies in a configuration file. */
import { readFileSync } from 'node:fs';
import { MailError } from './mail-error.ts';

export interface TransportSettings {
  host: string;
  port: number;
  /** TLS from the first byte (smtps), after STARTTLS (smtp), or none by explicit wish. */
  encryption: 'tls' | 'starttls' | 'none';
  login: { user: string; password: string } | null;
  /** PEM of a further certificate authority to trust; null: the ones that Node trusts. */
  authority: string | null;
}

/**
 * PULSEJET_SMTP_URL       smtp://host[:587] (STARTTLS required) or smtps://host[:465]; may hold user:password@
 * PULSEJET_SMTP_USER, PULSEJET_SMTP_PASSWORD   instead of putting them into the URL
 * PULSEJET_SMTP_TLS       required (default) or none (a relay on this machine, or one without login)
 * PULSEJET_SMTP_CA        PEM file of the authority that signed the server's certificate
 * Throws MailError of kind 'settings'; no message ever holds a secret.
 */
export function readTransport(env: NodeJS.ProcessEnv): TransportSettings {
  const url = readUrl(env.PULSEJET_SMTP_URL);
  const login = readLogin(url, env.PULSEJET_SMTP_USER, env.PULSEJET_SMTP_PASSWORD);
  const host = url.hostname.replace(/^\[(.*)\]$/, '$1');
  const secure = url.protocol === 'smtps:';
  const wish = env.PULSEJET_SMTP_TLS || 'required';
  if (wish !== 'required' && wish !== 'none')
    throw settings(`PULSEJET_SMTP_TLS is ${JSON.stringify(wish)}; "required" or "none" was expected`);
  if (wish === 'none') {
    if (secure) throw settings('PULSEJET_SMTP_TLS=none contradicts the smtps:// of PULSEJET_SMTP_URL');
    if (login && !isLoopback(host))
      throw settings('PULSEJET_SMTP_TLS=none would send the password readable over the network; this is refused');
  }
  return {
    host,
    port: url.port ? Number(url.port) : secure ? 465 : 587,
    encryption: secure ? 'tls' : wish === 'none' ? 'none' : 'starttls',
    login,
    authority: readAuthority(env.PULSEJET_SMTP_CA),
  };
}

function readUrl(text: string | undefined): URL {
  if (!text)
    throw settings(
      'PULSEJET_SMTP_URL is not set; smtp://mail.example.org:587 or smtps://mail.example.org was expected',
    );
  let url: URL;
  try {
    url = new URL(text);
  } catch {
    throw settings('PULSEJET_SMTP_URL is no URL; smtp://host:587 or smtps://host was expected');
  }
  if (url.protocol !== 'smtp:' && url.protocol !== 'smtps:')
    throw settings(`PULSEJET_SMTP_URL begins with ${url.protocol}//; smtp:// or smtps:// was expected`);
  if (!url.hostname) throw settings('PULSEJET_SMTP_URL names no host');
  if ((url.pathname !== '' && url.pathname !== '/') || url.search || url.hash)
    throw settings('PULSEJET_SMTP_URL holds more than user, password, host and port');
  return url;
}

function readLogin(url: URL, user?: string, password?: string): TransportSettings['login'] {
  const inUrl = url.username !== '' || url.password !== '';
  if (inUrl && (user || password))
    throw settings('user or password is given twice: in PULSEJET_SMTP_URL and in PULSEJET_SMTP_USER / _PASSWORD');
  let found: { user: string; password: string };
  try {
    found = inUrl
      ? { user: decodeURIComponent(url.username), password: decodeURIComponent(url.password) }
      : { user: user ?? '', password: password ?? '' };
  } catch {
    throw settings('user or password in PULSEJET_SMTP_URL is not percent-encoded as a URL demands');
  }
  if (!found.user && !found.password) return null;
  if (!found.user) throw settings('a password is given without a user (PULSEJET_SMTP_USER)');
  if (!found.password) throw settings('a user is given without a password (PULSEJET_SMTP_PASSWORD)');
  return found;
}

function readAuthority(file: string | undefined): string | null {
  if (!file) return null;
  let pem: string;
  try {
    pem = readFileSync(file, 'utf8');
  } catch (error) {
    throw settings(`PULSEJET_SMTP_CA: ${file} cannot be read (${(error as NodeJS.ErrnoException).code})`);
  }
  if (!pem.includes('-----BEGIN CERTIFICATE-----'))
    throw settings(`PULSEJET_SMTP_CA: ${file} holds no PEM certificate`);
  return pem;
}

function isLoopback(host: string): boolean {
  return host === 'localhost' || host === '::1' || /^127\.\d+\.\d+\.\d+$/.test(host);
}

function settings(message: string): MailError {
  return new MailError('settings', message);
}
