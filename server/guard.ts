/** Who may ask: only pages of this very address, so that no other page in the same browser can reach in. */
import type { IncomingMessage } from 'node:http';
import { refusal } from './answer.ts';
import type { Answer } from './http.ts';

/** Stand on every answer. Nothing from elsewhere is loaded, nothing is framed, no script but our own runs. */
export const HEADERS: Readonly<Record<string, string>> = {
  'content-security-policy': [
    "default-src 'none'",
    "script-src 'self' 'wasm-unsafe-eval'",
    "style-src 'self'",
    "img-src 'self' blob: data:",
    "font-src 'self'",
    "connect-src 'self'",
    "worker-src 'self'",
    "manifest-src 'self'",
    "base-uri 'none'",
    "form-action 'none'",
    "frame-ancestors 'none'",
  ].join('; '),
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'no-referrer',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'permissions-policy': 'camera=(), geolocation=(), microphone=(), payment=(), usb=()',
};

/** The names under which this computer reaches itself. */
const NAMES = ['127.0.0.1', 'localhost', '[::1]'];

/** Why this request is refused whatever it asks for, or undefined; `page` says that it asks for the page, not the API. */
export function refuseStranger(request: IncomingMessage, page: boolean): Answer | undefined {
  const { headers, socket, method } = request;
  const host = headers.host?.toLowerCase() ?? '';
  // A name that somebody else points at this computer must not open it (DNS rebinding).
  if (!ownHosts(socket.localPort ?? 0).includes(host))
    return refusal(
      421,
      'foreign-host',
      `Fettle answers only at http://127.0.0.1:${socket.localPort}/ on this computer, not under another name.`,
    );
  const { origin } = headers;
  if (origin !== undefined && origin !== `http://${host}`) return crossSite();
  const site = headers['sec-fetch-site'] ?? 'none';
  if (site === 'same-origin' || site === 'none') return undefined;
  const opened =
    page &&
    method === 'GET' &&
    headers['sec-fetch-mode'] === 'navigate' &&
    headers['sec-fetch-dest'] === 'document';
  return opened ? undefined : crossSite();
}

const crossSite = (): Answer =>
  refusal(403, 'cross-site', 'This came from a page that is not Fettle’s own, so it was refused.');

function ownHosts(port: number): string[] {
  const named = NAMES.map((name) => `${name}:${port}`);
  // Browsers leave out the usual port.
  return port === 80 ? [...named, ...NAMES] : named;
}
